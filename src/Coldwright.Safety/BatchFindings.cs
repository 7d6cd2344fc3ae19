using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;
using Coldwright.Simulation.Batch;

namespace Coldwright.Safety;

/// <summary>What a batch adds to the findings about a machine: what its course shows, and every volume of the product's way that can hold liquid when it is shut.</summary>
public static class BatchFindings
{
    private const string Computed = "computed from the batch's course with the reference equation; relief devices for cryogenic vessels: ISO 21013-3";
    private const string Practice = "what is computed here; the maker's own limits come first";

    /// <summary>The cautions of the machine with those of its batch among them, gravest first; the standing reminder stays the last.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="shop">Its shop; null when there is none.</param>
    /// <param name="result">Its batch.</param>
    public static IReadOnlyList<Finding> Of(MachineDescription machine, ShopDescription? shop, BatchResult result)
    {
        var inputs = CautionInputs.Of(machine, shop, result.Rating);
        if (result.Impurities.Oxygen is { } oxygen) inputs = inputs with { OxygenInFeed = oxygen.Fresh };
        var all = Cautions.For(machine, inputs);
        return [.. all.SkipLast(1).Concat(OfBatch(machine, inputs, result)).Where(f => f.Grade != Grade.Note).OrderBy(f => f.Grade), all[^1]];
    }

    private static IEnumerable<Finding> OfBatch(MachineDescription machine, CautionInputs inputs, BatchResult result)
    {
        foreach (var concern in result.Concerns) yield return Made(concern);
        foreach (var finding in Volumes(machine, inputs, result)) yield return finding;
        var feed = machine.PartsOf<FeedPart>().First();
        if (feed is { Gas: "oxygen", SupplyPressurePa: not null })
            yield return new("oxygen-compressed", Grade.Stop, feed.Name, feed.PressurePa, null, "Pa", "oxygen is compressed only in machines made for it, without oil",
                "Beeson, Smith, Stewart, Safe Use of Oxygen and Oxygen Systems, ASTM MNL36 (2007)", "the oil burns inside the compressor", "take oxygen from a bottle with a regulator made for oxygen");
        if (result.Impurities.Oxygen is { TenthLeft: > 0.235 } enriched && feed.Gas != "oxygen")
            yield return new("oxygen-in-flask", enriched.Fresh > 0.235 ? Grade.Stop : Grade.Serious, "flask", 100 * enriched.TenthLeft, 23.5, "%", "no more than 23.5 % of oxygen where fire must not be fed",
                Oxygen.BoilOffEnrichment.Source, "the last tenth of the flask feeds fire like liquid oxygen", "use purer gas; pour the rest away outdoors, off tar and wood, and never top up a flask that has boiled down");
        foreach (var (name, _, frozen, _) in result.Impurities.Traces.Where(t => t.FrozenKg > 1e-9))
            yield return new($"freezes-{name}", Grade.Caution, machine.PartsOf<VesselPart>().First().Name, 1e6 * frozen, null, "mg", $"{name.Replace('-', ' ')} that comes with the feed freezes in the cold vessel",
                "solid fugacity against the reference model, see docs/theory/freezing.md", "it gathers from batch to batch and plugs the drain valve, which then will not shut or will not open", "dry the feed gas; let the vessel warm and blow it out before the frost can plug the valve");
    }

    private static IEnumerable<Finding> Volumes(MachineDescription machine, CautionInputs inputs, BatchResult result)
    {
        double fullest = result.Run.Series.Count > 0 ? result.Run.Series.Max(m => m.VesselKg) : 0;
        foreach (var volume in new MachineLayout(machine).ClosedVolumes().Where(v => v is { Zone: Zone.Feed, HoldsLiquid: true }))
        {
            bool vessel = volume.Parts.Any(p => p is VesselPart);
            double litres = 1e3 * (volume.Lines.Sum(l => (l.Tube?.BoreAreaM2 ?? 0) * l.LengthM) + (vessel ? result.VesselVolumeM3 : 0));
            double grams = 1e3 * (vessel ? fullest : result.LiquidDensity * litres / 1e3);
            string way = volume.Reliefs.Any() ? $"its only way out is {string.Join(", ", volume.Reliefs.Select(r => r.Name))}" : volume.HasRoom ? "it is open to the room" : "it has no way out";
            // without a way out the trapped-liquid rule says so with the pressure
            if (!volume.Reliefs.Any() && !volume.HasRoom) continue;
            if (grams < 0.5) continue;
            yield return new("can-trap-liquid", Grade.Caution, volume.Name, grams, null, "g",
                FormattableString.Invariant($"shut off, {litres:0.###} L around {volume.Name} can hold so much liquid; {way}"), Computed,
                "all of it boils when it warms, and must find that way open", "keep that way free of ice and never put a valve into it");
        }
    }

    private static Finding Made(BatchConcern c) => c.Id switch
    {
        "shut-vessel-warms" => new(c.Id, c.Limit is { } set && c.Value > set ? Grade.Caution : Grade.Note, c.Part, c.Value, c.Limit, c.Unit, c.Text, Computed,
            "the relief must blow all of it", "keep the way to the relief free; empty the vessel before the cooler is switched off"),
        "feed-compressor-hot" => new(c.Id, Grade.Caution, c.Part, c.Value, c.Limit, c.Unit, c.Text, Practice,
            "its protector opens, or its oil and winding age", "let it rest as computed, blow on it, or stand it in water"),
        "oil-starvation" => new(c.Id, Grade.Serious, c.Part, c.Value, c.Limit, c.Unit, c.Text, Practice,
            "it seizes, and a seized compressor can hold its pressure", "take a machine with a sump at its own speed, or feed it oil and separate that again") { AtLeast = c.Limit is not null },
        "oil-carried-off" => new(c.Id, Grade.Caution, c.Part, c.Value, c.Limit, c.Unit, c.Text, Practice,
            "the machine runs dry; oil in the cold vessel plugs the drain", "put a separator with return and a filter behind it, and weigh the oil"),
        "vessel-below-room" => new(c.Id, Grade.Caution, c.Part, c.Value, c.Limit, c.Unit, c.Text, Computed,
            "ice and oxygen from the air gather in the vessel", "shut the drain before the pressure is gone, or let feed gas in"),
        "flask-overflows" => new(c.Id, Grade.Serious, c.Part, c.Value, c.Limit, c.Unit, c.Text, Computed, "liquid runs over hands and floor", "change the flask before it is full"),
        _ => new(c.Id, Grade.Caution, c.Part, c.Value, c.Limit, c.Unit, c.Text, Computed, "", ""),
    };
}
