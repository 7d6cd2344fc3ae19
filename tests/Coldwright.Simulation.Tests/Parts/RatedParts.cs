using Xunit;
using System.Collections.Concurrent;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Tests.Parts;

/// <summary>Parts of the example cooler, each rated once for all tests.</summary>
internal static class RatedParts
{
    private static readonly ConcurrentDictionary<string, Lazy<PartRating>> Rated = new();

    public static MachineDescription Workshop { get; } = Coolers.Folder("workshop").Machine!;

    public static PartRating Of(string part) => Rated.GetOrAdd(part, p => new(() => Rate(Workshop, p))).Value;

    public static PartRating Rate(MachineDescription machine, string part, RatingModel model = RatingModel.Reference)
    {
        if (!LoopLayout.TryFind(machine, out var layout, out var refusals)) throw new InvalidOperationException(string.Join("\n", refusals));
        return PartRater.Rate(machine, layout, Coolers.Folder("workshop").Shop!, part, new RatingOptions { Model = model }, null, TestContext.Current.CancellationToken);
    }

    public static double Figure(this PartRating rating, string section, string id) => rating.Find(section, id).Value!.Value;

    public static PartFigure Find(this PartRating rating, string section, string id) => rating.Sections.Single(s => s.Id == section).Figures.Single(f => f.Id == id);
}
