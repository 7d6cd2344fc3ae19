using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Parts;

/// <summary>Makes compressors and what describes them: nameplate, rating sheet, oil circuit.</summary>
internal static class CompressorReader
{
    /// <summary>The loop's compressor.</summary>
    public static CompressorPart Read(SectionReader r, string name)
    {
        var hasSwept = r.Has("displacement") || r.Has("speed");
        if (hasSwept && (r.Has("molar-flow") || r.Has("mass-flow")))
            r.Complain("displacement", $"part '{name}' gives both the swept volume and a measured flow; keep one of the two");
        else
            r.OnlyOneOf("molar-flow", "mass-flow");
        if (r.Has("nameplate") || r.Has("rating-sheet"))
        {
            r.Together("isentropic-efficiency", "motor-efficiency");
            r.Together("motor-efficiency", "isentropic-efficiency");
        }
        r.OnlyOneOf("shell-conductance", "shell-cooling");

        var part = new CompressorPart
        {
            Name = name,
            Type = Type(r),
            DisplacementM3 = r.OptionalQuantity("displacement"),
            SpeedRevPerS = r.OptionalQuantity("speed"),
            FlowMolPerS = r.OptionalQuantity("molar-flow") ?? r.OptionalQuantity("mass-flow") / r.Context.MixtureKgPerMol,
            ClearanceFraction = r.Quantity("clearance", 0),
            LeakagePerRatio = r.Quantity("leakage-per-ratio", 0),
            SuctionHeatingK = r.Quantity("suction-heating", 0),
            ShellHeatFraction = r.Quantity("shell-heat", 0),
            MaximumDischargeTemperatureK = r.Quantity("maximum-discharge-temperature"),
            SupplyFrequencyHz = r.OptionalQuantity("supply-frequency"),
            Poles = r.WholeNumber("poles"),
            ShellCooling = Cooling(r),
            ShellConductanceWPerK = r.OptionalQuantity("shell-conductance"),
            Nameplate = Nameplate(r, $"the nameplate of part '{name}'"),
            RatingSheet = RatingSheet(r, $"the rating sheet of part '{name}'"),
            Oil = Oil(r, name),
            GasVolumeM3 = r.OptionalQuantity("gas-volume"),
        };
        if (r.Has("isentropic-efficiency")) part = part with { IsentropicEfficiency = r.Efficiencies("isentropic-efficiency") };
        return r.OptionalQuantity("motor-efficiency") is { } motor ? part with { MotorEfficiency = motor } : part;
    }

    /// <summary>How it is built; rotary stands in for a wrong word.</summary>
    public static CompressorType Type(SectionReader r) => r.Choice("type") == "reciprocating" ? CompressorType.Reciprocating : CompressorType.Rotary;

    /// <summary>What cools its shell; null when it is not said.</summary>
    public static ShellCoolingWord? Cooling(SectionReader r) => r.Choice("shell-cooling") switch
    {
        "still-air" => ShellCoolingWord.StillAir,
        "fan" => ShellCoolingWord.Fan,
        _ => null,
    };

    /// <summary>The nameplate; null when there is none.</summary>
    public static NameplateDescription? Nameplate(SectionReader owner, string where)
    {
        if (owner.Section("nameplate", where) is not { } r) return null;
        var plate = new NameplateDescription
        {
            Rating = r.Choice("rating") == "appliance" ? NameplateRating.Appliance : NameplateRating.Compressor,
            CapacityW = r.Quantity("capacity"),
            PowerW = r.OptionalQuantity("power"),
            Refrigerant = r.Refrigerant("refrigerant"),
            EvaporatingK = r.OptionalQuantity("evaporating"),
            CondensingK = r.OptionalQuantity("condensing"),
            ReturnGasK = r.OptionalQuantity("return-gas"),
            LiquidK = r.OptionalQuantity("liquid"),
        };
        if (plate.Rating == NameplateRating.Appliance)
            foreach (var key in (string[])["return-gas", "liquid"])
                if (r.Has(key)) r.Complain(key, $"{where} is that of an appliance; '{key}' belongs to a compressor's own rating (rating: compressor)");
        Below(r, "evaporating", plate.EvaporatingK, "condensing", plate.CondensingK);
        Below(r, "evaporating", plate.EvaporatingK, "return-gas", plate.ReturnGasK);
        Below(r, "liquid", plate.LiquidK, "condensing", plate.CondensingK);
        return plate;
    }

    /// <summary>The rating sheet; null when there is none.</summary>
    public static RatingSheetDescription? RatingSheet(SectionReader owner, string where)
    {
        if (owner.Section("rating-sheet", where) is not { } r) return null;
        r.OnlyOneOf("return-gas", "superheat");
        var sheet = new RatingSheetDescription
        {
            Refrigerant = r.Refrigerant("refrigerant"),
            Imperial = r.Choice("units") == "ip",
            MassFlow = r.Numbers("mass-flow"),
            Power = r.Numbers("power"),
            Evaporating = (r.Quantity("lowest-evaporating"), r.Quantity("highest-evaporating")),
            Condensing = (r.Quantity("lowest-condensing"), r.Quantity("highest-condensing")),
            ReturnGasK = r.OptionalQuantity("return-gas"),
            SuperheatK = r.OptionalQuantity("superheat"),
        };
        Below(r, "lowest-evaporating", sheet.Evaporating.LowK, "highest-evaporating", sheet.Evaporating.HighK);
        Below(r, "lowest-condensing", sheet.Condensing.LowK, "highest-condensing", sheet.Condensing.HighK);
        Below(r, "lowest-evaporating", sheet.Evaporating.LowK, "highest-condensing", sheet.Condensing.HighK);
        return sheet;
    }

    private static OilDescription? Oil(SectionReader owner, string name) => owner.Section("oil", $"the oil of part '{name}'") is not { } r ? null : new()
    {
        Circulation = r.OptionalQuantity("circulation"),
        SeparatorEfficiency = r.OptionalQuantity("separator-efficiency"),
        SumpVolumeM3 = r.Quantity("sump-volume"),
        UsedShare = r.OptionalQuantity("used-share"),
        ReturnBoreM = r.Quantity("return-bore"),
        ReturnLengthM = r.Quantity("return-length"),
        DensityKgPerM3 = r.OptionalQuantity("density"),
        ViscosityM2PerS = r.OptionalQuantity("viscosity"),
        ChargeKg = r.OptionalQuantity("charge"),
        MolarMass = r.OptionalQuantity("molar-mass"),
        ColdTrapEfficiency = r.OptionalQuantity("cold-trap-efficiency"),
    };

    private static void Below(SectionReader r, string lowKey, double? lowK, string highKey, double? highK)
    {
        if (lowK >= highK) r.Complain(lowKey, $"{lowKey}: {QuantityText.Temperature(lowK.Value)} is not below {highKey}, {QuantityText.Temperature(highK.Value)}");
    }
}
