using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.Transport;

/// <summary>
/// A pure fluid at a temperature and density with what the correlations ask of it. Derivatives of its reference
/// equation are worked out when first asked for. One object per thread, reused without allocation.
/// </summary>
internal sealed class PurePoint(Substance substance)
{
    private static readonly double[] One = [1];
    private readonly MultiFluidModel _model = new([substance], [], []);
    private PhaseEvaluation? _here, _reference;
    private bool _known;
    private double _cp, _cv;

    public Substance Substance => substance;

    /// <summary>K.</summary>
    public double T { get; private set; }
    /// <summary>mol/m3.</summary>
    public double Rho { get; private set; }
    /// <summary>Viscosity at zero density, Pa s; set by whoever evaluates a correlation.</summary>
    public double DiluteViscosity { get; set; }
    /// <summary>Conductivity at zero density, W/(m K); set likewise.</summary>
    public double DiluteConductivity { get; set; }
    /// <summary>Viscosity, Pa s; set before critical terms of the conductivity are asked for.</summary>
    public double Viscosity { get; set; }

    public void Set(double temperatureK, double molarDensity)
    {
        (T, Rho, _known) = (temperatureK, molarDensity, false);
        DiluteViscosity = DiluteConductivity = Viscosity = double.NaN;
    }

    /// <summary>kg/m3.</summary>
    public double MassDensity => Rho * substance.MolarMass;
    /// <summary>Pa.</summary>
    public double Pressure => Rho * GasConstant * T * (1 + Here.ADensity);
    /// <summary>T dp/dT at constant density, Pa.</summary>
    public double ThermalPressure => Rho * GasConstant * T * (1 + Here.ADensity + Here.ATemperatureDensity);
    /// <summary>dp/drho at constant temperature, J/mol.</summary>
    public double PressureSlope => GasConstant * T * (1 + 2 * Here.ADensity + Here.ADensity2);
    /// <summary>cp/R of the ideal gas.</summary>
    public double IdealHeatCapacity => substance.IdealGas.HeatCapacity(T);
    /// <summary>J/(mol K) of the paper of the equation of state.</summary>
    public double GasConstant => substance.GasConstant;

    /// <summary>cp, J/(mol K).</summary>
    public double Cp
    {
        get { _ = Here; return _cp; }
    }

    /// <summary>cv, J/(mol K).</summary>
    public double Cv
    {
        get { _ = Here; return _cv; }
    }

    /// <summary>dp/drho (J/mol) at another temperature and the same density.</summary>
    public double PressureSlopeAt(double temperatureK)
    {
        _reference ??= _model.CreateEvaluation();
        _reference.SetIsotherm(temperatureK, One);
        _reference.ReducedPressure(Rho, out double slope);
        return GasConstant * temperatureK * slope;
    }

    private PhaseEvaluation Here
    {
        get
        {
            _here ??= _model.CreateEvaluation();
            if (_known) return _here;
            _here.SetIsotherm(T, One);
            (_cv, _cp, _) = PhaseProperties.Second(_model, _here, Rho);
            _known = true;
            return _here;
        }
    }
}
