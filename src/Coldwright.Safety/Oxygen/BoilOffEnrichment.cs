using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Safety.Oxygen;

/// <summary>One moment while impure liquid nitrogen boils away.</summary>
/// <param name="RemainingFraction">Moles left over moles at the start.</param>
/// <param name="LiquidOxygen">Oxygen in what is left, mole fraction.</param>
/// <param name="VapourOxygen">Oxygen in the vapour that leaves, mole fraction.</param>
public sealed record BoilOffStep(double RemainingFraction, double LiquidOxygen, double VapourOxygen);

/// <summary>Oxygen gathering in liquid nitrogen that boils away.</summary>
/// <remarks>Rayleigh (1902): d ln L = dx / (y - x), L moles left, x and y oxygen in liquid and vapour in equilibrium at the bubble point
/// (reference model). The oxygen share is the variable and ln L is summed by the trapezoidal rule over equal steps of ln(x/(1-x)).</remarks>
public static class BoilOffEnrichment
{
    /// <summary>Citation.</summary>
    public const string Source = "Rayleigh's equation of open evaporation with the equilibrium of the reference model; limit of 23.5 % oxygen: OSHA 29 CFR 1910.146";

    /// <summary>Oxygen share from which a gas counts as enriched.</summary>
    public const double Limit = 0.235;

    /// <summary>Share of the liquid that is left when its oxygen passes a limit; 1 when it is above it from the start.</summary>
    /// <param name="startOxygen">Oxygen in the liquid at the start, mole fraction, 1e-6..1.</param>
    /// <param name="pressurePa">Pressure over the liquid, Pa, 2e4..1e6.</param>
    /// <param name="limit">Oxygen at which to stop, mole fraction, 0.01..0.99.</param>
    public static double RemainingAt(double startOxygen, double pressurePa, double limit = Limit) => Path(startOxygen, pressurePa, limit)[^1].RemainingFraction;

    /// <summary>The whole course from the start to the limit.</summary>
    /// <param name="startOxygen">Oxygen in the liquid at the start, mole fraction, 1e-6..1.</param>
    /// <param name="pressurePa">Pressure over the liquid, Pa, 2e4..1e6.</param>
    /// <param name="limit">Oxygen at which to stop, mole fraction, 0.01..0.99.</param>
    /// <param name="steps">Steps, 4..1000.</param>
    public static IReadOnlyList<BoilOffStep> Path(double startOxygen, double pressurePa, double limit = Limit, int steps = 32)
    {
        Guard.Within(startOxygen, 1e-6, 1, nameof(startOxygen), "");
        Guard.Within(pressurePa, 2e4, 1e6, nameof(pressurePa), "Pa");
        Guard.Within(limit, 0.01, 0.99, nameof(limit), "");
        Guard.Within(steps, 4, 1000, nameof(steps), "");
        var flash = new Flash(ReferenceModel.Create(["nitrogen", "oxygen"]));
        double Equilibrium(double x) => flash.PressureVapourFraction(pressurePa, 0, [1 - x, x]).Phases.First(p => p.Kind == PhaseKind.Vapour).Composition[1];
        // Traces follow Henry's law: the ratio y/x no longer depends on x, and the flash is spared compositions near its own tolerance.
        const double trace = 1e-3;
        var henry = Equilibrium(trace) / trace;
        double Vapour(double x) => x < trace ? henry * x : Equilibrium(x);
        if (startOxygen >= limit) return [new(1, startOxygen, startOxygen < 1 ? Vapour(startOxygen) : 1)];

        // With u = ln(x/(1-x)), dx = x (1-x) du, the integrand x (1-x)/(y-x) is smooth down to traces.
        double Logit(double x) => Math.Log(x / (1 - x));
        var (first, last) = (Logit(startOxygen), Logit(limit));
        var path = new List<BoilOffStep>(steps + 1);
        double lnLeft = 0, before = 0;
        for (var i = 0; i <= steps; i++)
        {
            var x = i == steps ? limit : 1 / (1 + Math.Exp(-(first + (last - first) * i / steps)));
            var y = Vapour(x);
            var now = x * (1 - x) / (y - x);
            if (i > 0) lnLeft += (before + now) / 2 * (last - first) / steps;
            before = now;
            path.Add(new(Math.Exp(lnLeft), x, y));
        }
        return path;
    }
}
