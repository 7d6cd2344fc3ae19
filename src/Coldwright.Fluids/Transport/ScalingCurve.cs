namespace Coldwright.Fluids.Transport;

/// <summary>
/// How one fluid's scaled residual property depends on the reduced residual entropy s = -s_res/R:
/// Y(s) = n1 s + n2 s^1.5 + n3 s^2 + n4 s^2.5 (Yang et al., Int. J. Thermophys. 43 (2022) 183, equation 6), for viscosity
/// Y = ln(eta+ + 1), for conductivity Y = lambda+. Beyond the entropy of the fluid's own liquid at the triple point the
/// polynomial means nothing: it is continued by its tangent there (our addition; mixtures colder than a component's
/// triple point ask for it).
/// </summary>
internal sealed class ScalingCurve
{
    private readonly double[] _n;
    private readonly double _value, _slope;

    /// <param name="method">Where the numbers come from.</param>
    /// <param name="n">n1 to n4.</param>
    /// <param name="maximumEntropy">s of the liquid at the triple point.</param>
    public ScalingCurve(TransportMethod method, double[] n, double maximumEntropy)
    {
        (Method, _n, MaximumEntropy) = (method, n, maximumEntropy);
        double root = Math.Sqrt(maximumEntropy);
        _value = Polynomial(maximumEntropy, root);
        _slope = n[0] + 1.5 * n[1] * root + 2 * n[2] * maximumEntropy + 2.5 * n[3] * maximumEntropy * root;
    }

    public TransportMethod Method { get; }

    /// <summary>s of the fluid's liquid at its triple point.</summary>
    public double MaximumEntropy { get; }

    /// <summary>Y at s; 0 for s below 0 (very hot gases, where the residual property is nothing).</summary>
    public double Value(double s) => s <= 0 ? 0
        : s <= MaximumEntropy ? Polynomial(s, Math.Sqrt(s))
        : _value + _slope * (s - MaximumEntropy);

    private double Polynomial(double s, double root) => s * (_n[0] + root * (_n[1] + root * (_n[2] + root * _n[3])));
}
