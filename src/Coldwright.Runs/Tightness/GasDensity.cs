using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;
using Coldwright.Fluids.Transport;

namespace Coldwright.Runs.Tightness;

/// <summary>Density and viscosity of a shut-in gas by the reference model.</summary>
internal sealed class GasDensity
{
    private readonly Flash _flash;
    private readonly double[] _z;
    private readonly TransportModel _transport;

    public GasDensity(Composition gas)
    {
        var model = ReferenceModel.Create(gas.Names);
        (_flash, _z, _transport) = (new Flash(model), [.. gas.MoleFractions], new TransportModel(model));
        MolarMass = model.Substances.Zip(_z, (s, x) => s.MolarMass * x).Sum();
        MolarMasses = [.. model.Substances.Select(s => s.MolarMass)];
        (GasConstant, Warnings) = (model.GasConstant, model.Warnings);
    }

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; }
    /// <summary>kg/mol of each component.</summary>
    public IReadOnlyList<double> MolarMasses { get; }
    /// <summary>J/(mol K).</summary>
    public double GasConstant { get; }
    /// <summary>What the model warns of.</summary>
    public IReadOnlyList<string> Warnings { get; }
    /// <summary>True when some state held more than one phase, so that its pressure does not count the amount.</summary>
    public bool HasCondensed { get; private set; }

    /// <summary>mol/m3; null when the model has no answer.</summary>
    public double? At(double temperatureK, double pressurePa)
    {
        if (!_flash.TrySolve(temperatureK, pressurePa, _z)) return null;
        HasCondensed |= _flash.PhaseCount > 1;
        return _flash.Density();
    }

    /// <summary>Change of pressure with temperature at constant density, Pa/K; null when the model has no answer.</summary>
    public double? PressurePerK(double temperatureK, double pressurePa)
    {
        const double dt = 0.5;
        var dp = 1e-3 * pressurePa;
        if (At(temperatureK + dt, pressurePa) is not { } warm || At(temperatureK - dt, pressurePa) is not { } cold
            || At(temperatureK, pressurePa + dp) is not { } more || At(temperatureK, pressurePa - dp) is not { } less) return null;
        return -(warm - cold) / (2 * dt) / ((more - less) / (2 * dp));
    }

    /// <summary>Viscosity, Pa s; null when there is no correlation or no single gas.</summary>
    public double? Viscosity(double temperatureK, double pressurePa)
    {
        if (!_flash.TrySolve(temperatureK, pressurePa, _z) || _flash.PhaseCount > 1) return null;
        return _transport.Complete(_flash.State()).State.Phases[0].ViscosityPaS;
    }
}
