using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;

namespace Coldwright.Machine.Feed;

/// <summary>A feed compressor at one moment.</summary>
/// <param name="FlowKgPerS">Delivered, kg/s; 0 where the clearance gas or the leak takes all of the stroke.</param>
/// <param name="ElectricalW">W.</param>
/// <param name="DischargeK">Gas at the discharge port, K.</param>
/// <param name="DischargeEnthalpy">J/kg.</param>
/// <param name="ShellGainW">Heat into the shell: what goes in as electricity and does not leave with the gas, W.</param>
/// <param name="ShellLossW">Heat from the shell to the room or bath, W.</param>
/// <param name="VolumetricEfficiency">Delivered over swept volume at the suction's density.</param>
public readonly record struct FeedCompressorPoint(double FlowKgPerS, double ElectricalW, double DischargeK, double DischargeEnthalpy, double ShellGainW, double ShellLossW, double VolumetricEfficiency);

/// <summary>
/// A small compressor that pumps the product gas, with its shell as a store of heat: clearance gas expands along the gas's own isentrope, the leak is a
/// nozzle, the suction gas is warmed and the discharge gas exchanges with the shell; friction and motor losses go into the shell. The lumped parameters
/// are those of <see cref="CompressorTraits"/>; ports are taken as wide (docs/theory/batch.md). Not thread-safe.
/// </summary>
public sealed class FeedCompressor
{
    // Our assumptions where the file is silent: a machine weighs so much for its stroke, and steel warms by so much.
    private const double MassPerDisplacement = 0.8e6, SteelHeatCapacity = 470;
    private const double FanSpeedMPerS = 3;
    // below this share of the swept flow the discharge temperature is not followed further: there is hardly any gas to carry heat
    private const double LeastShare = 0.03;

    private readonly GasPhase _gas;
    private readonly CompressorMachine _machine;
    private readonly WaterBath? _bath;
    private readonly double _speed, _roomK;

    /// <param name="description">The machine.</param>
    /// <param name="gas">What it pumps.</param>
    /// <param name="roomK">Room, K.</param>
    public FeedCompressor(FeedCompressorDescription description, GasPhase gas, double roomK)
    {
        (_gas, _roomK, _speed) = (gas, roomK, description.SpeedRevPerS);
        var traits = CompressorTraits.For(description.Type == CompressorType.Rotary ? CompressorKind.Rotary : CompressorKind.Reciprocating);
        if (description.ClearanceFraction is { } clearance) traits = traits with { ClearanceFraction = clearance };
        var cooling = new ShellCooling
        {
            FanAirSpeedMPerS = description.Cooling == FeedCooling.Fan ? FanSpeedMPerS : 0,
            ConductanceWPerK = description.ShellConductanceWPerK,
        };
        _machine = new CompressorMachine { Traits = traits, DisplacementM3 = description.DisplacementM3, ShaftSpeedRevPerS = description.SpeedRevPerS, Cooling = cooling };
        if (description.Cooling == FeedCooling.WaterBath && description.ShellConductanceWPerK is null) _bath = new WaterBath(_machine.ShellAreaM2);
        HeatCapacityJPerK = SteelHeatCapacity * (description.MassKg ?? MassPerDisplacement * description.DisplacementM3);
        MaximumShellK = description.MaximumShellTemperatureK ?? new CompressorLimits().ShellK!.Value;
        MaximumDischargeK = description.MaximumDischargeTemperatureK ?? new CompressorLimits().DischargeLineK!.Value;
    }

    /// <summary>Of shell, motor and pump, J/K.</summary>
    public double HeatCapacityJPerK { get; }
    /// <summary>Hottest shell allowed, K.</summary>
    public double MaximumShellK { get; }
    /// <summary>Hottest discharge allowed, K.</summary>
    public double MaximumDischargeK { get; }

    /// <summary>The machine running.</summary>
    /// <param name="suctionK">Gas before it, K.</param>
    /// <param name="suctionPa">Pa absolute.</param>
    /// <param name="dischargePa">Pa absolute; where it is not above the suction's the gas is pushed through against 2 %.</param>
    /// <param name="shellK">Shell, K.</param>
    public FeedCompressorPoint At(double suctionK, double suctionPa, double dischargePa, double shellK)
    {
        var t = _machine.Traits;
        double end = Math.Max(dischargePa, 1.02 * suctionPa), stroke = _machine.DisplacementM3 * _speed;
        var suction = _gas.At(suctionK, suctionPa);
        var drawn = _gas.At(suctionK + t.SuctionHeating * (shellK - suctionK), suctionPa);
        var top = _gas.AtEntropy(end, drawn.Entropy, drawn.TemperatureK * Math.Pow(end / suctionPa, 0.25));
        double clearance = ClearanceReExpansion.FromDensityRatio(t.ClearanceFraction, top.Density / drawn.Density);
        double exponent = Math.Log(end / suctionPa) / Math.Log(top.Density / drawn.Density);
        double through = SmoothPositive(clearance, 0.01) * stroke * drawn.Density;
        double leak = t.LeakageAreaFactor * Math.Pow(_machine.DisplacementM3, 2.0 / 3) * GasRestriction.Nozzle(end, top.Density, suctionPa, exponent);
        double swept = stroke * drawn.Density, flow = swept * SmoothPositive((through - leak) / swept, 0.01);
        double indicated = through * (top.Enthalpy - drawn.Enthalpy), friction = t.FrictionPressurePa * stroke + t.FrictionShare * indicated;
        double load = (indicated + friction) / _machine.MotorRatingW, motor = _machine.MotorRatingW * (t.MotorConstantLoss + t.MotorQuadraticLoss * load * load);
        double electrical = indicated + friction + motor;
        double valve = drawn.Enthalpy + indicated / Math.Max(flow, LeastShare * swept), cp = (top.Enthalpy - drawn.Enthalpy) / (top.TemperatureK - drawn.TemperatureK);
        double valveK = drawn.TemperatureK + (valve - drawn.Enthalpy) / cp, dischargeK = valveK + t.DischargeExchange * (shellK - valveK);
        double enthalpy = top.Enthalpy + cp * (dischargeK - top.TemperatureK);
        return new(flow, electrical, dischargeK, enthalpy, electrical - flow * (enthalpy - suction.Enthalpy), Loss(shellK), flow / (stroke * suction.Density));
    }

    /// <summary>Heat from the shell while it stands or runs, W.</summary>
    /// <param name="shellK">Shell, K.</param>
    public double Loss(double shellK) => _bath?.HeatW(shellK, _roomK) ?? _machine.Cooling.HeatToRoom(shellK, _roomK, _machine.ShellAreaM2);

    /// <summary>Shell that stays the same while it runs on, K.</summary>
    /// <param name="suctionK">K.</param>
    /// <param name="suctionPa">Pa.</param>
    /// <param name="dischargePa">Pa.</param>
    public double SteadyShellK(double suctionK, double suctionPa, double dischargePa)
    {
        double Excess(double shellK) => At(suctionK, suctionPa, dischargePa, shellK) is var p ? p.ShellGainW - p.ShellLossW : 0;
        double low = Math.Min(_roomK, suctionK), high = _roomK + 40;
        while (Excess(high) > 0 && high < 900) high += 60;
        return Excess(high) > 0 ? high : Numerics.Roots.Brent.Solve(Excess, low, high, 1e-6);
    }

    // 0 below, the value above, rounded over a width: the integrator wants no corner
    private static double SmoothPositive(double value, double width) => value > 40 * width ? value : width * Math.Log(1 + Math.Exp(value / width));
}
