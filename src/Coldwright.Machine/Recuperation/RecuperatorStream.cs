namespace Coldwright.Machine.Recuperation;

/// <summary>One stream from end to end.</summary>
/// <param name="InletK">K.</param>
/// <param name="OutletK">K.</param>
/// <param name="InletEnthalpy">J/mol.</param>
/// <param name="OutletEnthalpy">J/mol.</param>
/// <param name="InletPressurePa">Pa.</param>
/// <param name="OutletPressurePa">Pa.</param>
/// <param name="OutletPhases">In words.</param>
/// <param name="ContentKg">Mass held in the passage, slip included, kg.</param>
public sealed record RecuperatorStream(double InletK, double OutletK, double InletEnthalpy, double OutletEnthalpy, double InletPressurePa, double OutletPressurePa, string OutletPhases, double ContentKg)
{
    /// <summary>Pa, positive for a loss.</summary>
    public double PressureDropPa => InletPressurePa - OutletPressurePa;
}
