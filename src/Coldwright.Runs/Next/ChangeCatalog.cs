using Coldwright.Machine.Layout;
using Coldwright.Runs.Explain;

namespace Coldwright.Runs.Next;

/// <summary>Changes that a builder can make, as changes of the model. Their sizes are our choice.</summary>
internal static class ChangeCatalog
{
    private static IReadOnlyDictionary<string, double> Factor(string id, double value) => new Dictionary<string, double> { [id] = value };

    public static IReadOnlyList<CauseModel> For(LoopLayout layout)
    {
        CauseModel Change(string id, string what, IReadOnlyDictionary<string, double> factors) => new(id, what, (1, 2), 1, 0, "", f => f, _ => factors);
        List<CauseModel> all =
        [
            Change("exchanger-longer", "half as much exchanger again", new Dictionary<string, double> { ["high-film"] = 1.5, ["low-film"] = 1.5, ["recuperator-metal"] = 1.5 }),
            Change("capillary-wider", "a capillary that passes a quarter more", Factor("throttle-flow", 1.25)),
            Change("capillary-narrower", "a capillary that passes a fifth less", Factor("throttle-flow", 0.8)),
            Change("compressor-larger", "a compressor with a quarter more displacement", Factor("compressor-flow", 1.25)),
            Change("vessel-lighter", "half the metal at the load", Factor("load-mass", 0.5)),
        ];
        if (layout.ColdBox is not null) all.Add(Change("insulation-more", "insulation that leaks a third less", Factor("leak", 0.67)));
        if (layout.Precooler is not null) all.Add(Change("precooler-larger", "a precooler's evaporator with half as much again", Factor("precooler", 1.5)));
        return all;
    }
}
