namespace Coldwright.Fluids.Transport.Terms;

/// <summary>eta0 = C sqrt(M T)/(sigma^2 exp(sum a (ln T*)^t)), T* = T/(eps/k); M in g/mol, sigma in nm.</summary>
internal sealed class CollisionIntegral(double factor, double molarMassGMol, double sigmaNm, double epsilonK, double[] a, double[] t) : TransportTerm
{
    private readonly double _scale = factor * Math.Sqrt(molarMassGMol) / (sigmaNm * sigmaNm);

    public override double Value(PurePoint p)
    {
        double x = Math.Log(p.T / epsilonK), s = 0;
        for (int i = 0; i < a.Length; i++) s += a[i] * Math.Pow(x, t[i]);
        return _scale * Math.Sqrt(p.T) * Math.Exp(-s);
    }
}

/// <summary>
/// Chapman-Enskog theory of a Lennard-Jones gas: eta0 = 26.692e-9 sqrt(M T)/(sigma^2 Omega) (M in g/mol, sigma in nm), with
/// Omega(2,2) of Neufeld, Janzen, Aziz, J. Chem. Phys. 57 (1972) 1100, without its small sine term.
/// </summary>
internal sealed class KineticTheory(double molarMassGMol, double sigmaNm, double epsilonK) : TransportTerm
{
    private readonly double _scale = 26.692e-9 * Math.Sqrt(molarMassGMol) / (sigmaNm * sigmaNm);

    public override double Value(PurePoint p) => At(p.T);

    public double At(double temperatureK)
    {
        double ts = temperatureK / epsilonK;
        double omega = 1.16145 * Math.Pow(ts, -0.14874) + 0.52487 * Math.Exp(-0.77320 * ts) + 2.16178 * Math.Exp(-2.43787 * ts);
        return _scale * Math.Sqrt(temperatureK) / omega;
    }
}

/// <summary>sum a Tr^t / sum b Tr^u, Tr = T/T_reducing; without b the denominator is 1.</summary>
internal sealed class TemperatureRatio(double reducingTemperatureK, double[] a, double[] t, double[] b, double[] u) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double tr = p.T / reducingTemperatureK, top = 0, bottom = b.Length == 0 ? 1 : 0;
        for (int i = 0; i < a.Length; i++) top += a[i] * Math.Pow(tr, t[i]);
        for (int i = 0; i < b.Length; i++) bottom += b[i] * Math.Pow(tr, u[i]);
        return top / bottom;
    }
}

/// <summary>C sqrt(T*) sum a_i (T*)^((i-1)/3 - 1), i = 1...: Friend, Ingham, Ely, J. Phys. Chem. Ref. Data 20 (1991) 275, and 18 (1989) 583.</summary>
internal sealed class CollisionSeries(double factor, double epsilonK, double[] a) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double ts = p.T / epsilonK, root = Math.Cbrt(ts), power = 1 / ts, sum = 0;
        foreach (double c in a)
        {
            sum += c * power;
            power *= root;
        }
        return factor * Math.Sqrt(ts) * sum;
    }
}

/// <summary>Dilute carbon dioxide: Laesecke, Muzny, J. Phys. Chem. Ref. Data 46 (2017) 013107, equation 4.</summary>
internal sealed class CarbonDioxideDilute(double factor, double[] a) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double root3 = Math.Cbrt(p.T), root6 = Math.Sqrt(root3), root2 = Math.Sqrt(p.T);
        return factor * root2 / (a[0] + a[1] * root6 + a[2] * Math.Exp(a[3] * root3) + (a[4] + a[5] * root3) / Math.Exp(root3) + a[6] * root2);
    }
}

/// <summary>A constant times the viscosity at zero density (the translational part of a dilute conductivity); J/(kg K).</summary>
internal sealed class DiluteViscosityMultiple(double factor) : TransportTerm
{
    public override double Value(PurePoint p) => factor * p.DiluteViscosity;
}

/// <summary>
/// lambda0 = C eta0 (15/4 + f (cp0/R - 5/2)), f = f0 + f1/T*; C = R/M in J/(kg K). eta0 is the fluid's, or the terms given
/// here where the conductivity's authors used their own.
/// </summary>
internal sealed class Eucken(double factor, double epsilonK, double f0, double f1, TransportTerm[] viscosity) : TransportTerm
{
    public override double Value(PurePoint p)
    {
        double eta = viscosity.Length == 0 ? p.DiluteViscosity : Sum(viscosity, p);
        return factor * eta * (3.75 + (f0 + f1 * epsilonK / p.T) * (p.IdealHeatCapacity - 2.5));
    }
}
