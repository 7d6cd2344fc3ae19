using Coldwright.Fluids.States;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// (p,h) and (p,s) of a pure substance: below the critical pressure the saturation state decides between liquid, vapour and
/// both; a single phase is then found by Newton's method in temperature with the exact heat capacity.
/// </summary>
internal static class PureCaloricFlash
{
    private static readonly double[] One = [1];

    /// <summary>True when the answer is in the flash; false leaves the case to the general search.</summary>
    public static bool TrySolve(Flash flash, double pressurePa, double target, bool enthalpy)
    {
        var solver = flash.Solver;
        var e = solver.Evaluation;
        var substance = flash.Model.Substances[0];
        // next to the critical point heat capacities are without bounds: the general search is safer there
        if (pressurePa > 0.97 * substance.CriticalPressurePa && pressurePa < 1.5 * substance.CriticalPressurePa) return false;
        double low = Flash.LowestTemperatureK, high = CaloricFlash.HighestTemperatureK, t = 1.3 * substance.CriticalTemperatureK, density = double.NaN;
        var branch = Branch.Vapour;
        if (pressurePa < substance.CriticalPressurePa)
        {
            if (!PureSaturation.TryAtPressure(flash.Model, e, pressurePa, out var point)) return false;
            e.SetIsotherm(point.TemperatureK, One);
            double liquid = Value(point.LiquidDensity), vapour = Value(point.VapourDensity);
            if (target >= liquid && target <= vapour)
            {
                solver.SetPure(point, Math.Clamp((target - liquid) / (vapour - liquid), 0, 1), One);
                return true;
            }
            t = point.TemperatureK;
            if (target > vapour) low = t; else high = t;
            (branch, density) = target > vapour ? (Branch.Vapour, point.VapourDensity) : (Branch.Liquid, point.LiquidDensity);
        }
        double scale = e.GasConstant * (enthalpy ? 300 : 1);
        for (int i = 0; i < 40; i++)
        {
            e.SetIsotherm(t, One);
            density = DensityRoots.Find(e, pressurePa, branch, density);
            if (double.IsNaN(density)) return false;
            double rest = Value(density) - target;
            if (rest > 0) high = Math.Min(high, t); else low = Math.Max(low, t);
            if (Math.Abs(rest) < 1e-12 * scale) break;
            double cp = PhaseProperties.Second(flash.Model, e, density).Cp;
            double next = t - rest / (enthalpy ? cp : cp / t);
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (next == t) break;
            // the density moves with the temperature about as in an ideal gas, or hardly in a liquid
            if (branch == Branch.Vapour) density *= t / next;
            t = next;
        }
        if (!solver.Solve(t, pressurePa, One)) return false;
        return Math.Abs((enthalpy ? flash.Enthalpy() : flash.Entropy()) - target) <= 1e-8 * scale;

        double Value(double rho)
        {
            var (h, s) = PhaseProperties.Caloric(flash.Model, e, rho);
            return enthalpy ? h : s;
        }
    }
}
