using Coldwright.Fluids.EquationsOfState;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>Which mechanically stable branch of an isotherm.</summary>
public enum Branch
{
    /// <summary>Reached from the ideal gas with rising density.</summary>
    Vapour,
    /// <summary>Reached from the density limit with falling density.</summary>
    Liquid,
}

/// <summary>
/// Density at given pressure on an isotherm. A root is admissible if dp/drho &gt; 0 and it lies on the branch reached
/// from the ideal gas or from the density limit without crossing a region where dp/drho &lt;= 0: roots between two
/// loops are never returned. See docs/theory/density-roots.md.
/// </summary>
public static class DensityRoots
{
    private const double RelativeTolerance = 2e-14;

    /// <summary>
    /// The admissible root on a branch, mol/m3, or NaN when the branch does not reach the pressure.
    /// </summary>
    /// <param name="e">Evaluation with its isotherm set.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    /// <param name="branch">Branch.</param>
    /// <param name="guess">A nearby density (mol/m3) to start from; the branch is verified afterwards. NaN: none.</param>
    public static double Find(PhaseEvaluation e, double pressurePa, Branch branch, double guess = double.NaN)
    {
        if (guess > 0 && e.TryRootNear(pressurePa, branch == Branch.Vapour, guess, out double near)) return near;
        if (e.TryClosedFormRoots(pressurePa, out double vapour, out double liquid)) return branch == Branch.Vapour ? vapour : liquid;
        double target = pressurePa / (e.GasConstant * e.Temperature);
        if (guess > 0 && guess < e.DensityLimit)
        {
            double root = NewtonFrom(e, target, guess);
            if (root > 0 && root < e.DensityLimit && (branch == Branch.Vapour ? MonotoneBetween(e, 0, root) : MonotoneBetween(e, root, e.DensityLimit))) return root;
        }
        return branch == Branch.Vapour ? FromIdealGas(e, target) : FromDenseSide(e, target);
    }

    /// <summary>
    /// The branch to follow a root on when the composition changes. An isotherm without a loop has one root, and either
    /// search finds it; when the loop opens the root must stay with the gas or with the liquid according to its density,
    /// not according to the search that happened to find it.
    /// </summary>
    public static Branch Name(PhaseEvaluation e, double pressurePa, double density, Branch found)
    {
        var byDensity = density < e.DividingDensity ? Branch.Vapour : Branch.Liquid;
        if (byDensity == found) return found;
        bool both = e.TryClosedFormRoots(pressurePa, out double vapour, out double liquid) ? vapour == liquid
            : found == Branch.Liquid ? MonotoneBetween(e, 0, density) : MonotoneBetween(e, density, e.DensityLimit);
        return both ? byDensity : found;
    }

    // plain Newton, given up as soon as it leaves a stable stretch
    private static double NewtonFrom(PhaseEvaluation e, double target, double rho)
    {
        for (int i = 0; i < 12; i++)
        {
            double f = e.ReducedPressure(rho, out double slope);
            if (!(slope > 0)) return double.NaN;
            double step = (target - f) / slope;
            if (Math.Abs(step) > 0.2 * rho) return double.NaN;
            rho += step;
            if (Math.Abs(step) <= 1e-7 * rho)
            {
                // quadratic convergence: one more step from 1e-7 reaches rounding
                f = e.ReducedPressure(rho, out slope);
                return slope > 0 ? rho + (target - f) / slope : double.NaN;
            }
        }
        return double.NaN;
    }

    private static bool MonotoneBetween(PhaseEvaluation e, double low, double high)
    {
        // Bumps that published equations have inside the two-phase region are about a twentieth of the limit wide; in
        // compressed liquid, above three quarters of it, there are none.
        double compressed = Math.Max(low, Math.Min(0.75 * e.DensityLimit, high));
        return Rises(e, low, compressed, Math.Max(high > compressed ? 2 : 5, (int)Math.Ceiling((compressed - low) / (0.04 * e.DensityLimit))))
            && Rises(e, compressed, high, 3);
    }

    private static bool Rises(PhaseEvaluation e, double low, double high, int samples)
    {
        for (int i = 1; i < samples && high > low; i++)
        {
            e.ReducedPressure(low + (high - low) * i / samples, out double slope);
            if (!(slope > 0))
            {
                e.RejectedRoots++;
                return false;
            }
        }
        return true;
    }

    private static double FromIdealGas(PhaseEvaluation e, double target)
    {
        double limit = e.DensityLimit, stride = 0.08 * limit, low = 0, high = double.NaN;
        double rho = Math.Min(target, 0.05 * limit);
        for (int i = 0; i < 200; i++)
        {
            double f = e.ReducedPressure(rho, out double slope);
            if (!double.IsFinite(f)) return ByFineWalkUp(e, target);
            if (!(slope > 0) && double.IsNaN(high))
            {
                // past the vapour spinodal: the pressure's maximum lies between low and rho
                high = CrossingBelowMaximum(e, target, low, rho);
                if (double.IsNaN(high)) return double.NaN;
                rho = 0.5 * (low + high);
                continue;
            }
            if (f < target) low = rho; else high = rho;
            double step = slope > 0 ? (target - f) / slope : double.NaN;
            double next = rho + step;
            if (Math.Abs(step) <= RelativeTolerance * rho) return VerifiedVapour(e, target, next);
            if (double.IsNaN(high)) next = Math.Min(next, rho + stride);
            else if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (next >= limit) return double.NaN;
            if (next == rho || (high - low) <= RelativeTolerance * rho) return VerifiedVapour(e, target, next);
            rho = next;
        }
        return double.NaN;
    }

    // a dilute root is safe; a denser one may lie behind a loop that starts at a few mol/m3 (heavy, cold compositions)
    private static double VerifiedVapour(PhaseEvaluation e, double target, double rho) =>
        rho < 2e-3 * e.DensityLimit || MonotoneBetween(e, 0, rho) ? rho : ByFineWalkUp(e, target);

    // from a dilute gas in steps of a fifth, never past a spinodal
    private static double ByFineWalkUp(PhaseEvaluation e, double target)
    {
        double low = 0;
        for (double rho = 1e-5 * e.DensityLimit; rho < e.DensityLimit; rho *= 1.2)
        {
            double f = e.ReducedPressure(rho, out double slope);
            double high = !(slope > 0) ? CrossingBelowMaximum(e, target, low, rho) : f >= target ? rho : double.NaN;
            if (!double.IsNaN(high)) return Bracketed(e, target, low, high);
            if (!(slope > 0)) return double.NaN;
            low = rho;
        }
        return double.NaN;
    }

    private static double FromDenseSide(PhaseEvaluation e, double target)
    {
        double limit = e.DensityLimit, stride = 0.1 * limit;
        // the top of the dense branch: highest density that is stable and above the pressure
        double rho = limit, f = 0, slope = 0;
        for (; rho > DensityRule.LowestDenseStart * limit; rho -= 0.02 * limit)
        {
            f = e.ReducedPressure(rho, out slope);
            if (slope > 0 && f > target) break;
        }
        if (!(slope > 0 && f > target)) return double.NaN;
        double high = rho, low = double.NaN, top = rho;
        bool strode = false;
        for (int i = 0; i < 200; i++)
        {
            if (i > 0)
            {
                f = e.ReducedPressure(rho, out slope);
                if (!double.IsFinite(f)) return double.NaN;
            }
            if (!(slope > 0) && double.IsNaN(low))
            {
                // past the liquid spinodal: the pressure's minimum lies between rho and high
                low = CrossingAboveMinimum(e, target, rho, high);
                if (double.IsNaN(low)) return double.NaN;
                rho = 0.5 * (low + high);
                continue;
            }
            if (f > target) high = rho; else low = rho;
            double step = slope > 0 ? (target - f) / slope : double.NaN;
            double next = rho + step;
            if (Math.Abs(step) <= RelativeTolerance * rho) { rho = next; break; }
            if (double.IsNaN(low))
            {
                if (next < rho - 0.04 * limit) strode = true;
                next = Math.Max(next, rho - stride);
            }
            else if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (next <= 0) return double.NaN;
            if (next == rho || (high - low) <= RelativeTolerance * rho) { rho = next; break; }
            rho = next;
            if (i == 199) return double.NaN;
        }
        return !strode || MonotoneBetween(e, rho, top) ? rho : ByFineWalk(e, target, top);
    }

    // a stride may have jumped over a loop: walk down in steps of one per cent instead
    private static double ByFineWalk(PhaseEvaluation e, double target, double top)
    {
        double high = top, step = 0.01 * e.DensityLimit;
        for (double rho = top - step; rho > 0; rho -= step)
        {
            double f = e.ReducedPressure(rho, out double slope);
            double low = !(slope > 0) ? CrossingAboveMinimum(e, target, rho, high) : f <= target ? rho : double.NaN;
            if (!double.IsNaN(low)) return Bracketed(e, target, low, high);
            if (!(slope > 0)) return double.NaN;
            high = rho;
        }
        return double.NaN;
    }

    private static double Bracketed(PhaseEvaluation e, double target, double low, double high)
    {
        double rho = 0.5 * (low + high);
        for (int i = 0; i < 200 && high - low > RelativeTolerance * rho; i++)
        {
            double f = e.ReducedPressure(rho, out double slope);
            if (f < target) low = rho; else high = rho;
            double next = rho + (target - f) / slope;
            if (Math.Abs(next - rho) <= RelativeTolerance * rho) return next;
            rho = slope > 0 && next > low && next < high ? next : 0.5 * (low + high);
        }
        return rho;
    }

    // slope > 0 at low, <= 0 at up, pressure below the target at low: a stable density with pressure above it short of
    // the spinodal between the two, or NaN when the pressure's maximum there stays below
    private static double CrossingBelowMaximum(PhaseEvaluation e, double target, double low, double up)
    {
        for (int i = 0; i < 60 && up - low > 1e-10 * up; i++)
        {
            double middle = 0.5 * (low + up);
            double f = e.ReducedPressure(middle, out double slope);
            if (!(slope > 0)) up = middle;
            else if (f > target) return middle;
            else low = middle;
        }
        return double.NaN;
    }

    // the same from the dense side: a stable density with pressure below the target short of the liquid spinodal
    private static double CrossingAboveMinimum(PhaseEvaluation e, double target, double down, double high)
    {
        for (int i = 0; i < 60 && high - down > 1e-10 * high; i++)
        {
            double middle = 0.5 * (down + high);
            double f = e.ReducedPressure(middle, out double slope);
            if (!(slope > 0)) down = middle;
            else if (f < target) return middle;
            else high = middle;
        }
        return double.NaN;
    }
}
