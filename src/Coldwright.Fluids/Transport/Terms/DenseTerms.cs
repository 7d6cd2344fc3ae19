namespace Coldwright.Fluids.Transport.Terms;

/// <summary>eta0 B rho with B = N_A sigma^3 sum b (T*)^t: Rainwater and Friend's theory as fitted by Vogel et al., J. Phys. Chem. Ref. Data 27 (1998) 947, or a fluid's own b.</summary>
internal sealed class InitialDensity(double sigmaNm, double epsilonK, double[] b, double[] t) : TransportTerm
{
    // the value of the Avogadro constant in use when these were fitted (CODATA 2010), 1/mol
    private readonly double _volume = 6.02214129e23 * Math.Pow(sigmaNm * 1e-9, 3);

    public override double Value(PurePoint p)
    {
        double ln = Math.Log(p.T / epsilonK), sum = 0;
        for (int i = 0; i < b.Length; i++) sum += b[i] * Math.Exp(t[i] * ln);
        return p.DiluteViscosity * _volume * sum * p.Rho;
    }
}

/// <summary>sum a delta^d tau^t exp(-g delta^l), delta = rho/rho_r, tau = T_r/T; no g: no exponential.</summary>
internal sealed class PowerExponential(double reducingTemperatureK, double reducingDensity, double[] a, double[] d, double[] t, double[] g, double[] l) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double delta = p.Rho / reducingDensity, lnDelta = Math.Log(delta), lnTau = Math.Log(reducingTemperatureK / p.T), sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            double e = d[i] * lnDelta + t[i] * lnTau;
            if (g.Length > 0 && g[i] != 0) e -= g[i] * Math.Pow(delta, l[i]);
            sum += a[i] * Math.Exp(e);
        }
        return sum;
    }
}

/// <summary>
/// f delta^d (1/(delta0 - delta) - 1/delta0), delta0 = sum g tau^h / sum p tau^q: the free-volume term of Batschinski and Hildebrand
/// in the correlations of Vogel and of Huber and their co-workers. The close-packed density delta0 is never reached by a fluid.
/// </summary>
internal sealed class FreeVolume(double reducingTemperatureK, double reducingDensity, double factor, double d, double[] g, double[] h, double[] p, double[] q) : TransportTerm
{
    public override double Value(PurePoint point)
    {
        double delta = point.Rho / reducingDensity, tau = reducingTemperatureK / point.T, top = 0, bottom = 0;
        for (int i = 0; i < g.Length; i++) top += g[i] * Math.Pow(tau, h[i]);
        for (int i = 0; i < p.Length; i++) bottom += p[i] * Math.Pow(tau, q[i]);
        double limit = top / bottom;
        return factor * Math.Pow(delta, d) * (1 / (limit - delta) - 1 / limit);
    }
}

/// <summary>C sum1/(1 + sum2), each sum over a delta^d tau^t: Friend et al., ethane (1991) and methane (1989).</summary>
internal sealed class RationalDensity(double factor, PowerExponential numerator, PowerExponential denominator) : TransportTerm
{
    public override double Value(PurePoint p) => factor * numerator.Value(p) / (1 + denominator.Value(p));
}

/// <summary>
/// Friction theory, Quinones-Cisneros and Deiters, J. Phys. Chem. B 110 (2006) 12820: linear and quadratic in the ideal, repulsive
/// and attractive pressures (bar). Each coefficient is (A0 + A1 (exp(tau) - 1)) tau^N.
/// </summary>
internal sealed class FrictionTheory(double reducingTemperatureK, double[] ideal, double[] attractive, double[] repulsive,
    double[] idealSquared, double[] attractiveSquared, double[] repulsiveSquared) : TransportTerm
{
    private const double Bar = 1e5;

    public override double Value(PurePoint p)
    {
        double tau = reducingTemperatureK / p.T, psi = Math.Exp(tau) - 1, tau3 = tau * tau * tau;
        double K(double[] a) => a[0] + a[1] * psi;
        double thermal = p.ThermalPressure / Bar, pa = p.Pressure / Bar - thermal, pid = p.Rho * p.GasConstant * p.T / Bar, dpr = thermal - pid;
        return (K(ideal) * pid + K(attractive) * pa + K(repulsive) * dpr) * tau
            + (K(idealSquared) * pid * pid + K(attractiveSquared) * pa * pa + K(repulsiveSquared) * dpr * dpr) * tau3;
    }
}

/// <summary>Dense hydrogen: Muzny, Huber, Kazakov, J. Chem. Eng. Data 58 (2013) 969, last term of equation 9.</summary>
internal sealed class HydrogenDense(double reducingTemperatureK, double reducingDensityKgM3, double[] c) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double tr = p.T / reducingTemperatureK, r = p.MassDensity / reducingDensityKgM3, r2 = r * r;
        return c[0] * r2 * Math.Exp(c[1] * tr + c[2] / tr + c[3] * r2 / (c[4] + tr) + c[5] * r2 * r2 * r2);
    }
}

/// <summary>Dense carbon dioxide, reduced with the triple-point liquid: Laesecke, Muzny, J. Phys. Chem. Ref. Data 46 (2017) 013107, equations 8 and 9.</summary>
internal sealed class CarbonDioxideDense(double tripleTemperatureK, double tripleLiquidKgM3, double gasConstant, double molarMassGMol, double c1, double c2, double exponent) : TransportTerm
{
    private readonly double _scale = Math.Pow(tripleLiquidKgM3, 2.0 / 3) * Math.Sqrt(gasConstant * tripleTemperatureK)
        / (Math.Pow(molarMassGMol * 1e-3, 1.0 / 6) * Math.Cbrt(6.022140857e23));

    public override double Value(PurePoint p)
    {
        double tr = p.T / tripleTemperatureK, r = p.MassDensity / tripleLiquidKgM3;
        return _scale * (c1 * tr * r * r * r + (r * r + Math.Pow(r, exponent)) / (tr - c2));
    }
}

/// <summary>
/// X0 (exp(rhobar sum_ij c_ij (1/Tbar - 1)^i (rhobar - 1)^j) - 1), X0 the dilute property: water, Huber et al., J. Phys. Chem. Ref.
/// Data 38 (2009) 101 and 41 (2012) 033102. The critical enhancement of the viscosity (within 1 % of the critical
/// temperature) is left out.
/// </summary>
internal sealed class ExponentialGrid(bool conductivity, double reducingTemperatureK, double reducingDensityKgM3, double[][] c) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double x = reducingTemperatureK / p.T - 1, r = p.MassDensity / reducingDensityKgM3, y = r - 1, sum = 0;
        for (int i = c.Length - 1; i >= 0; i--)
        {
            double row = 0;
            for (int j = c[i].Length - 1; j >= 0; j--) row = row * y + c[i][j];
            sum = sum * x + row;
        }
        return (conductivity ? p.DiluteConductivity : p.DiluteViscosity) * (Math.Exp(r * sum) - 1);
    }
}

/// <summary>
/// R23: ((rhoL - rho)/rhoL)^C X0 + (rho/rhoL)^C X_L - X0 with X_L = C2 rhoL^2/(rhoL - rho) sqrt(T) exp(rho/(rhoL - rho) dG/(R T)):
/// Shan, Penoncello, Jacobsen, ASHRAE Trans. 106 (2000) 757.
/// </summary>
internal sealed class RateProcess(bool conductivity, double limitDensity, double exponent, double factor, double activation) : TransportTerm
{
    private const double R = 8.31451;

    public override double Value(PurePoint p)
    {
        double x0 = conductivity ? p.DiluteConductivity : p.DiluteViscosity, space = limitDensity - p.Rho;
        double liquid = factor * limitDensity * limitDensity / space * Math.Sqrt(p.T) * Math.Exp(p.Rho / space * activation / (R * p.T));
        return Math.Pow(space / limitDensity, exponent) * x0 + Math.Pow(p.Rho / limitDensity, exponent) * liquid - x0;
    }
}
