using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>
/// Isobars of random mixtures of the gases used in these coolers, walked in small steps: at equilibrium enthalpy rises
/// strictly with temperature, and continuously in a mixture. An increment that does not shrink with the step is a jump,
/// and a jump is a missed phase.
/// </summary>
public sealed class IsobarPathTests
{
    private static readonly string[] Gases =
    [
        "nitrogen", "argon", "methane", "ethane", "ethylene", "propane", "propylene", "isobutane", "butane", "R14", "krypton", "oxygen",
    ];

    // COLDWRIGHT_PATHS=500 walks more of them
    private static readonly int Isobars = int.TryParse(Environment.GetEnvironmentVariable("COLDWRIGHT_PATHS"), out int n) ? n : 100;
    private const int Steps = 250;
    private const double ColdestK = 80, WarmestK = 330;

    [Theory]
    [InlineData("reference")]
    [InlineData("cubic")]
    public void Enthalpy_rises_without_jumps_along_isobars(string kind)
    {
        var random = new Random(20251125);
        var isobars = new List<(string[] Names, double[] Z, double PressurePa)>();
        for (int i = 0; i < Isobars; i++)
        {
            int n = 2 + random.Next(5);
            string[] names = random.GetItems(Gases, 30).Distinct().Take(n).ToArray();
            double[] z = names.Select(_ => 0.03 + random.NextDouble()).ToArray();
            double sum = z.Sum(), pressurePa = 1e5 * Math.Exp(Math.Log(60) * random.NextDouble());
            for (int k = 0; k < n; k++) z[k] /= sum;
            isobars.Add((names, z, pressurePa));
        }
        var failures = isobars.AsParallel().AsOrdered().Select(i => Fault(kind, i)).Where(f => f is not null).ToList();
        Assert.True(failures.Count == 0, $"{failures.Count} of {Isobars}\n" + string.Join("\n", failures));
    }

    private static string? Fault(string kind, (string[] Names, double[] Z, double PressurePa) isobar) =>
        Walk(kind, isobar.Names, isobar.Z, isobar.PressurePa) is { } fault
            ? FormattableString.Invariant($"{isobar.PressurePa:R} Pa {string.Join(";", isobar.Names.Zip(isobar.Z, (a, b) => FormattableString.Invariant($"{a}={b:R}")))}: {fault}")
            : null;

    private static string? Walk(string kind, string[] names, double[] z, double pressurePa)
    {
        var flash = new Flash(kind == "reference" ? ReferenceModel.Create(names) : CubicModel.Create(names));
        double Enthalpy(double t) => flash.TrySolve(t, pressurePa, z, warm: true) ? flash.Enthalpy() : double.NaN;

        double step = (WarmestK - ColdestK) / Steps, largest = 0, at = 0, previous = Enthalpy(ColdestK);
        if (double.IsNaN(previous)) return FormattableString.Invariant($"no answer at {ColdestK} K");
        for (int i = 1; i <= Steps; i++)
        {
            double t = ColdestK + i * step, h = Enthalpy(t);
            if (double.IsNaN(h)) return FormattableString.Invariant($"no answer at {t} K");
            if (!(h > previous)) return FormattableString.Invariant($"enthalpy falls by {previous - h:0.000} J/mol up to {t} K");
            if (h - previous > largest) (largest, at) = (h - previous, t - step);
            previous = h;
        }
        // the largest increment, halved six times: the half with the larger part is followed
        double low = at, width = step, hLow = Enthalpy(low), hHigh = Enthalpy(low + width), first = hHigh - hLow;
        for (int halving = 0; halving < 6; halving++)
        {
            width /= 2;
            double middle = Enthalpy(low + width);
            if (!(middle > hLow && middle < hHigh)) return FormattableString.Invariant($"enthalpy does not rise around {low + width} K");
            if (middle - hLow > hHigh - middle) hHigh = middle;
            else (low, hLow) = (low + width, middle);
        }
        // continuous: a 64th of the step has about a 64th of the increment; near an edge of the two-phase region, where
        // the slope changes within the step, up to eight times that
        if (hHigh - hLow < first / 8) return null;
        return ThreePhases(flash, names.Length, pressurePa, z, low, low + width) ? null
            : FormattableString.Invariant($"{first:0.0} J/mol in {step} K at {at} K, and {hHigh - hLow:0.0} J/mol still in {width} K at {low} K");
    }

    /// <summary>
    /// Vapour and two liquids have one degree of freedom fewer. A binary boils one of its liquids away at a single
    /// temperature: the phases on both sides of the jump must then be in equilibrium with each other. With more components,
    /// the temperature interval is narrow when one liquid is nearly pure: there must be states with three phases in it,
    /// over which the enthalpy is continuous. Two much alike heavy components count as one: the interval is then narrower
    /// than the certificate resolves, and the phases on both sides must touch each other's tangent plane as in a binary.
    /// </summary>
    private static bool ThreePhases(Flash flash, int components, double pressurePa, double[] z, double low, double high)
    {
        for (int halving = 0; halving < 40 && high - low > 1e-12 * high; halving++)
        {
            double middle = 0.5 * (low + high);
            var state = flash.TemperaturePressure(middle, pressurePa, z);
            if (components > 2 && state.Phases.Count >= 3) return true;
            double hMiddle = state.MolarEnthalpy;
            double hLow = flash.TemperaturePressure(low, pressurePa, z).MolarEnthalpy, hHigh = flash.TemperaturePressure(high, pressurePa, z).MolarEnthalpy;
            if (hMiddle - hLow > hHigh - hMiddle) high = middle; else low = middle;
        }
        var (cold, warm) = (flash.TemperaturePressure(low, pressurePa, z).Phases, flash.TemperaturePressure(high, pressurePa, z).Phases);
        double LnFugacity(PhaseState p, int i) => Math.Log(p.Composition[i]) + p.LnFugacityCoefficients[i];
        // distance of every phase of one side from the tangent plane of the other, RT
        double Apart(PhaseState p, PhaseState other) => Enumerable.Range(0, components).Sum(i => p.Composition[i] * (LnFugacity(p, i) - LnFugacity(other, i)));
        return cold.All(p => Math.Abs(Apart(p, warm[0])) < 1e-7) && warm.All(p => Math.Abs(Apart(p, cold[0])) < 1e-7)
            && cold.Concat(warm).Any(p => p.Kind == PhaseKind.Vapour);
    }
}
