using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Numerics;

namespace Coldwright.Machine.Feed;

/// <summary>A point of one homogeneous phase, per kilogram.</summary>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa absolute.</param>
/// <param name="Density">kg/m3.</param>
/// <param name="Enthalpy">J/kg on the documented caloric zero.</param>
/// <param name="Entropy">J/(kg K).</param>
public readonly record struct PhasePoint(double TemperatureK, double PressurePa, double Density, double Enthalpy, double Entropy)
{
    /// <summary>J/kg.</summary>
    public double InternalEnergy => Enthalpy - PressurePa / Density;
}

/// <summary>
/// One homogeneous phase of the product by its equation of state, without a stability certificate: for gas that is known to be gas, and for inner
/// loops whose caller knows the phases. Not thread-safe.
/// </summary>
public sealed class GasPhase
{
    private readonly HelmholtzModel _model;
    private readonly PhaseEvaluation _e;
    private readonly double[] _z;

    /// <param name="model">Fluid model.</param>
    /// <param name="z">Mole fractions.</param>
    public GasPhase(HelmholtzModel model, IReadOnlyList<double> z)
    {
        (_model, _e, _z) = (model, model.CreateEvaluation(), [.. z]);
        for (int i = 0; i < _z.Length; i++) MolarMass += _z[i] * model.Substances[i].MolarMass;
    }

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; }

    /// <summary>The phase at temperature (K) and density (kg/m3).</summary>
    public PhasePoint AtDensity(double temperatureK, double density)
    {
        double molar = density / MolarMass;
        _e.SetIsotherm(temperatureK, _z);
        var (h, s) = PhaseProperties.Caloric(_model, _e, molar);
        return new(temperatureK, molar * _e.GasConstant * temperatureK * (1 + _e.ADensity), density, h / MolarMass, s / MolarMass);
    }

    /// <summary>The gas at temperature (K) and pressure (Pa).</summary>
    /// <exception cref="SolveException">There is no gas root.</exception>
    public PhasePoint At(double temperatureK, double pressurePa)
    {
        _e.SetIsotherm(temperatureK, _z);
        double molar = DensityRoots.Find(_e, pressurePa, Branch.Vapour, double.NaN);
        if (!(molar > 0)) throw Failed(FormattableString.Invariant($"{_model.Substances[0].Name} is no gas at {temperatureK:0.###} K and {pressurePa / 1e5:0.###} bar absolute"));
        return AtDensity(temperatureK, molar * MolarMass);
    }

    /// <summary>The gas at a pressure (Pa) and entropy (J/(kg K)); the search starts at a temperature (K).</summary>
    /// <exception cref="SolveException">There is none.</exception>
    public PhasePoint AtEntropy(double pressurePa, double entropy, double guessK)
    {
        var point = At(guessK, pressurePa);
        for (int i = 0; i < 40; i++)
        {
            // ds = cp dT/T along the isobar
            double cp = PhaseProperties.Second(_model, _e, point.Density / MolarMass).Cp / MolarMass, step = (entropy - point.Entropy) * point.TemperatureK / cp;
            step = Math.Clamp(step, -0.3 * point.TemperatureK, 0.5 * point.TemperatureK);
            if (Math.Abs(step) < 1e-12 * point.TemperatureK) return point;
            point = At(point.TemperatureK + step, pressurePa);
        }
        return Math.Abs(entropy - point.Entropy) < 1e-7 * Math.Abs(entropy) + 1e-6 ? point : throw Failed(FormattableString.Invariant($"no gas state at {pressurePa / 1e5:0.###} bar absolute with entropy {entropy:0.###} J/(kg K)"));
    }

    private static SolveException Failed(string why) => new(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, why));
}
