using Coldwright.Fluids.States;

namespace Coldwright.Machine.Throttling;

/// <summary>What arrives at a throttle: liquid, two liquids, two phases or gas, at rest.</summary>
/// <param name="PressurePa">Pa, above 0.</param>
/// <param name="MolarEnthalpy">J/mol on the documented caloric zero.</param>
/// <param name="TemperatureK">K; a start for the search, the answer does not depend on it.</param>
/// <param name="Composition">Overall mole fractions in the model's order.</param>
public sealed record ThrottleInlet(double PressurePa, double MolarEnthalpy, double TemperatureK, IReadOnlyList<double> Composition)
{
    /// <summary>From a state.</summary>
    /// <param name="state">State before the throttle.</param>
    public static ThrottleInlet Of(FluidState state) => new(state.PressurePa, state.MolarEnthalpy, state.TemperatureK, state.Composition);

    internal void Check(int count)
    {
        ThrottleGuard.Positive(PressurePa, nameof(PressurePa), "Pa");
        if (!double.IsFinite(MolarEnthalpy)) throw new ArgumentException($"MolarEnthalpy is {MolarEnthalpy} J/mol; it must be finite", nameof(MolarEnthalpy));
        if (Composition.Count != count) throw new ArgumentException($"Composition has {Composition.Count} mole fractions; the fluid model has {count} substances", nameof(Composition));
    }
}
