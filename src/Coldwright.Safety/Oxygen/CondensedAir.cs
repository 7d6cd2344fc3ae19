using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Safety.Oxygen;

/// <summary>First liquid that drips from a cold surface in air.</summary>
/// <param name="DewPointK">Surfaces below this condense air, K.</param>
/// <param name="OxygenFraction">Oxygen in that first liquid, mole fraction.</param>
public sealed record CondensedAir(double DewPointK, double OxygenFraction)
{
    /// <summary>Air without water and traces, mole fractions of nitrogen, oxygen, argon: Lemmon, Jacobsen, Penoncello, Friend, J. Phys. Chem. Ref. Data 29 (2000) 331.</summary>
    public static IReadOnlyList<double> Air { get; } = [0.7812, 0.2096, 0.0092];

    /// <summary>Dew point of air.</summary>
    /// <param name="pressurePa">Pressure of the room, Pa absolute.</param>
    /// <param name="create">Fluid model for the names given to it, <c>ReferenceModel.Create</c> or <c>CubicModel.Create</c>.</param>
    public static CondensedAir At(double pressurePa, Func<IReadOnlyList<string>, HelmholtzModel> create)
    {
        Guard.Within(pressurePa, 1e4, 1e6, nameof(pressurePa), "Pa");
        double[] z = [.. Air];
        var state = new Flash(create(["nitrogen", "oxygen", "argon"])).PressureVapourFraction(pressurePa, 1, z);
        var liquid = state.Phases.First(p => p.Kind == PhaseKind.Liquid);
        return new(state.TemperatureK, liquid.Composition[1]);
    }
}
