namespace Coldwright.Fluids.Transport;

/// <summary>sigma = sum a (1 - T/Tc)^t, N/m, between the triple and the critical point: Mulero, Cachadina, Parra, J. Phys. Chem. Ref. Data 41 (2012) 043105, equation 1.</summary>
internal sealed class SurfaceTensionCurve(double criticalTemperatureK, double[] a, double[] t, TransportMethod method)
{
    public TransportMethod Method => method;

    /// <summary>N/m; 0 at and above the critical temperature.</summary>
    public double At(double temperatureK)
    {
        double x = 1 - temperatureK / criticalTemperatureK, sum = 0;
        if (x <= 0) return 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * Math.Pow(x, t[i]);
        return sum;
    }
}
