using Coldwright.Machine.Description;
using Coldwright.Machine.Throttling;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Parts;

/// <summary>Makes a throttle, and the capillary or valve of any part that has one.</summary>
internal static class ThrottleReader
{
    /// <summary>The throttle.</summary>
    public static ThrottlePart Read(SectionReader r, string name)
    {
        r.OnlyOneOf("capillary", "valve");
        return new ThrottlePart
        {
            Name = name,
            Capillary = Capillary(r, $"the capillary of part '{name}'"),
            Valve = Valve(r, $"the valve of part '{name}'"),
        };
    }

    /// <summary>The capillary; null when there is none.</summary>
    public static CapillaryDescription? Capillary(SectionReader owner, string where)
    {
        if (owner.Section("capillary", where) is not { } r) return null;
        var capillary = new CapillaryDescription
        {
            BoreM = r.Quantity("bore"),
            LengthM = r.Quantity("length"),
            RoughnessM = r.OptionalQuantity("roughness"),
            CoilDiameterM = r.OptionalQuantity("coil-diameter"),
        };
        if (capillary.RoughnessM > 0.1 * capillary.BoreM)
            r.Complain("roughness", $"roughness: {QuantityText.Length(capillary.RoughnessM.Value)} is more than a tenth of the bore, {QuantityText.Length(capillary.BoreM)}");
        if (capillary.CoilDiameterM < 4 * capillary.BoreM)
            r.Complain("coil-diameter", $"coil-diameter: {QuantityText.Length(capillary.CoilDiameterM.Value)} is less than four bores of {QuantityText.Length(capillary.BoreM)}");
        return capillary;
    }

    /// <summary>The valve; null when there is none.</summary>
    public static ValveDescription? Valve(SectionReader owner, string where)
    {
        if (owner.Section("valve", where) is not { } r) return null;
        r.OnlyOneOf("kv", "cv");
        return new ValveDescription
        {
            FlowCoefficientKv = r.OptionalQuantity("kv") ?? r.Quantity("cv") * ControlValve.KvPerCv,
            Opening = r.Quantity("opening", 1),
        };
    }
}
