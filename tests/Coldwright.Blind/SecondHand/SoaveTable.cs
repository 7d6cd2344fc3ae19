namespace Coldwright.Blind.SecondHand;

/// <summary>One composition over temperature and pressure: enthalpy, volume, vapour share and what a passage holds, straight between nodes. SI, molar.</summary>
internal sealed class SoaveTable
{
    public const double ColdK = 72, StepK = 3;
    public const int Nodes = 88;
    private static readonly double[] _p = [1e5, 2e5, 3.5e5, 6e5, 10e5, 14e5, 18e5, 22e5, 28e5];
    private readonly double[,] _h = new double[_p.Length, Nodes], _v = new double[_p.Length, Nodes], _vapour = new double[_p.Length, Nodes], _content = new double[_p.Length, Nodes];
    private readonly double[,][] _held = new double[_p.Length, Nodes][];

    public SoaveTable(SoaveMixture mixture, double[] z)
    {
        Z = z;
        for (int i = 0; i < z.Length; i++) MolarMass += z[i] * mixture.Mass[i];
        IdealCapacity = mixture.IdealCapacity(z, 300);
        var flash = new SoaveFlash(mixture);
        for (int p = 0; p < _p.Length; p++)
            for (int k = Nodes - 1; k >= 0; k--)
            {
                var s = flash.At(ColdK + StepK * k, _p[p], z);
                // what a substitution left unfinished may not turn the curve round
                _h[p, k] = k < Nodes - 1 ? Math.Min(s.Enthalpy, _h[p, k + 1] - 20 * StepK) : s.Enthalpy;
                _vapour[p, k] = s.Vapour;
                _v[p, k] = s.Vapour * s.GasVolume + (1 - s.Vapour) * s.LiquidVolume;
                Hold(p, k, s, mixture);
            }
    }

    public double[] Z { get; }
    public double MolarMass { get; }
    /// <summary>Of the ideal gas at 300 K, J/(mol K).</summary>
    public double IdealCapacity { get; }

    // slip of Chisholm: root of one plus share by mass times the ratio of densities less one (from memory)
    private void Hold(int p, int k, SoaveFlash.Found s, SoaveMixture mixture)
    {
        if (s.Vapour is <= 0 or >= 1)
        {
            _content[p, k] = 1 / _v[p, k];
            _held[p, k] = [.. Z.Select(z => z / _v[p, k])];
            return;
        }
        double gasMass = 0, liquidMass = 0;
        for (int i = 0; i < Z.Length; i++) (gasMass, liquidMass) = (gasMass + s.Gas[i] * mixture.Mass[i], liquidMass + s.Liquid[i] * mixture.Mass[i]);
        double x = s.Vapour * gasMass / (s.Vapour * gasMass + (1 - s.Vapour) * liquidMass), ratio = liquidMass / s.LiquidVolume / (gasMass / s.GasVolume);
        double slip = Math.Min(Math.Sqrt(1 + x * (ratio - 1)), Math.Sqrt(ratio)), gasVolume = s.Vapour * s.GasVolume, liquidVolume = (1 - s.Vapour) * s.LiquidVolume * slip, area = gasVolume / (gasVolume + liquidVolume);
        var held = new double[Z.Length];
        for (int i = 0; i < held.Length; i++) held[i] = area * s.Gas[i] / s.GasVolume + (1 - area) * s.Liquid[i] / s.LiquidVolume;
        (_held[p, k], _content[p, k]) = (held, held.Sum());
    }

    private static (int P, double F, int T, double G) Place(double k, double pa)
    {
        int p = 0;
        while (p < _p.Length - 2 && pa > _p[p + 1]) p++;
        double t = Math.Clamp((k - ColdK) / StepK, 0, Nodes - 1.000001);
        return (p, Math.Clamp((pa - _p[p]) / (_p[p + 1] - _p[p]), -0.6, 1.5), (int)t, t - (int)t);
    }

    private static double Read(double[,] a, (int P, double F, int T, double G) at) =>
        (1 - at.F) * ((1 - at.G) * a[at.P, at.T] + at.G * a[at.P, at.T + 1]) + at.F * ((1 - at.G) * a[at.P + 1, at.T] + at.G * a[at.P + 1, at.T + 1]);

    /// <summary>mol/m3 that a passage holds.</summary>
    public double Content(double k, double pa) => Read(_content, Place(k, pa));

    /// <summary>m3/mol of the stream; between pressures its product with pressure is straight.</summary>
    public double Volume(double k, double pa)
    {
        var at = Place(k, pa);
        double Of(int p) => _p[p] * ((1 - at.G) * _v[p, at.T] + at.G * _v[p, at.T + 1]);
        return Math.Max(2e-5, ((1 - at.F) * Of(at.P) + at.F * Of(at.P + 1)) / pa);
    }

    /// <summary>J/mol.</summary>
    public double Enthalpy(double k, double pa) => Read(_h, Place(k, pa));

    /// <summary>Adds what a volume holds of each substance, mol.</summary>
    public void Held(double k, double pa, double volumeM3, double[] sum)
    {
        var at = Place(k, pa);
        for (int i = 0; i < sum.Length; i++)
            sum[i] += volumeM3 * ((1 - at.F) * ((1 - at.G) * _held[at.P, at.T][i] + at.G * _held[at.P, at.T + 1][i]) + at.F * ((1 - at.G) * _held[at.P + 1, at.T][i] + at.G * _held[at.P + 1, at.T + 1][i]));
    }

    /// <summary>Enthalpy and vapour share at all temperatures of one pressure.</summary>
    public void Isobar(double pa, double[] enthalpy, double[] vapour)
    {
        var (p, f, _, _) = Place(ColdK, pa);
        for (int k = 0; k < Nodes; k++)
        {
            enthalpy[k] = (1 - f) * _h[p, k] + f * _h[p + 1, k];
            vapour[k] = Math.Clamp((1 - f) * _vapour[p, k] + f * _vapour[p + 1, k], 0, 1);
        }
    }

    /// <summary>K at an enthalpy.</summary>
    public double Temperature(double h, double pa)
    {
        var (p, f, _, _) = Place(ColdK, pa);
        int a = 0, b = Nodes - 1;
        while (b - a > 1)
        {
            int m = (a + b) / 2;
            if ((1 - f) * _h[p, m] + f * _h[p + 1, m] < h) a = m; else b = m;
        }
        double ha = (1 - f) * _h[p, a] + f * _h[p + 1, a], hb = (1 - f) * _h[p, b] + f * _h[p + 1, b];
        return ColdK + StepK * (a + (h - ha) / (hb - ha));
    }
}
