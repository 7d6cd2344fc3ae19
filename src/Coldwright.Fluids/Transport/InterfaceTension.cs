namespace Coldwright.Fluids.Transport;

/// <summary>
/// Surface tension: pure fluids by their correlation; mixtures by sigma^(1/4) = sum P_i (x_i rho_liquid - y_i rho_vapour), drawn over to the
/// main component's correlation near purity as in <see cref="MixtureTransport"/>. The parachors P_i were fitted to the pure
/// correlations (data/transport).
/// </summary>
internal sealed class InterfaceTension(PureTransport[] pure)
{
    /// <summary>N/m.</summary>
    /// <param name="t">K.</param>
    /// <param name="liquid">mol/m3.</param>
    /// <param name="x">Of the liquid.</param>
    /// <param name="vapour">mol/m3.</param>
    /// <param name="y">Of the vapour.</param>
    public TransportValue At(double t, double liquid, ReadOnlySpan<double> x, double vapour, ReadOnlySpan<double> y)
    {
        int main = 0;
        double root = 0;
        for (int i = 0; i < pure.Length; i++)
        {
            if (x[i] > 0 || y[i] > 0) root += pure[i].Data.Parachor!.Value * (x[i] * liquid - y[i] * vapour);
            if (x[i] > x[main]) main = i;
        }
        root = Math.Max(0, root);
        double sigma = root * root * root * root, own = pure[main].Data.SurfaceTension!.At(t);
        if (x[main] == 1) return new TransportValue(own, pure[main].Data.SurfaceTension!.Method, own > 0 ? null : TransportMethods.TensionAboveCritical);
        // liquid and vapour both: a volatile impurity of the liquid may fill the vapour
        double share = Math.Min(x[main], y[main]), alone = Math.Max(0, pure[main].Data.Parachor!.Value * (liquid - vapour));
        share = (share - MixtureTransport.TieFrom) / (1 - MixtureTransport.TieFrom);
        if (share > 0 && alone > 0 && own > 0) sigma *= Math.Pow(own / (alone * alone * alone * alone), share);
        return new TransportValue(sigma, TransportMethods.Parachor, null);
    }
}
