namespace Coldwright.Fluids.IdealGas;

/// <summary>
/// The one reference state of enthalpy and entropy: every component as ideal gas at 300 K and 101,325 Pa has
/// h = 0 and s = 0. Printed with every caloric table. The entropy of a mixture therefore contains -R sum(x ln x).
/// </summary>
public static class CaloricZero
{
    /// <summary>300 K.</summary>
    public const double TemperatureK = 300;
    /// <summary>101,325 Pa.</summary>
    public const double PressurePa = 101325;
    /// <summary>The sentence shown with tables.</summary>
    public const string Text = "h = 0 and s = 0 for each component as ideal gas at 300 K and 101,325 Pa";
}
