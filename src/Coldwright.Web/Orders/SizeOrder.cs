using Coldwright.Design.Sizing;
using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Web.Orders;

/// <summary>The fields beside the sizes: which part, and what for.</summary>
/// <param name="Part">Its name in the file.</param>
/// <param name="Target">What for; null: what the file describes.</param>
internal sealed record SizeOrder(string Part, SizeTarget? Target)
{
    public static SizeOrder Read(OrderReader order, MachineDescription machine)
    {
        var able = PartSizer.Sizeable(machine);
        var name = order.Text("part") ?? "";
        if (!able.Contains(name)) throw new ArgumentException($"choose a part; those that can be sized: {string.Join(", ", able)}");
        var kinds = SizeTargets.Of(machine.Parts.First(p => p.Name == name));
        if (order.Text("target") is not { } text) return new(name, null);
        if (kinds.Count == 0) throw new ArgumentException($"{name} takes no target: what it has to pass follows from the machine");
        // The unit tells which of a part's targets is meant.
        QuantityProblem? first = null;
        foreach (var kind in kinds)
        {
            if (Quantity.TryParse(text, kind.Kind, machine.Room.PressurePa, out var value, out var problem)) return new(name, new SizeTarget(kind.Id, value));
            first ??= problem;
        }
        throw new ArgumentException($"target: {first!.Message}; {name} is sized for {string.Join(", or ", kinds.Select(k => $"{k.Name} ({k.Kind.Example})"))}");
    }
}
