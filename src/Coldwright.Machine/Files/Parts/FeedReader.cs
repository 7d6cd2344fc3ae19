using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Parts;

/// <summary>Makes a feed.</summary>
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
        if (supply >= pressure)
            r.Complain("supply-pressure", $"supply-pressure: {QuantityText.Pressure(supply.Value)} is not below the vessel's {QuantityText.Pressure(pressure)}; leave it out when the supply gives enough pressure");
        return new FeedPart
        {
            Name = name,
            Gas = r.Choice("gas") ?? "nitrogen",
            PressurePa = pressure,
            SupplyPressurePa = supply,
            FeedCompressorEfficiency = r.Quantity("compressor-efficiency", 1),
        };
    }
}
