using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Parts;

/// <summary>Makes a buffer.</summary>
internal static class BufferReader
{
    /// <summary>The buffer.</summary>
    public static BufferPart Read(SectionReader r, string name)
    {
        var part = new BufferPart
        {
            Name = name,
            VolumeM3 = r.Quantity("volume"),
            OpeningPressurePa = r.Quantity("opening-pressure"),
            FullyOpenPressurePa = r.OptionalQuantity("fully-open-pressure"),
            ClosingPressurePa = r.OptionalQuantity("closing-pressure"),
            ValveBoreM = r.OptionalQuantity("valve-bore"),
            BleedBoreM = r.Quantity("bleed-bore"),
            BleedLengthM = r.Quantity("bleed-length", 0),
        };
        if (part.FullyOpenPressurePa <= part.OpeningPressurePa)
            r.Complain("fully-open-pressure", $"fully-open-pressure: {QuantityText.Pressure(part.FullyOpenPressurePa.Value)} is not above the opening pressure, {QuantityText.Pressure(part.OpeningPressurePa)}");
        if (part.ClosingPressurePa > part.OpeningPressurePa)
            r.Complain("closing-pressure", $"closing-pressure: {QuantityText.Pressure(part.ClosingPressurePa.Value)} is above the opening pressure, {QuantityText.Pressure(part.OpeningPressurePa)}");
        return part;
    }
}
