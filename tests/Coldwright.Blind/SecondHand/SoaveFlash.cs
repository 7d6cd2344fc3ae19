namespace Coldwright.Blind.SecondHand;

/// <summary>Vapour and one liquid at given temperature and pressure, by substitution of the ratios K; the share may leave 0..1 on the way (Whitson and Michelsen 1989).</summary>
internal sealed class SoaveFlash(SoaveMixture mixture)
{
    private const int Rounds = 300;
    private readonly double[] _gasPhi = new double[mixture.Count], _liquidPhi = new double[mixture.Count], _k = new double[mixture.Count];

    /// <summary>What was found: vapour share (1: all gas), both compositions and volumes, enthalpy of the whole.</summary>
    public readonly record struct Found(double Vapour, double[] Liquid, double[] Gas, double LiquidVolume, double GasVolume, double Enthalpy);

    public Found At(double k, double p, double[] z)
    {
        int n = mixture.Count;
        double[] x = new double[n], y = new double[n];
        for (int i = 0; i < n; i++) _k[i] = mixture.CriticalPa[i] / p * Math.Exp(5.373 * (1 + mixture.Omega[i]) * (1 - mixture.CriticalK(i) / k));
        double share = 0.5;
        for (int round = 0; round < Rounds; round++)
        {
            share = Share(z);
            double sx = 0, sy = 0;
            for (int i = 0; i < n; i++)
            {
                x[i] = Math.Max(1e-14, z[i] / (1 + share * (_k[i] - 1)));
                y[i] = _k[i] * x[i];
                sx += x[i];
                sy += y[i];
            }
            for (int i = 0; i < n; i++) (x[i], y[i]) = (x[i] / sx, y[i] / sy);
            mixture.Phase(k, p, x, true, _liquidPhi);
            mixture.Phase(k, p, y, false, _gasPhi);
            double off = 0, apart = 0;
            for (int i = 0; i < n; i++)
            {
                double next = Math.Exp(_liquidPhi[i] - _gasPhi[i]);
                off = Math.Max(off, Math.Abs(Math.Log(next / _k[i])));
                _k[i] = next;
                apart = Math.Max(apart, Math.Abs(Math.Log(next)));
            }
            if (apart < 1e-3) return One(k, p, z, Denser(k, p, z));
            if (off < 1e-8 || (share is < -0.2 or > 1.2 && off < 1e-3)) break;
        }
        if (share >= 1) return One(k, p, z, false);
        if (share <= 0) return One(k, p, z, true);
        var (lv, lh) = mixture.Phase(k, p, x, true, _liquidPhi);
        var (gv, gh) = mixture.Phase(k, p, y, false, _gasPhi);
        return new Found(share, x, y, lv, gv, share * gh + (1 - share) * lh);
    }

    private bool Denser(double k, double p, double[] z)
    {
        mixture.Phase(k, p, z, true, _liquidPhi);
        mixture.Phase(k, p, z, false, _gasPhi);
        double d = 0;
        for (int i = 0; i < z.Length; i++) d += z[i] * (_liquidPhi[i] - _gasPhi[i]);
        return d < 0;
    }

    private Found One(double k, double p, double[] z, bool liquid)
    {
        var (v, h) = mixture.Phase(k, p, z, liquid, _liquidPhi);
        return new Found(liquid ? 0 : 1, z, z, v, v, h);
    }

    // between the poles of the outermost ratios; falls steadily there
    private double Share(double[] z)
    {
        double most = _k.Max(), least = _k.Min();
        if (most <= 1) return -1;
        if (least >= 1) return 2;
        double a = Math.Max(-2, 1 / (1 - most) + 1e-9), b = Math.Min(3, 1 / (1 - least) - 1e-9);
        for (int i = 0; i < 50; i++)
        {
            double m = 0.5 * (a + b), sum = 0;
            for (int j = 0; j < z.Length; j++) sum += z[j] * (_k[j] - 1) / (1 + m * (_k[j] - 1));
            if (sum > 0) a = m; else b = m;
        }
        return 0.5 * (a + b);
    }
}
