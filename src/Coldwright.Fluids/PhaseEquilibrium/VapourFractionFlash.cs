using Coldwright.Fluids.States;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// (T or p, vapour fraction) flashes by bracketing over certified (T,p) flashes: at constant pressure the vapour
/// fraction goes from 0 (cold) to 1 (warm), at constant temperature from 1 (low pressure) to 0 (high pressure).
/// Where it does not (retrograde regions) the crossing next to the cold or high-pressure end is returned.
/// </summary>
internal static class VapourFractionFlash
{
    private const double LowestPressurePa = 1e-3, HighestPressurePa = 200e6, JumpWidth = 1e-10;

    public static FluidState AtTemperature(Flash flash, double temperatureK, double vapourFraction, ReadOnlySpan<double> z)
    {
        Check(vapourFraction);
        double[] overall = z.ToArray();
        if (flash.Model.Count == 1)
            return PureLever(flash, PureSaturation.AtTemperature(flash.Model, flash.Solver.Evaluation, temperatureK), vapourFraction);
        double Fraction(double lnP) => -(Vapour(flash, temperatureK, Math.Exp(lnP), overall) - vapourFraction);
        // coarse walk down from high pressure to the first two-phase state, so that retrograde dew points do not mislead
        double step = Math.Log(1.25), high = Math.Log(HighestPressurePa), low = high;
        double at = Vapour(flash, temperatureK, HighestPressurePa, overall), below = at;
        bool found = false;
        for (double lnP = high - step; lnP > Math.Log(LowestPressurePa); lnP -= step)
        {
            below = Vapour(flash, temperatureK, Math.Exp(lnP), overall);
            low = lnP;
            if (at < 1 && Crosses(at, below, vapourFraction)) { found = true; break; }
            (high, at) = (lnP, below);
        }
        if (!found) throw None($"{temperatureK:0.###} K", vapourFraction, "the mixture is above its critical temperature there, or stays one phase at every pressure");
        double root = Solve(Fraction, low, high, vapourFraction, rising: false);
        return Settle(flash, root, t => temperatureK, Math.Exp, overall, vapourFraction);
    }

    public static FluidState AtPressure(Flash flash, double pressurePa, double vapourFraction, ReadOnlySpan<double> z)
    {
        Check(vapourFraction);
        double[] overall = z.ToArray();
        if (flash.Model.Count == 1)
            return PureLever(flash, PureSaturation.AtPressure(flash.Model, pressurePa)
                ?? throw None($"{pressurePa / 1e5:0.####} bar absolute", vapourFraction, $"{flash.Model.Substances[0].Name} has its critical pressure at {flash.Model.Substances[0].CriticalPressurePa / 1e5:0.###} bar"), vapourFraction);
        double low = double.NaN, high = double.NaN, at = double.NaN;
        double coldest = Math.Max(40, 0.7 * flash.Model.Substances.Where((s, i) => overall[i] > 0).Min(s => s.TripleTemperatureK));
        double hottest = 1.2 * flash.Model.Substances.Where((s, i) => overall[i] > 0).Max(s => s.CriticalTemperatureK);
        for (double t = coldest; t <= hottest * 1.05; t += Math.Max(2, 0.015 * t))
        {
            if (!flash.TrySolve(t, pressurePa, overall)) continue;
            double v = flash.VapourFraction();
            if (!double.IsNaN(at) && at < 1 && Crosses(at, v, vapourFraction)) { high = t; break; }
            (low, at) = (t, v);
        }
        if (double.IsNaN(high)) throw None($"{pressurePa / 1e5:0.####} bar absolute", vapourFraction, "the mixture is above its critical pressure there, or stays one phase at every temperature");
        double root = Solve(t => Vapour(flash, t, pressurePa, overall) - vapourFraction, low, high, vapourFraction, rising: true);
        return Settle(flash, root, t => t, _ => pressurePa, overall, vapourFraction);
    }

    // the wanted value lies between the liquid-side and the vapour-side fraction; the ends 0 and 1 count when a phase appears
    private static bool Crosses(double liquidSide, double vapourSide, double wanted) =>
        wanted == 0 ? liquidSide == 0 && vapourSide > 0 : wanted == 1 ? liquidSide < 1 && vapourSide == 1
        : liquidSide <= wanted && vapourSide >= wanted;

    private static double Vapour(Flash flash, double t, double p, double[] z) =>
        flash.TrySolve(t, p, z) ? flash.VapourFraction() : throw flash.Failed(t, p);

    // f is the vapour fraction less the wanted one (rising) or its negative; at 0 and 1 the boundary of "two phases" is bisected
    private static double Solve(Func<double, double> f, double low, double high, double wanted, bool rising)
    {
        if (wanted is > 0 and < 1) return Brent.Solve(f, low, high, 0);
        for (int i = 0; i < 60 && high - low > 1e-14 * Math.Abs(high); i++)
        {
            double middle = 0.5 * (low + high);
            double v = (rising ? f(middle) : -f(middle)) + wanted;
            bool lowSide = wanted == 0 ? rising ? v == 0 : v > 0 : rising ? v < 1 : v == 1;
            if (lowSide) low = middle; else high = middle;
        }
        // the two-phase side of the boundary
        return wanted == 0 ? rising ? high : low : rising ? low : high;
    }

    private static FluidState Settle(Flash flash, double root, Func<double, double> temperature, Func<double, double> pressure, double[] z, double wanted)
    {
        var state = flash.TemperaturePressure(temperature(root), pressure(root), z);
        if (Math.Abs(state.VapourFraction - wanted) <= 1e-5) return state;
        // a jump: where one substance is pure, or pure but for traces, both sides of it are the answer
        double width = JumpWidth * Math.Max(1, Math.Abs(root));
        FluidState a = flash.TemperaturePressure(temperature(root - width), pressure(root - width), z), b = flash.TemperaturePressure(temperature(root + width), pressure(root + width), z);
        double va = a.VapourFraction, vb = b.VapourFraction;
        if (!(Math.Min(va, vb) - 1e-9 <= wanted && wanted <= Math.Max(va, vb) + 1e-9))
            throw new SolveException(new SolveReport(SolveStatus.NotConverged, 0, Math.Abs(state.VapourFraction - wanted),
                FormattableString.Invariant($"the vapour fraction jumps across {wanted} near {state.TemperatureK:0.####} K and {state.PressurePa / 1e5:0.####} bar absolute")));
        return StateLever.Mix(a, b, Math.Clamp((wanted - va) / (vb - va), 0, 1)) with { TemperatureK = state.TemperatureK, PressurePa = state.PressurePa };
    }

    private static FluidState PureLever(Flash flash, SaturationPoint s, double vapourFraction)
    {
        double[] one = [1];
        PhaseState At(double density, PhaseKind kind, double fraction)
        {
            var e = flash.Solver.Evaluation;
            e.SetIsotherm(s.TemperatureK, one);
            var (h, entropy) = PhaseProperties.Caloric(flash.Model, e, density);
            double lnPhi = e.G[0] - Math.Log(s.PressurePa / (density * e.GasConstant * s.TemperatureK));
            var (cv, cp, w) = PhaseProperties.Second(flash.Model, e, density);
            return new PhaseState
            {
                Kind = kind, Fraction = fraction, Composition = one, MolarDensity = density, MolarEnthalpy = h, MolarEntropy = entropy,
                MolarHeatCapacity = cp, MolarIsochoricHeatCapacity = cv, SpeedOfSound = w, MolarMass = flash.Model.Substances[0].MolarMass,
                LnFugacityCoefficients = [lnPhi],
            };
        }
        return new FluidState
        {
            TemperatureK = s.TemperatureK,
            PressurePa = s.PressurePa,
            Composition = one,
            MolarMass = flash.Model.Substances[0].MolarMass,
            Phases = [At(s.VapourDensity, PhaseKind.Vapour, vapourFraction), At(s.LiquidDensity, PhaseKind.Liquid, 1 - vapourFraction)],
        };
    }

    private static void Check(double vapourFraction)
    {
        if (!(vapourFraction is >= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(vapourFraction), $"a vapour fraction lies between 0 and 1, got {vapourFraction}");
    }

    private static SolveException None(string where, double wanted, string why) => new(new SolveReport(SolveStatus.NoSolution, 0, double.NaN,
        FormattableString.Invariant($"no state with vapour fraction {wanted} at {where}: {why}")));
}
