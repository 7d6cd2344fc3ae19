using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;

namespace Coldwright.Machine.Compression;

/// <summary>A refrigerant between rating conditions: the two pressures and the cooling counted per mole. Not thread-safe.</summary>
public sealed class RatingCycle
{
    private readonly double[] _z;
    private readonly Flash _flash;
    private readonly Dictionary<double, double> _dew = [];
    private HermeticCompressor? _compressor;

    /// <param name="refrigerant">A substance or named blend: R22, R32, R410A, R407C, R290, R134a ...</param>
    /// <exception cref="ArgumentException">The name is not known.</exception>
    public RatingCycle(string refrigerant)
    {
        if (!MixtureText.TryParse(refrigerant, false, MolarMassOf, out var composition, out var problems, out var notes))
            throw new ArgumentException($"the rated refrigerant is not usable: {string.Join("; ", problems)}", nameof(refrigerant));
        (Refrigerant, Notes) = (refrigerant, notes);
        Model = ReferenceModel.Create(composition.Names);
        _z = [.. composition.MoleFractions];
        _flash = new Flash(Model);
    }

    /// <summary>As given.</summary>
    public string Refrigerant { get; }
    /// <summary>What was done to the name: a blend taken apart.</summary>
    public IReadOnlyList<string> Notes { get; }
    /// <summary>Reference model of the refrigerant.</summary>
    public HelmholtzModel Model { get; }
    /// <summary>Mole fractions in the model's order.</summary>
    public IReadOnlyList<double> Composition => _z;

    /// <summary>Dew pressure, Pa.</summary>
    /// <param name="temperatureK">K.</param>
    public double DewPressure(double temperatureK)
    {
        if (!_dew.TryGetValue(temperatureK, out double pa)) _dew[temperatureK] = pa = _flash.TemperatureVapourFraction(temperatureK, 1, _z).PressurePa;
        return pa;
    }

    /// <summary>Bubble temperature, K.</summary>
    /// <param name="pressurePa">Pa absolute.</param>
    public double BubbleTemperature(double pressurePa) => _flash.PressureVapourFraction(pressurePa, 0, _z).TemperatureK;

    /// <summary>Cooling counted per mole that the compressor delivers: h(useful gas) - h(liquid), J/mol.</summary>
    /// <param name="conditions">State points.</param>
    public double CoolingPerMole(RatingConditions conditions)
    {
        double low = DewPressure(conditions.EvaporatingK), high = DewPressure(conditions.CondensingK);
        // gas at its dew point: the flash could as well call it liquid
        double gas = Math.Max(conditions.UsefulGasK, conditions.EvaporatingK + 1e-3);
        return _flash.TemperaturePressure(gas, low, _z).MolarEnthalpy - _flash.TemperaturePressure(conditions.LiquidK, high, _z).MolarEnthalpy;
    }

    /// <summary>The compressor's duty at the conditions.</summary>
    /// <param name="conditions">State points.</param>
    public CompressorDuty Duty(RatingConditions conditions) => new()
    {
        SuctionTemperatureK = Math.Max(conditions.ReturnGasK, conditions.EvaporatingK + 1e-3),
        SuctionPressurePa = DewPressure(conditions.EvaporatingK),
        DischargePressurePa = DewPressure(conditions.CondensingK),
        RoomTemperatureK = conditions.RoomTemperatureK,
    };

    /// <summary>A machine on this refrigerant; trials of a fit start from each other's states.</summary>
    internal HermeticCompressor Compressor(CompressorMachine machine) => _compressor = _compressor?.With(machine) ?? new HermeticCompressor(machine, Model, _z);

    private static double MolarMassOf(string name) => SubstanceCatalog.Get(name).MolarMass;
}
