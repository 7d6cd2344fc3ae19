using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Numerics;

namespace Coldwright.Blind.Physics;

/// <summary>Enthalpy, density, content and vapour share of one composition over temperature and pressure, linear between nodes. SI, molar.</summary>
internal sealed class GasTable
{
    private const double ColdK = 70, StepK = 2.5;
    private const int Nodes = 101;
    private static readonly double[] _lnP = [.. new[] { 1.2e5, 2.5e5, 5e5, 10e5, 16e5, 20e5, 26e5 }.Select(p => Math.Log(p))];

    private readonly double[,] _h, _v, _content, _vapour;
    private readonly double[,][] _held;

    public GasTable(HelmholtzModel model, double[] z)
    {
        Z = z;
        int n = _lnP.Length;
        (_h, _v, _content, _vapour, _held) = (new double[n, Nodes], new double[n, Nodes], new double[n, Nodes], new double[n, Nodes], new double[n, Nodes][]);
        for (int i = 0; i < z.Length; i++) MolarMass += z[i] * model.Substances[i].MolarMass;
        var flash = new Flash(model);
        for (int p = 0; p < n; p++)
            for (int k = Nodes - 1; k >= 0; k--)
            {
                try
                {
                    Keep(p, k, flash.TemperaturePressure(ColdK + StepK * k, Math.Exp(_lnP[p]), z));
                }
                catch (SolveException)
                {
                    Continue(p, k);
                }
                // enthalpy rises with temperature, whatever a node says
                if (k < Nodes - 1) _h[p, k] = Math.Min(_h[p, k], _h[p, k + 1] - 20 * StepK);
            }
    }

    public double[] Z { get; }
    public double MolarMass { get; }

    private void Keep(int p, int k, FluidState s)
    {
        (_h[p, k], _v[p, k]) = (s.MolarEnthalpy, 1 / s.MolarDensity);
        PhaseState? gas = s.Phases.FirstOrDefault(f => f.Kind == PhaseKind.Vapour);
        double share = gas?.Fraction ?? 0;
        _vapour[p, k] = share;
        if (gas is null || share > 1 - 1e-9)
        {
            _content[p, k] = s.MolarDensity;
            _held[p, k] = [.. s.Composition.Select(x => x * s.MolarDensity)];
            return;
        }
        // slip of Zivi (1964): velocities as the cube root of the densities
        double liquidV = s.Phases.Where(f => f.Kind != PhaseKind.Vapour).Sum(f => f.Fraction / f.MolarDensity), slip = Math.Cbrt(gas.MolarDensity * gas.MolarMass == 0 ? 1 : (1 - share) / liquidV * s.MolarMass / (gas.MolarDensity * gas.MolarMass));
        double gasV = share / gas.MolarDensity, area = gasV / (gasV + slip * liquidV);
        var held = new double[s.Composition.Count];
        for (int i = 0; i < held.Length; i++)
            held[i] = area * gas.MolarDensity * gas.Composition[i] + (1 - area) * s.Phases.Where(f => f.Kind != PhaseKind.Vapour).Sum(f => f.Fraction * f.Composition[i]) / liquidV;
        _held[p, k] = held;
        _content[p, k] = held.Sum();
    }

    private void Continue(int p, int k)
    {
        if (k == Nodes - 1) throw new SolveException(new SolveReport(SolveStatus.NotConverged, 0, 0, "no warm state"));
        double slope = k < Nodes - 2 ? _h[p, k + 2] - _h[p, k + 1] : 40 * StepK;
        (_h[p, k], _v[p, k], _content[p, k], _vapour[p, k], _held[p, k]) = (_h[p, k + 1] - slope, _v[p, k + 1], _content[p, k + 1], _vapour[p, k + 1], _held[p, k + 1]);
    }

    private static (int P, double F, int T, double G) Place(double k, double lnP)
    {
        int p = 0;
        while (p < _lnP.Length - 2 && lnP > _lnP[p + 1]) p++;
        double t = Math.Clamp((k - ColdK) / StepK, 0, Nodes - 1.000001);
        return (p, Math.Clamp((lnP - _lnP[p]) / (_lnP[p + 1] - _lnP[p]), -0.3, 1.5), (int)t, t - (int)t);
    }

    private static double Read(double[,] a, (int P, double F, int T, double G) at) =>
        (1 - at.F) * ((1 - at.G) * a[at.P, at.T] + at.G * a[at.P, at.T + 1]) + at.F * ((1 - at.G) * a[at.P + 1, at.T] + at.G * a[at.P + 1, at.T + 1]);

    public double Enthalpy(double k, double p) => Read(_h, Place(k, Math.Log(p)));
    public double Volume(double k, double p) => Math.Max(1e-5, Read(_v, Place(k, Math.Log(p))));
    public double Content(double k, double p) => Read(_content, Place(k, Math.Log(p)));
    public double Vapour(double k, double p) => Math.Clamp(Read(_vapour, Place(k, Math.Log(p))), 0, 1);

    /// <summary>Adds what a volume holds of each substance, mol.</summary>
    public void Held(double k, double p, double volumeM3, double[] sum)
    {
        var at = Place(k, Math.Log(p));
        for (int i = 0; i < sum.Length; i++)
            sum[i] += volumeM3 * ((1 - at.F) * ((1 - at.G) * _held[at.P, at.T][i] + at.G * _held[at.P, at.T + 1][i]) + at.F * ((1 - at.G) * _held[at.P + 1, at.T][i] + at.G * _held[at.P + 1, at.T + 1][i]));
    }

    /// <summary>Slope of the enthalpy, J/(mol K).</summary>
    public double Capacity(double k, double p) => Math.Max(20, (Enthalpy(k + 1.5, p) - Enthalpy(k - 1.5, p)) / 3);

    public double Temperature(double h, double p)
    {
        double lnP = Math.Log(p), a = ColdK, b = ColdK + StepK * (Nodes - 1) - 1e-3;
        for (int i = 0; i < 40; i++)
        {
            double m = 0.5 * (a + b);
            if (Read(_h, Place(m, lnP)) < h) a = m; else b = m;
        }
        return 0.5 * (a + b);
    }
}
