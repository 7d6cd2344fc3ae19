namespace Coldwright.Fluids.Transport.Terms;

/// <summary>
/// C (sum a delta^d tau^t + j delta^2/delta_sigma): Friend, Ely, Ingham, J. Phys. Chem. Ref. Data 18 (1989) 583. delta_sigma is
/// the reduced density of saturated vapour for a gas below the critical temperature, else 1. The published form jumps
/// where the gas passes the critical density; no stable state lies there.
/// </summary>
internal sealed class MethaneConductivityDense(double factor, PowerExponential sum, double reducingDensity, double saturation) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        var s = p.Substance;
        double delta = p.Rho / reducingDensity, sigma = 1;
        if (p.T < s.CriticalTemperatureK && p.Rho < s.CriticalDensity) sigma = s.Saturation.VapourDensity.At(p.T) / s.CriticalDensity;
        return factor * (sum.Value(p) + saturation * delta * delta / sigma);
    }
}
