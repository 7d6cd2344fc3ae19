namespace Coldwright.Materials.Solids;

/// <summary>
/// Thermal conductivity of copper from its residual resistance: 1/k = W0 + Wi + Wi0, with W0 = beta/T the resistance of the
/// impurities, Wi that of the lattice, Wi0 their interaction.
/// </summary>
/// <remarks>
/// <para>Wi = P1 T^P2 / (1 + P1 P3 T^(P2+P4) exp(-(P5/T)^P6)) + Wc; Wi0 = P7 Wi W0/(Wi + W0); P7 = 0.838/(beta/0.0003)^0.1661;
/// beta = rho0/L0, L0 = 2.443e-8 V2/K2. k in W/(m K), T in K.</para>
/// <para>Source: J. G. Hust, A. B. Lankford, NBSIR 84-3007 (1984), chapter on copper, with its correction Wc. Made for residual resistance
/// ratios of 30 to 3000 and 1 to 1300 K; for tube copper (ratio 2 to 8) W0 = beta/T still holds (Wiedemann and Franz), Wi0 is extrapolated
/// and under 8 % of the sum.</para>
/// </remarks>
public sealed class ImpureCopperCurve : PropertyCurve
{
    private const double LorenzNumber = 2.443e-8;
    private readonly double _beta;
    private readonly double _p7;

    /// <param name="minimumK">Lower end, K.</param>
    /// <param name="maximumK">Upper end, K.</param>
    /// <param name="residualResistivity">Resistivity near 0 K, ohm m, above 0.</param>
    public ImpureCopperCurve(double minimumK, double maximumK, double residualResistivity) : base(minimumK, maximumK)
    {
        if (!(residualResistivity > 0)) throw new ArgumentException($"the residual resistivity must be above 0 ohm m, got {residualResistivity} ohm m");
        _beta = residualResistivity / LorenzNumber;
        _p7 = 0.838 / Math.Pow(_beta / 0.0003, 0.1661);
    }

    /// <inheritdoc/>
    public override double At(double temperatureK)
    {
        const double p1 = 1.754e-8, p2 = 2.763, p3 = 1102, p4 = -0.165, p5 = 70, p6 = 1.756;
        var t = temperatureK;
        var wc = Hump(t, -0.00012, 420, 470, 0.7) + Hump(t, -0.00016, 73, 87, 0.45) + Hump(t, -0.00002, 18, 21, 0.5);
        var wi = p1 * Math.Pow(t, p2) / (1 + p1 * p3 * Math.Pow(t, p2 + p4) * Math.Exp(-Math.Pow(p5 / t, p6))) + wc;
        var w0 = _beta / t;
        return 1 / (w0 + wi + _p7 * wi * w0 / (wi + w0));
    }

    private static double Hump(double t, double height, double zeroK, double centreK, double width)
    {
        var x = Math.Log(t / centreK) / width;
        return height * Math.Log(t / zeroK) * Math.Exp(-x * x);
    }
}
