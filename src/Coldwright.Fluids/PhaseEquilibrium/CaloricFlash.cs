using Coldwright.Fluids.States;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// (p,h) and (p,s) flashes. At equilibrium h and s rise strictly with temperature at constant pressure, so the
/// temperature is bracketed and found by Brent's method over certified (T,p) flashes. Where the bracket shrinks to
/// rounding around a step (a pure substance, or a glide narrower than that) the answer is the lever between its ends.
/// </summary>
internal static class CaloricFlash
{
    public const double HighestTemperatureK = 2000;

    public static FluidState Solve(Flash flash, double pressurePa, double target, ReadOnlySpan<double> z, bool enthalpy, double guessK)
    {
        if (!double.IsFinite(target)) throw new ArgumentOutOfRangeException(nameof(target), $"enthalpy or entropy must be a number, got {target}");
        if (!(pressurePa > 0)) throw new ArgumentOutOfRangeException(nameof(pressurePa), $"pressure must be above 0, got {pressurePa} Pa");
        double[] overall = z.ToArray();
        // units in which "equal" means a relative 1e-13
        double scale = flash.Model.GasConstant * (enthalpy ? 300 : 1);
        bool warm = false;
        double Value(double t)
        {
            if (!flash.TrySolve(t, pressurePa, overall, warm)) throw flash.Failed(t, pressurePa);
            warm = true;
            double difference = (enthalpy ? flash.Enthalpy() : flash.Entropy()) - target;
            return Math.Abs(difference) < 1e-12 * scale ? 0 : difference;
        }

        double middle = guessK > Flash.LowestTemperatureK ? guessK : 250;
        double low = middle, high = middle, fLow = Value(middle), fHigh = fLow, stride = guessK > 0 ? 2 : 30;
        while (fLow > 0)
        {
            if (low <= Flash.LowestTemperatureK) throw None(pressurePa, target, enthalpy, $"it is below that of the mixture at {Flash.LowestTemperatureK} K");
            (high, fHigh) = (low, fLow);
            // a fifth at a time: not past the cold end of the equations into answers that mean nothing
            (low, fLow) = Step(low, fLow, -Math.Min(stride, 0.2 * low));
            stride *= 1.6;
        }
        while (fHigh < 0)
        {
            if (high >= HighestTemperatureK) throw None(pressurePa, target, enthalpy, $"it is above that of the mixture at {HighestTemperatureK} K");
            (low, fLow) = (high, fHigh);
            (high, fHigh) = Step(high, fHigh, stride);
            stride *= 1.6;
        }
        double root = fLow == 0 ? low : fHigh == 0 ? high : Brent.Solve(Narrow, low, fLow, high, fHigh, 0);
        double rest = Value(root);
        if (Math.Abs(rest) <= 1e-8 * scale) return flash.State();
        return Lever(flash, pressurePa, target, overall, enthalpy, low, high);

        // A step outwards; shorter when the far end has no answer, or one that does not lie on a rising curve: the
        // equations end somewhere in the cold, and not always by having no root.
        (double T, double F) Step(double from, double fFrom, double by)
        {
            for (int i = 0; ; i++, by *= 0.4)
            {
                double t = Math.Clamp(from + by, Flash.LowestTemperatureK, HighestTemperatureK);
                try
                {
                    double f = Value(t);
                    if (by < 0 ? f <= fFrom : f >= fFrom) return (t, f);
                    if (i == 5) throw flash.Failed(t, pressurePa);
                }
                catch (SolveException) when (i < 5)
                {
                    warm = false;
                }
            }
        }

        double Narrow(double t)
        {
            double f = Value(t);
            if (f <= 0) low = Math.Max(low, t);
            if (f >= 0) high = Math.Min(high, t);
            return f;
        }
    }

    // the two ends of a step in h or s at (to rounding) one temperature, mixed so that the target is met
    private static FluidState Lever(Flash flash, double pressurePa, double target, double[] z, bool enthalpy, double low, double high)
    {
        if (high - low > 1e-9 * high) throw flash.Failed(low, pressurePa);
        FluidState cold = flash.TemperaturePressure(low, pressurePa, z), warm = flash.TemperaturePressure(high, pressurePa, z);
        double a = enthalpy ? cold.MolarEnthalpy : cold.MolarEntropy, b = enthalpy ? warm.MolarEnthalpy : warm.MolarEntropy;
        double share = b > a ? Math.Clamp((target - a) / (b - a), 0, 1) : 0;
        var phases = new List<PhaseState>();
        foreach (var p in warm.Phases) phases.Add(p with { Fraction = share * p.Fraction });
        foreach (var p in cold.Phases)
        {
            int same = phases.FindIndex(q => q.Kind == p.Kind && Math.Abs(q.MolarDensity - p.MolarDensity) < 1e-4 * p.MolarDensity);
            if (same >= 0) phases[same] = phases[same] with { Fraction = phases[same].Fraction + (1 - share) * p.Fraction };
            else phases.Add(p with { Fraction = (1 - share) * p.Fraction });
        }
        return warm with { Phases = phases.Where(p => p.Fraction > 0).OrderBy(p => p.Kind).ToArray() };
    }

    private static SolveException None(double p, double target, bool enthalpy, string why) => new(new SolveReport(SolveStatus.NoSolution, 0, double.NaN,
        FormattableString.Invariant($"no state at {p / 1e5:0.####} bar absolute with {(enthalpy ? "enthalpy" : "entropy")} {target:0.####} {(enthalpy ? "J/mol" : "J/(mol K)")}: {why}")));
}
