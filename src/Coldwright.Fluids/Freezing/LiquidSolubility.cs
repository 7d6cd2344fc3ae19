using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Numerics.Roots;

namespace Coldwright.Fluids.Freezing;

/// <summary>
/// The mole fraction of one component at which its fugacity in a liquid reaches a given one, the other components kept
/// in proportion. The liquid is followed as one phase. Not thread-safe.
/// </summary>
internal sealed class LiquidSolubility(HelmholtzModel model)
{
    /// <summary>Step in ln(x/(1-x)) in which the crossing is sought.</summary>
    private const double Step = 0.5;

    private readonly PhaseEvaluation _e = model.CreateEvaluation();
    private readonly double[] _x = new double[model.Count];

    /// <summary>
    /// The crossing nearest to the actual composition, upwards when there is room left, downwards when it is
    /// supersaturated; null when there is none below 1 - 1e-9, or when nothing else is in the liquid.
    /// </summary>
    public double? MoleFraction(int component, double temperatureK, double pressurePa, IReadOnlyList<double> composition, double lnFugacity)
    {
        double actual = composition[component];
        if (1 - actual < 1e-12) return null;
        double F(double u) => LnFugacity(component, 1 / (1 + Math.Exp(-u)), temperatureK, pressurePa, composition) - lnFugacity;
        double at = Math.Log(actual / (1 - actual)), f = F(at);
        if (double.IsNaN(f)) return null;
        if (f == 0) return actual;
        double step = f < 0 ? Step : -Step;
        for (double next = at + step; Math.Abs(next) < 80 && next < Math.Log(1e9); next += step)
        {
            double g = F(next);
            // no liquid at this composition: the next one may have one again
            if (double.IsNaN(g)) continue;
            if (g < 0 != f < 0) return 1 / (1 + Math.Exp(-Brent.Solve(F, at, f, next, g, 1e-12)));
            (at, f) = (next, g);
        }
        return null;
    }

    private double LnFugacity(int component, double x, double t, double p, IReadOnlyList<double> composition)
    {
        double rest = (1 - x) / (1 - composition[component]);
        for (int i = 0; i < _x.Length; i++) _x[i] = i == component ? x : rest * composition[i];
        _e.SetIsotherm(t, _x);
        double density = DensityRoots.Find(_e, p, Branch.Liquid);
        if (double.IsNaN(density)) return double.NaN;
        _e.Gradient(density);
        return Math.Log(x * density * _e.GasConstant * t) + _e.G[component];
    }
}
