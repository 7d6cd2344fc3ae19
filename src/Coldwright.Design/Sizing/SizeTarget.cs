using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Design.Sizing;

/// <summary>What a part is sized for. SI.</summary>
/// <param name="Id">One of the ids of <see cref="SizeTargets"/>.</param>
/// <param name="Value">SI.</param>
public sealed record SizeTarget(string Id, double Value);

/// <summary>A target that a kind of part can be sized for.</summary>
/// <param name="Id">Name in machine-readable output, SI unit at the end.</param>
/// <param name="Name">For a person.</param>
/// <param name="Kind">Its quantity, with an example and limits.</param>
public sealed record TargetKind(string Id, string Name, QuantityKind Kind);

/// <summary>Which targets each kind of part knows.</summary>
public static class SizeTargets
{
    private static readonly TargetKind
        _cooling = new("cooling_W", "heat that the coil takes up at the load's temperature", (QuantityKind.Power with { Example = "45 W" }).Between(0.01, 1e5)),
        _conductance = new("conductance_W_K", "conductance UA", (QuantityKind.Conductance with { Example = "100 W/K" }).Between(0.01, 1e6)),
        _flow = new("mass_flow_kg_s", "flow", (QuantityKind.MassFlow with { Example = "2.1 g/s" }).Between(1e-8, 1)),
        _volume = new("volume_m3", "volume inside", (QuantityKind.Volume with { Example = "0.6 L" }).Between(1e-6, 10)),
        _difference = new("difference_K", "load warmer than the mixture leaving", (QuantityKind.TemperatureDifference with { Example = "2.5 K" }).Between(0.05, 50)),
        _leak = new("leak_W", "heat leak", (QuantityKind.Power with { Example = "4 W" }).Between(0.001, 1e4)),
        _mass = new("content_kg", "gas to be taken from it", (QuantityKind.Mass with { Example = "300 g" }).Between(1e-4, 100)),
        _rest = new("standstill_Pa", "pressure of the loop at rest", (QuantityKind.Pressure with { Example = "14 barg" }).Between(2e4, 1e7)),
        _time = new("discharge_s", "time of a discharge", (QuantityKind.Time with { Example = "3 min" }).Between(1, 36000)),
        _outlet = new("outlet_K", "temperature at which the mixture leaves", (QuantityKind.Temperature with { Example = "-35 °C" }).Between(150, 300)),
        _interval = new("interval_s", "time between openings of the oil return", (QuantityKind.Time with { Example = "20 min" }).Between(10, 360000)),
        _approach = new("approach_K", "gas warmer than the room's air", (QuantityKind.TemperatureDifference with { Example = "6 K" }).Between(0.2, 60));

    /// <summary>Targets of a part, the usual one first; empty for a part that is not sized.</summary>
    public static IReadOnlyList<TargetKind> Of(Part part) => part switch
    {
        RecuperatorPart => [_cooling, _conductance],
        ThrottlePart => [_flow],
        VesselPart or FlaskPart => [_volume],
        CoilPart => [_difference],
        ColdBoxPart => [_leak],
        FeedPart => [_mass],
        BufferPart => [_rest],
        ValvePart => [_time],
        AftercoolerPart => [_approach],
        PrecoolerPart { Loop: not null } => [_outlet],
        CompressorPart { Oil: not null } => [_interval],
        ReliefPart => [],
        _ => [],
    };

    /// <summary>True for a part that can be sized.</summary>
    public static bool CanBeSized(Part part) => part is ReliefPart || Of(part).Count > 0;
}
