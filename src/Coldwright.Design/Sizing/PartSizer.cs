using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Design.Sizing;

/// <summary>Sizes a part from stock: what length, wall or bore does what is asked, by the part's own model.</summary>
public static class PartSizer
{
    /// <summary>Names of the parts that can be sized, in file order.</summary>
    /// <param name="machine">The machine.</param>
    public static IReadOnlyList<string> Sizeable(MachineDescription machine) => [.. machine.Parts.Where(SizeTargets.CanBeSized).Select(p => p.Name)];

    /// <summary>Sizes.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="shop">Prices; null: not known.</param>
    /// <param name="part">Name of the part, one of <see cref="Sizeable"/>.</param>
    /// <param name="target">What for; null: what the file describes, else what is said in the answer.</param>
    /// <param name="options">Fluid model; of both the reference model alone answers.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="cancel">Ends it early: the stock looked at so far is kept, unless there is none.</param>
    /// <exception cref="ArgumentException">No such part, one that is not sized, or a value outside its range.</exception>
    /// <exception cref="MissingKeysException">The file does not describe enough of the surroundings of the part.</exception>
    /// <exception cref="SolveException">No operating point, or no size does what is asked.</exception>
    public static SizeResult Size(MachineDescription machine, LoopLayout layout, ShopDescription? shop, string part, SizeTarget? target, RatingOptions options, Action<string>? observer = null, CancellationToken cancel = default)
    {
        var chosen = machine.Parts.FirstOrDefault(p => p.Name == part) ?? throw new ArgumentException($"'{part}' is no part of {machine.Name}; parts that can be sized: {string.Join(", ", Sizeable(machine))}", nameof(part));
        if (!SizeTargets.CanBeSized(chosen)) throw new ArgumentException($"part '{part}' is not sized; those that are: {string.Join(", ", Sizeable(machine))}", nameof(part));
        if (target is not null && SizeTargets.Of(chosen).All(t => t.Id != target.Id)) throw new ArgumentException($"part '{part}' is not sized for {target.Id}", nameof(target));
        var c = new SizeContext(machine, layout, shop, options, observer, cancel);
        var result = chosen switch
        {
            RecuperatorPart p => RecuperatorSizer.Size(c, p, target),
            ThrottlePart p => ThrottleSizer.Size(c, p, target),
            VesselPart p => VesselSizer.Size(c, p, target),
            CoilPart p => CoilSizer.Size(c, p, target),
            ColdBoxPart p => BoxSizer.Size(c, p, target),
            FeedPart p => ReceiverSizer.Size(c, p, target),
            BufferPart p => BufferSizer.Size(c, p, target),
            ValvePart p => DrainSizer.Size(c, p, target),
            FlaskPart p => FlaskSizer.Size(c, p, target),
            AftercoolerPart p => AftercoolerSizer.Size(c, p, target),
            PrecoolerPart p => PrecoolerSizer.Size(c, p, target),
            CompressorPart p => SeparatorSizer.Size(c, p, target),
            ReliefPart p => ReliefSizer.Size(c, p),
            _ => throw new ArgumentException($"part '{part}' is not sized", nameof(part)),
        };
        return result with { Warnings = [.. c.Said.Concat(result.Warnings).Distinct()], Stopped = cancel.IsCancellationRequested };
    }
}
