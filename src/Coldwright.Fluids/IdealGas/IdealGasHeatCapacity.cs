namespace Coldwright.Fluids.IdealGas;

/// <summary>
/// Ideal-gas heat capacity cp0/R = c0 + sum n (theta/T)^2 e^(theta/T)/(e^(theta/T)-1)^2 + sum m T^k and its integrals
/// from the caloric zero (<see cref="CaloricZero"/>). Coefficients and range: those of the fluid's paper.
/// </summary>
public sealed class IdealGasHeatCapacity
{
    private readonly double _constant;
    private readonly double[] _n, _theta, _m, _k;
    private readonly double _h0, _s0;

    /// <param name="constant">c0, dimensionless.</param>
    /// <param name="einsteinN">n, dimensionless.</param>
    /// <param name="einsteinThetaK">theta, K.</param>
    /// <param name="powerN">m, K^-k.</param>
    /// <param name="powerExponent">k, not -1.</param>
    public IdealGasHeatCapacity(double constant, double[] einsteinN, double[] einsteinThetaK, double[] powerN, double[] powerExponent)
    {
        (_constant, _n, _theta, _m, _k) = (constant, einsteinN, einsteinThetaK, powerN, powerExponent);
        _h0 = IntegralCp(CaloricZero.TemperatureK);
        _s0 = IntegralCpOverT(CaloricZero.TemperatureK);
    }

    /// <summary>cp0/R at <paramref name="temperatureK"/>.</summary>
    public double HeatCapacity(double temperatureK)
    {
        double cp = _constant;
        for (int i = 0; i < _n.Length; i++)
        {
            double u = _theta[i] / temperatureK;
            double e = Math.Exp(-u);
            cp += _n[i] * u * u * e / ((1 - e) * (1 - e));
        }
        for (int i = 0; i < _m.Length; i++) cp += _m[i] * Math.Pow(temperatureK, _k[i]);
        return cp;
    }

    /// <summary>h0/R, K, zero at the caloric zero.</summary>
    public double Enthalpy(double temperatureK) => IntegralCp(temperatureK) - _h0;

    /// <summary>s0/R at 101,325 Pa, dimensionless, zero at the caloric zero.</summary>
    public double Entropy(double temperatureK) => IntegralCpOverT(temperatureK) - _s0;

    private double IntegralCp(double t)
    {
        double h = _constant * t;
        for (int i = 0; i < _n.Length; i++)
        {
            double e = Math.Exp(-_theta[i] / t);
            h += _n[i] * _theta[i] * e / (1 - e);
        }
        for (int i = 0; i < _m.Length; i++) h += _m[i] * Math.Pow(t, _k[i] + 1) / (_k[i] + 1);
        return h;
    }

    private double IntegralCpOverT(double t)
    {
        double s = _constant * Math.Log(t);
        for (int i = 0; i < _n.Length; i++)
        {
            double u = _theta[i] / t;
            double e = Math.Exp(-u);
            s += _n[i] * (u * e / (1 - e) - Math.Log(1 - e));
        }
        for (int i = 0; i < _m.Length; i++)
            s += _k[i] == 0 ? _m[i] * Math.Log(t) : _m[i] * Math.Pow(t, _k[i]) / _k[i];
        return s;
    }
}
