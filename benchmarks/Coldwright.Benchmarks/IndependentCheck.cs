using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Benchmarks;

/// <summary>
/// Checks an answer without the solver's own machinery: balances and fugacities from a fresh evaluation, stability by
/// plain successive substitution from random compositions on both branches.
/// </summary>
public sealed class IndependentCheck(HelmholtzModel model, int seed)
{
    private readonly PhaseEvaluation _e = model.CreateEvaluation();
    private readonly Random _random = new(seed);
    private string _last = "";

    /// <summary>What is wrong with the state; null when nothing is.</summary>
    public string? Fault(FluidState s, double[] z)
    {
        int n = z.Length;
        double total = 0;
        foreach (var p in s.Phases)
        {
            total += p.Fraction;
            if (!(p.Fraction > 0) || !double.IsFinite(p.MolarEnthalpy) || !double.IsFinite(p.MolarEntropy) || !(p.MolarDensity > 0)) return $"{p.Kind}: not a number or no amount";
        }
        if (Math.Abs(total - 1) > 1e-9) return $"phase fractions sum to {total}";
        for (int i = 0; i < n; i++)
        {
            double sum = s.Phases.Sum(p => p.Fraction * p.Composition[i]);
            if (Math.Abs(sum - z[i]) > 1e-9 * Math.Max(z[i], 1e-3)) return $"material balance of component {i}: {sum} for {z[i]}";
        }
        var d = new double[n];
        for (int j = 0; j < s.Phases.Count; j++)
        {
            var p = s.Phases[j];
            var lnf = LnFugacity(s.TemperatureK, p.Composition.ToArray(), p.MolarDensity, out double pressure, out double slope);
            if (Math.Abs(pressure / s.PressurePa - 1) > 1e-9 && Math.Abs(pressure - s.PressurePa) / (_e.GasConstant * s.TemperatureK) > 1e-9 * slope * p.MolarDensity)
                return $"{p.Kind}: pressure {pressure} for {s.PressurePa}";
            if (!(slope > 0)) return $"{p.Kind}: dp/drho {slope}";
            for (int i = 0; i < n; i++)
            {
                if (j == 0) d[i] = lnf[i];
                else if (Math.Abs(lnf[i] - d[i]) > 1e-8) return $"fugacities of component {i} differ by {lnf[i] - d[i]:0.0e+0}";
            }
        }
        for (int trial = 0; trial < 6 + 2 * n; trial++)
        {
            double tm = Trial(s, d, trial);
            if (tm < -1e-7) return $"unstable: tangent-plane distance {tm:0.0e+0} from trial {trial}: {_last}";
        }
        return null;
    }

    private double[] LnFugacity(double t, double[] x, double rho, out double pressure, out double slope)
    {
        _e.SetIsotherm(t, x);
        double reduced = _e.ReducedPressure(rho, out slope);
        pressure = reduced * _e.GasConstant * t;
        _e.Gradient(rho);
        double ln = Math.Log(rho * _e.GasConstant * t);
        return x.Select((xi, i) => Math.Log(xi) + ln + _e.G[i]).ToArray();
    }

    private double Trial(FluidState s, double[] d, int trial)
    {
        int n = d.Length;
        var w = new double[n];
        for (int i = 0; i < n; i++) w[i] = -Math.Log(1 - _random.NextDouble());
        if (trial < 2 * n) w[trial / 2] += 4;
        else for (int i = 0; i < n; i++) w[i] = Math.Pow(w[i], 4);
        var branch = trial % 2 == 0 ? Branch.Liquid : Branch.Vapour;
        double tm = 0;
        for (int iteration = 0; iteration < 60; iteration++)
        {
            double sum = w.Sum();
            var x = w.Select(v => v / sum).ToArray();
            _e.SetIsotherm(s.TemperatureK, x);
            double rho = DensityRoots.Find(_e, s.PressurePa, branch);
            if (double.IsNaN(rho)) rho = DensityRoots.Find(_e, s.PressurePa, branch == Branch.Liquid ? Branch.Vapour : Branch.Liquid);
            if (double.IsNaN(rho)) return 0;
            _e.Gradient(rho);
            double ln = Math.Log(rho * _e.GasConstant * s.TemperatureK), change = 0;
            tm = 1;
            for (int i = 0; i < n; i++)
            {
                double lnGamma = ln + _e.G[i] - Math.Log(sum), lnW = Math.Log(w[i]);
                // ln f_i of the trial at amount W: ln w_i + ln phi_i p with w_i = W_i/sum
                double r = lnW + lnGamma + Math.Log(sum) - d[i];
                tm += w[i] * (r - 1);
                double next = Math.Exp(Math.Clamp(d[i] - ln - _e.G[i], -600, 300));
                change = Math.Max(change, Math.Abs(Math.Log(next / w[i])) * Math.Sqrt(Math.Min(next, 1)));
                w[i] = next;
            }
            if (tm < -1e-7) _last = FormattableString.Invariant($"{rho:0} mol/m3 (limit {_e.DensityLimit:0}) {branch} ") + string.Join(" ", x.Select(v => v.ToString("0.###e+0")));
            if (tm < -1e-4 || change < 1e-9) break;
        }
        return tm;
    }
}
