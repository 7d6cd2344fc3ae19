using Coldwright.Design.Sizing;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Design.Tests.Sizing;

/// <summary>The example's parts sized, changed and rated.</summary>
internal static class Sized
{
    private static readonly RatingOptions _cubic = new() { Model = RatingModel.Cubic };

    public static SizeResult Size(string part, SizeTarget? target = null, MachineDescription? machine = null)
    {
        var folder = Examples.Read("workshop");
        machine ??= folder.Machine!;
        return PartSizer.Size(machine, Layout(machine), folder.Shop, part, target, _cubic, null, TestContext.Current.CancellationToken);
    }

    public static LoopLayout Layout(MachineDescription machine) => LoopLayout.TryFind(machine, out var layout, out var refusals) ? layout : throw new InvalidOperationException(string.Join("; ", refusals));

    public static MachineDescription With<T>(Func<T, Part> change) where T : Part
    {
        var machine = Examples.Read("workshop").Machine!;
        return machine with { Parts = [.. machine.Parts.Select(p => p is T t ? change(t) : p)] };
    }

    public static PartRating Rate(MachineDescription machine, string part) =>
        PartRater.Rate(machine, Layout(machine), Examples.Read("workshop").Shop!, part, _cubic with { Hold = HeldPressure.Both }, null, TestContext.Current.CancellationToken);

    public static double Figure(PartRating rating, string id) => rating.Sections.Where(s => s.Id != "inlet").SelectMany(s => s.Figures).First(f => f.Id == id).Value!.Value;
}
