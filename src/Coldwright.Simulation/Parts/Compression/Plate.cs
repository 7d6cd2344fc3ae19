using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Parts.Compression;

/// <summary>Nameplates and rating sheets of the machine file, as the input of the compressor's model.</summary>
internal static class Plate
{
    /// <summary>The displacement by a nameplate; of an appliance with the band of what had to be assumed.</summary>
    public static DisplacementEstimate Displacement(NameplateDescription plate, CompressorMachine machine, CancellationToken cancel) => plate.Rating == NameplateRating.Appliance
        ? NameplateDisplacement.FromApplianceRating(plate.CapacityW, plate.Refrigerant, machine, Assumptions(plate), cancel)
        : NameplateDisplacement.FromCompressorRating(plate.CapacityW, plate.Refrigerant, machine, Conditions(plate), cancel);

    /// <summary>The state points of the rating: what the plate says, the usual ones for the rest.</summary>
    public static RatingConditions Conditions(NameplateDescription plate, RatingCycle? cycle = null)
    {
        if (plate.Rating == NameplateRating.Appliance)
        {
            var assumed = Assumptions(plate);
            return NameplateDisplacement.Conditions(cycle ?? new RatingCycle(plate.Refrigerant), assumed, assumed.EvaporatingK, assumed.CondensingK);
        }
        var usual = RatingConditions.Compressor;
        double gas = plate.ReturnGasK ?? Math.Max(usual.ReturnGasK, plate.EvaporatingK ?? 0);
        return usual with
        {
            EvaporatingK = plate.EvaporatingK ?? usual.EvaporatingK,
            CondensingK = plate.CondensingK ?? usual.CondensingK,
            ReturnGasK = gas,
            UsefulGasK = gas,
            LiquidK = plate.LiquidK ?? (plate.CondensingK is { } condensing ? condensing - (usual.CondensingK - usual.LiquidK) : usual.LiquidK),
        };
    }

    /// <summary>A sheet's polynomials.</summary>
    public static RatingMap Map(RatingSheetDescription sheet)
    {
        var map = new RatingMap
        {
            Refrigerant = sheet.Refrigerant,
            MassFlow = sheet.Imperial ? RatingPolynomial.FlowInPoundsPerHour(sheet.MassFlow) : RatingPolynomial.FlowInKilogramsPerHour(sheet.MassFlow),
            Power = new RatingPolynomial(sheet.Power, sheet.Imperial ? DewPointScale.Fahrenheit : DewPointScale.Celsius),
            Evaporating = sheet.Evaporating,
            Condensing = sheet.Condensing,
            ReturnGasK = sheet.ReturnGasK,
        };
        return sheet.SuperheatK is { } superheat ? map with { SuperheatK = superheat } : map;
    }

    private static ApplianceAssumptions Assumptions(NameplateDescription plate)
    {
        var assumed = new ApplianceAssumptions();
        if (plate.EvaporatingK is { } evaporating) assumed = assumed with { EvaporatingK = evaporating };
        return plate.CondensingK is { } condensing ? assumed with { CondensingK = condensing, CondensingLowK = condensing - 3, CondensingHighK = condensing + 4 } : assumed;
    }
}
