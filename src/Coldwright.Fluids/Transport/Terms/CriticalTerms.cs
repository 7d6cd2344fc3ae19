namespace Coldwright.Fluids.Transport.Terms;

/// <summary>
/// Critical enhancement of the conductivity by the simplified cross-over of Olchowy and Sengers, Int. J. Thermophys. 10
/// (1989) 417. Exists near the critical point only; zero where the reduced compressibility falls below that at the
/// reference temperature, and inside the mechanically unstable region.
/// </summary>
internal sealed class CriticalCrossover(double criticalDensity, double criticalPressurePa, double referenceTemperatureK,
    double amplitude, double gamma, double nu, double bigGamma, double correlationLengthM, double cutoff) : TransportTerm
{
    private const double Boltzmann = 1.3806488e-23;

    public override double Value(PurePoint p)
    {
        if (!(p.Rho > 0)) return 0;
        double scale = criticalPressurePa / (criticalDensity * criticalDensity) * p.Rho, slope = p.PressureSlope;
        if (!(slope > 0)) return 0;
        double excess = scale / slope - scale / p.PressureSlopeAt(referenceTemperatureK) * referenceTemperatureK / p.T;
        if (!(excess > 1e-14)) return 0;
        double xi = correlationLengthM * Math.Pow(excess / bigGamma, nu / gamma), y = xi * cutoff;
        double cp = p.Cp, share = p.Cv / cp, ratio = criticalDensity / p.Rho;
        double omega = (1 - share) * Math.Atan(y) + share * y;
        double background = 1 - Math.Exp(-1 / (1 / y + y * y * ratio * ratio / 3));
        return p.Rho * cp * amplitude * Boltzmann * p.T / (3 * Math.PI * Math.PI * p.Viscosity * xi) * (omega - background);
    }
}

/// <summary>R23: peak/(cosh((rho - rho_c)/(mol/L)) cosh((T - Tc)/K)): Shan, Penoncello, Jacobsen, ASHRAE Trans. 106 (2000) 757.</summary>
internal sealed class HyperbolicPeak(double peak, double criticalTemperatureK, double criticalDensity) : TransportTerm
{
    public override double Value(PurePoint p) => peak / (Math.Cosh((p.Rho - criticalDensity) / 1000) * Math.Cosh(p.T - criticalTemperatureK));
}

/// <summary>
/// Methane's critical conductivity: Friend, Ely, Ingham, J. Phys. Chem. Ref. Data 18 (1989) 583. The scaled equation they
/// use within 3 % of the critical point is left out: there the compressibility is that of the equation of state.
/// </summary>
internal sealed class MethaneConductivityCritical(double factor, double reducingTemperatureK, double reducingDensity, double compressibility,
    double exponent, double ft, double fr, double fa, TransportTerm[] viscosity) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double slope = p.PressureSlope;
        if (!(slope > 0) || !(p.Rho > 0)) return 0;
        double delta = p.Rho / reducingDensity, tau = reducingTemperatureK / p.T, rt = p.GasConstant * p.T;
        double thermal = p.ThermalPressure / (p.Rho * rt), chi = compressibility * delta * tau * rt / slope;
        double dt = Math.Abs(1 - 1 / tau), dr = 1 - delta;
        return factor / (Sum(viscosity, p) * tau * tau) * thermal * thermal * Math.Pow(chi, exponent)
            * Math.Exp(-ft * Math.Sqrt(dt) - fr * dr * dr - fa * dr);
    }
}
