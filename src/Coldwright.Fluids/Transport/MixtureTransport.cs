using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;

namespace Coldwright.Fluids.Transport;

/// <summary>
/// Residual entropy scaling of a mixture, tied to the pure correlations: from a mole fraction of <see cref="TieFrom"/> on, the
/// result is drawn over to the main component's own correlation (geometrically, in proportion), so that a property does not jump
/// when the last impurity leaves. The tie is our addition. One object per thread.
/// </summary>
internal sealed class MixtureTransport
{
    /// <summary>Mole fraction of the main component above which its own correlation has a share.</summary>
    public const double TieFrom = 0.95;

    private readonly PureTransport[] _pure;
    private readonly PhaseEvaluation _evaluation;
    private readonly double[] _mass, _eta0, _lambda0;

    public MixtureTransport(MultiFluidModel model, PureTransport[] pure)
    {
        _pure = pure;
        _evaluation = model.CreateEvaluation();
        _mass = [.. pure.Select(p => p.Substance.MolarMass)];
        (_eta0, _lambda0) = (new double[pure.Length], new double[pure.Length]);
    }

    /// <summary>s = -s_res/R of the last call.</summary>
    public double ResidualEntropy { get; private set; }

    /// <summary>Pa s.</summary>
    public double Viscosity(double t, double rho, ReadOnlySpan<double> x)
    {
        Prepare(t, rho, x);
        double s = ResidualEntropy, y = 0;
        for (int i = 0; i < _pure.Length; i++)
            if (x[i] > 0) y += x[i] * _pure[i].Data.ViscosityCurve!.Value(s);
        double eta = DiluteMixture.Mix(x, _mass, _eta0, _eta0) + EntropyScaling.Viscosity(y, s, t, rho, MeanMass(x));
        int main = Main(t, x, out double share);
        if (share <= 0 || _pure[main].Data.Viscosity is null) return eta;
        double alone = _eta0[main] + EntropyScaling.Viscosity(_pure[main].Data.ViscosityCurve!.Value(s), s, t, rho, _mass[main]);
        return eta * Drawn(_pure[main].Viscosity(t, rho), alone, share);
    }

    /// <summary>W/(m K).</summary>
    /// <param name="t">K.</param>
    /// <param name="rho">mol/m3.</param>
    /// <param name="x">Mole fractions.</param>
    /// <param name="viscosity">Pa s; enters the critical enhancement, which is that of the main component near purity and left out elsewhere.</param>
    public double Conductivity(double t, double rho, ReadOnlySpan<double> x, double viscosity)
    {
        Prepare(t, rho, x);
        for (int i = 0; i < _pure.Length; i++)
            if (x[i] > 0) _lambda0[i] = _pure[i].DiluteConductivity(t, _eta0[i]);
        double s = ResidualEntropy, y = 0;
        for (int i = 0; i < _pure.Length; i++)
            if (x[i] > 0) y += x[i] * _pure[i].Data.ConductivityCurve!.Value(s);
        double lambda = DiluteMixture.Mix(x, _mass, _eta0, _lambda0) + EntropyScaling.Conductivity(y, s, t, rho, MeanMass(x));
        int main = Main(t, x, out double share);
        if (share <= 0) return lambda;
        if (_pure[main].Data.Conductivity is not null)
        {
            double alone = _lambda0[main] + EntropyScaling.Conductivity(_pure[main].Data.ConductivityCurve!.Value(s), s, t, rho, _mass[main]);
            lambda *= Drawn(_pure[main].ConductivityBackground(t, rho), alone, share);
        }
        return lambda + share * _pure[main].ConductivityEnhancement(t, rho, viscosity);
    }

    private void Prepare(double t, double rho, ReadOnlySpan<double> x)
    {
        _evaluation.SetIsotherm(t, x);
        if (rho > 0)
        {
            _evaluation.Gradient(rho);
            ResidualEntropy = _evaluation.A + _evaluation.ATemperature;
        }
        else ResidualEntropy = 0;
        for (int i = 0; i < _pure.Length; i++)
            if (x[i] > 0) _eta0[i] = _pure[i].DiluteViscosity(t);
    }

    private double MeanMass(ReadOnlySpan<double> x)
    {
        double sum = 0;
        for (int i = 0; i < _mass.Length; i++) sum += x[i] * _mass[i];
        return sum;
    }

    // a correlation asked beyond the density of its liquid may cross zero: then it has no say
    private static double Drawn(double own, double scaled, double share) => own > 0 && scaled > 0 ? Math.Pow(own / scaled, share) : 1;

    private int Main(double t, ReadOnlySpan<double> x, out double share)
    {
        int main = 0;
        for (int i = 1; i < x.Length; i++)
            if (x[i] > x[main]) main = i;
        share = Math.Min(1, (x[main] - TieFrom) / (1 - TieFrom));
        // faded out over 2 % of temperature below the triple point, where the correlation ends
        share *= Math.Clamp(50 * (t / _pure[main].Substance.TripleTemperatureK - 0.98), 0, 1);
        return main;
    }
}
