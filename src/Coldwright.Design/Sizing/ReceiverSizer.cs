using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Quantities;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Design.Sizing;

/// <summary>Cylinder or receiver that a mass of product gas is taken from, real gas.</summary>
internal static class ReceiverSizer
{
    // our assumptions: what a batch takes of a vessel's brimful; cylinders as they are sold; a full cylinder; pressure left over the vessel's by the regulator
    private const double BatchFill = 0.8, FullCylinderPa = 150e5, OverVesselPa = 1e5;
    private static readonly double[] _litres = [2, 5, 10, 20, 27, 38, 50, 80, 100, 200, 300];

    public static SizeResult Size(SizeContext c, FeedPart part, SizeTarget? target)
    {
        var fluid = new ProductFluid(part.Gas);
        double mass = target?.Value ?? Batch(c, part, fluid);
        if (target is null) c.Said.Add(FormattableString.Invariant($"sized for one batch, {100 * BatchFill:0} % of the vessel's brimful (our assumption): {1e3 * mass:0} g; a target asks for another mass"));
        double full = part.Receiver?.PressurePa ?? (part.SupplyPressurePa is { } supply ? 2 * supply : FullCylinderPa), empty = part.Receiver?.LowestPressurePa ?? part.SupplyPressurePa ?? part.PressurePa + OverVesselPa;
        if (part.Receiver is null) c.Said.Add(Spoken.Of($"no receiver is described: it was taken as falling from {Pressure(full, "0.#")} to {Pressure(empty, "0.#")} (our assumption); add 'receiver' to {part.Name} (volume, pressure, lowest-pressure)"));
        if (!(full > empty)) throw new ArgumentException(FormattableString.Invariant($"the receiver begins at {full / 1e5:0.##} bar absolute and must end above {empty / 1e5:0.##} bar absolute: nothing can be taken from it"), nameof(part));
        double perM3 = Density(c, fluid, full) - Density(c, fluid, empty), need = mass / perM3;
        var options = _litres.Select(l => new SizeOption
        {
            Stock = FormattableString.Invariant($"{l:0} L"),
            Figures = [new("volume_m3", "Volume", 1e-3 * l, "m3"), new("gives_kg", "Gives on the way down", 1e-3 * l * perM3, "kg"), new("fillings", "Times what was asked for", l * 1e-3 / need, "1"), new("full_Pa", "Full", full, "Pa"), new("empty_Pa", "Ends at", empty, "Pa")],
            Cut = [new(FormattableString.Invariant($"receiver or cylinder, {l:0} L"), 1, "piece")],
            Keys = [("receiver", FormattableString.Invariant($"{{volume: {l:0} L, pressure: {(full - c.RoomPa) / 1e5:0.##} barg, lowest-pressure: {(empty - c.RoomPa) / 1e5:0.##} barg}}"))],
            WhyNot = 1e-3 * l < need ? FormattableString.Invariant($"{1e3 * need:0.##} L are needed") : "",
        });
        return new SizeResult
        {
            Part = part.Name,
            Kind = "feed",
            Target = new("content_kg", "Gas to be taken from it", mass, "kg"),
            TargetRemark = Spoken.Of($"from {Pressure(full, "0.##")} to {Pressure(empty, "0.##")} at the room's temperature: {1e3 * need:0.##} L"),
            Method = "the gas's reference equation at the room's temperature",
            Options = SizeContext.Sorted(options, "volume_m3"),
            Columns = ["volume_m3", "gives_kg", "fillings"],
            Sources = [fluid.Model.Substances[0].Source, "docs/theory/size.md"],
            Warnings = ["cylinders and receivers are pressure vessels with their own law: take a stamped one within its test date"],
        };
    }

    internal static double Density(SizeContext c, ProductFluid fluid, double pressurePa) => fluid.At(c.RoomK, pressurePa).MolarDensity * fluid.MolarMass;

    internal static double Batch(SizeContext c, FeedPart feed, ProductFluid fluid)
    {
        if (c.Layout.Vessel is not { } vessel) throw new ArgumentException($"'{feed.Name}' feeds no vessel: a target says how much gas is to be taken", nameof(feed));
        double pressure = Math.Min(feed.PressurePa, 0.95 * fluid.CriticalPressurePa);
        return BatchFill * vessel.VolumeM3 * fluid.Saturated(pressure, 0).MolarDensity * fluid.MolarMass;
    }
}
