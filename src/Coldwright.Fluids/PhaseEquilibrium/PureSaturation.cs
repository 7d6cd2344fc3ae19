using Coldwright.Fluids.EquationsOfState;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>Vapour and liquid of a pure fluid in equilibrium.</summary>
/// <param name="TemperatureK">Temperature, K.</param>
/// <param name="PressurePa">Vapour pressure, Pa.</param>
/// <param name="LiquidDensity">mol/m3.</param>
/// <param name="VapourDensity">mol/m3.</param>
public readonly record struct SaturationPoint(double TemperatureK, double PressurePa, double LiquidDensity, double VapourDensity);

/// <summary>Saturation of a one-component model: equal pressure and equal Gibbs energy of the two admissible roots.</summary>
public static class PureSaturation
{
    /// <summary>Saturation at a temperature (K) from the triple point to the model's own critical point.</summary>
    /// <exception cref="SolveException">No vapour pressure: above the critical temperature, or too far below the triple point.</exception>
    public static SaturationPoint AtTemperature(HelmholtzModel model, double temperatureK) =>
        AtTemperature(model, model.CreateEvaluation(), temperatureK);

    internal static SaturationPoint AtTemperature(HelmholtzModel model, PhaseEvaluation e, double temperatureK)
    {
        var found = TryAtTemperature(model, e, temperatureK, double.NaN);
        return found ?? throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, double.NaN,
            $"{model.Substances[0].Name} has no vapour pressure at {temperatureK:0.###} K in the {model.Name} model; "
            + $"its critical temperature is {model.Substances[0].CriticalTemperatureK:0.###} K and its triple point {model.Substances[0].TripleTemperatureK:0.###} K"));
    }

    /// <summary>Saturation at a pressure (Pa), or null when it has none (above the critical pressure).</summary>
    public static SaturationPoint? AtPressure(HelmholtzModel model, double pressurePa)
    {
        var e = model.CreateEvaluation();
        var s = model.Substances[0];
        if (pressurePa < 0.99 * s.CriticalPressurePa && TryAtPressure(model, e, pressurePa, out var quick)) return quick;
        double tc = s.CriticalTemperatureK;
        // both ends from the estimate's slope; the model's own critical point may lie a little above the paper's
        double low = 0.3 * tc, high = tc;
        var top = TryAtTemperature(model, e, tc * (1 - 1e-7), double.NaN);
        for (int i = 0; top is null && i < 40; i++) top = TryAtTemperature(model, e, high = tc * (1 - 1e-6 * Math.Pow(1.5, i)), double.NaN);
        if (top is not { } critical || pressurePa > critical.PressurePa) return null;
        high = critical.TemperatureK;
        SaturationPoint? best = null;
        double F(double t)
        {
            if (TryAtTemperature(model, e, t, double.NaN) is not { } point) return t < 0.6 * tc ? -50 : 50;
            best = point;
            return Math.Log(point.PressurePa / pressurePa);
        }
        while (F(low) > 0 && low > 0.05 * tc) low *= 0.8;
        double root = Brent.Solve(F, low, high, 1e-13 * tc);
        var answer = TryAtTemperature(model, e, root, double.NaN) ?? best;
        return answer is { } a && Math.Abs(a.PressurePa / pressurePa - 1) < 1e-6 ? answer : null;
    }

    /// <summary>
    /// Saturation at a pressure (Pa) by Newton's method from the estimates: equal Gibbs energies along the isobar, with
    /// d(g_l - g_v)/(RT)/dT = -(h_l - h_v)/(R T2). False where that does not settle (close to the critical point).
    /// </summary>
    internal static bool TryAtPressure(HelmholtzModel model, PhaseEvaluation e, double pressurePa, out SaturationPoint point)
    {
        var s = model.Substances[0];
        point = default;
        double t = EstimateTemperature(s, pressurePa);
        Span<double> one = [1.0];
        double liquid = s.Saturation.LiquidDensity.At(t), vapour = s.Saturation.VapourDensity.At(t);
        for (int i = 0; i < 25; i++)
        {
            e.SetIsotherm(t, one);
            liquid = DensityRoots.Find(e, pressurePa, Branch.Liquid, liquid);
            vapour = DensityRoots.Find(e, pressurePa, Branch.Vapour, vapour);
            if (!(liquid > 1.05 * vapour)) return false;
            e.Gradient(liquid);
            double gl = Math.Log(liquid) + e.G[0], hl = e.ADensity - e.ATemperature;
            e.Gradient(vapour);
            double difference = gl - Math.Log(vapour) - e.G[0], dh = hl - (e.ADensity - e.ATemperature);
            double step = difference * t / dh;
            if (!(Math.Abs(step) < 0.1 * t)) return false;
            t += step;
            if (Math.Abs(step) < 1e-13 * t)
            {
                point = new SaturationPoint(t, pressurePa, liquid, vapour);
                return true;
            }
        }
        return false;
    }

    private static double EstimateTemperature(Substances.Substance s, double pressurePa)
    {
        var fit = s.Saturation.Pressure;
        double low = 0.25 * fit.ReducingTemperatureK, high = fit.ReducingTemperatureK;
        // ln p against 1/T is nearly straight
        for (int i = 0; i < 60 && high - low > 1e-5 * high; i++)
        {
            double pl = Math.Log(fit.At(low)), ph = Math.Log(fit.At(high)), ln = Math.Log(pressurePa);
            double t = 1 / (1 / low + (1 / high - 1 / low) * (ln - pl) / (ph - pl));
            if (!(t > low && t < high)) return Math.Clamp(t, low, high);
            if (Math.Abs(fit.At(t) / pressurePa - 1) < 1e-4) return t;
            if (fit.At(t) < pressurePa) low = t; else high = t;
        }
        return 0.5 * (low + high);
    }

    /// <summary>Solves for the vapour pressure; null when the two branches never meet.</summary>
    internal static SaturationPoint? TryAtTemperature(HelmholtzModel model, PhaseEvaluation e, double t, double pressureGuess)
    {
        var s = model.Substances[0];
        Span<double> one = [1.0];
        e.SetIsotherm(t, one);
        double p = pressureGuess > 0 ? pressureGuess : Estimate(s, t);
        double liquid = double.NaN, vapour = double.NaN;
        double low = 0, high = double.PositiveInfinity;
        for (int i = 0; i < 100; i++)
        {
            vapour = DensityRoots.Find(e, p, Branch.Vapour, vapour);
            liquid = DensityRoots.Find(e, p, Branch.Liquid, liquid);
            bool noVapour = double.IsNaN(vapour), noLiquid = double.IsNaN(liquid);
            if (noVapour && noLiquid) return null;
            if (!noVapour && !noLiquid && Math.Abs(liquid - vapour) < 1e-9 * liquid)
            {
                // one common root: above the critical point, or just outside the loop
                if (t >= s.CriticalTemperatureK * 1.001) return null;
                noVapour = liquid > s.CriticalDensity;
                noLiquid = !noVapour;
            }
            if (noVapour || noLiquid)
            {
                // pressure above the vapour spinodal, or below the liquid one
                if (noVapour) high = Math.Min(high, p); else low = Math.Max(low, p);
                double middle = double.IsInfinity(high) ? p * 1.05 : low == 0 ? p * 0.9 : 0.5 * (low + high);
                if (!double.IsInfinity(high) && high - low < 1e-13 * high || middle > 100e6 || middle < 1e-30) return null;
                p = middle;
                vapour = liquid = double.NaN;
                continue;
            }
            e.Gradient(liquid);
            double gl = Math.Log(liquid) + e.G[0];
            e.Gradient(vapour);
            double gv = Math.Log(vapour) + e.G[0];
            double difference = gl - gv;
            if (difference > 0) low = Math.Max(low, p); else high = Math.Min(high, p);
            // d(gl - gv)/dp = (v_l - v_v)/(R T)
            double step = -difference * e.GasConstant * t / (1 / liquid - 1 / vapour);
            if (Math.Abs(step) <= 1e-13 * p || Math.Abs(difference) < 1e-15)
                return new SaturationPoint(t, p, liquid, vapour);
            // a logarithmic step where the linear one is large
            double next = Math.Abs(step) < 0.3 * p ? p + step : p * Math.Exp(Math.Clamp(difference * (p > 0 ? 1 : 0), -2, 2));
            if (!(next > low && next < high)) next = double.IsInfinity(high) ? p * 1.3 : 0.5 * (low + high);
            if (next == p) return new SaturationPoint(t, p, liquid, vapour);
            p = next;
        }
        return null;
    }

    private static double Estimate(Substances.Substance s, double t)
    {
        if (t < 0.9999 * s.Saturation.Pressure.ReducingTemperatureK) return s.Saturation.Pressure.At(t);
        return s.CriticalPressurePa * Math.Min(1, 1 + 7 * (t / s.CriticalTemperatureK - 1));
    }
}
