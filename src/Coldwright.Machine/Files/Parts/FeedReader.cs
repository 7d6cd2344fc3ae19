using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Parts;

/// <summary>Makes a feed with its receiver and compressor.</summary>
internal static class FeedReader
{
    /// <summary>The feed.</summary>
    public static FeedPart Read(SectionReader r, string name)
    {
        var supply = r.OptionalQuantity("supply-pressure");
        var pressure = r.Quantity("pressure");
        if (supply is not null && !r.Has("compressor-efficiency"))
            r.Complain("supply-pressure", $"part '{name}' has a supply-pressure, so it needs the compressor-efficiency of the feed compressor");
        if (supply is null && r.Has("compressor-efficiency"))
            r.Complain("compressor-efficiency", $"part '{name}' has a compressor-efficiency but no supply-pressure to compress from");
        if (supply is null && r.Has("compressor"))
            r.Complain("compressor", $"part '{name}' describes a compressor but no supply-pressure to compress from");
        if (supply >= pressure)
            r.Complain("supply-pressure", $"supply-pressure: {QuantityText.Pressure(supply.Value)} is not below the vessel's {QuantityText.Pressure(pressure)}; leave it out when the supply gives enough pressure");
        return new FeedPart
        {
            Name = name,
            Gas = r.Choice("gas") ?? "nitrogen",
            PressurePa = pressure,
            SupplyPressurePa = supply,
            FeedCompressorEfficiency = r.Quantity("compressor-efficiency", 1),
            Receiver = r.Section("receiver", $"the receiver of part '{name}'") is { } receiver ? Receiver(receiver, name, supply is null ? pressure : null) : null,
            Compressor = r.Section("compressor", $"the compressor of part '{name}'") is { } compressor ? Compressor(compressor) : null,
        };
    }

    private static ReceiverDescription Receiver(SectionReader r, string name, double? neededPa)
    {
        var receiver = new ReceiverDescription { VolumeM3 = r.Quantity("volume"), PressurePa = r.Quantity("pressure"), LowestPressurePa = r.OptionalQuantity("lowest-pressure") };
        if (receiver.LowestPressurePa >= receiver.PressurePa)
            r.Complain("lowest-pressure", $"lowest-pressure: {QuantityText.Pressure(receiver.LowestPressurePa.Value)} is not below the {QuantityText.Pressure(receiver.PressurePa)} at the start of part '{name}'");
        // Without a compressor gas flows by itself only.
        if (receiver.PressurePa <= neededPa)
            r.Complain("pressure", $"pressure: {QuantityText.Pressure(receiver.PressurePa)} in the receiver of part '{name}' is not above the vessel's {QuantityText.Pressure(neededPa.Value)}; add supply-pressure and compressor-efficiency when a compressor pumps");
        return receiver;
    }

    private static FeedCompressorDescription Compressor(SectionReader r) => new()
    {
        Type = r.Choice("type") == "rotary" ? CompressorType.Rotary : CompressorType.Reciprocating,
        DisplacementM3 = r.Quantity("displacement"),
        SpeedRevPerS = r.Quantity("speed"),
        ClearanceFraction = r.OptionalQuantity("clearance"),
        Cooling = r.Choice("shell-cooling") switch { "fan" => FeedCooling.Fan, "water-bath" => FeedCooling.WaterBath, _ => FeedCooling.StillAir },
        ShellConductanceWPerK = r.OptionalQuantity("shell-conductance"),
        MassKg = r.OptionalQuantity("mass"),
        MaximumDischargeTemperatureK = r.OptionalQuantity("maximum-discharge-temperature"),
        MaximumShellTemperatureK = r.OptionalQuantity("maximum-shell-temperature"),
        Lubrication = r.Choice("lubrication") switch { "pump" => FeedLubrication.Pump, "splash" => FeedLubrication.Splash, "dry-sump" => FeedLubrication.DrySump, _ => null },
        LowestSpeedRevPerS = r.OptionalQuantity("lowest-speed"),
        OilChargeKg = r.OptionalQuantity("oil-charge"),
    };

    /// <summary>A valve.</summary>
    public static ValvePart Valve(SectionReader r, string name) => new()
    {
        Name = name, FlowCoefficientKv = r.OptionalQuantity("kv"), SeatLeakKgPerS = r.Quantity("seat-leak", 0), BodyMassKg = r.Quantity("body-mass", 0),
    };

    /// <summary>A flask.</summary>
    public static FlaskPart Flask(SectionReader r, string name) => new()
    {
        Name = name, VolumeM3 = r.Quantity("volume"), BoilOffM3PerS = r.OptionalQuantity("boil-off"), WallMassKg = r.OptionalQuantity("wall-mass"),
        WallMaterial = r.Has("wall-material") ? r.Material("wall-material") : null,
    };
}
