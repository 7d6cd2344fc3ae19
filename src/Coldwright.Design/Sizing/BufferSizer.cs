using Coldwright.Design.Charging;
using Coldwright.Machine.Description;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;
using Coldwright.Simulation.AtRest;
using Coldwright.Simulation.Parts;

namespace Coldwright.Design.Sizing;

/// <summary>Buffer with which the warm loop at rest stays at a pressure.</summary>
internal static class BufferSizer
{
    // our assumption: so far below the lowest limit
    private const double OfLimit = 0.8;
    private static readonly double[] _litres = [0.5, 1, 2, 3, 5, 8, 10, 12, 15, 20, 27, 40, 50];

    public static SizeResult Size(SizeContext c, BufferPart part, SizeTarget? target)
    {
        var space = LoopSpace.Of(c.Machine, c.Layout, c.Cancel);
        c.Said.AddRange(Spoken.All(space.Said));
        double others = space.Places.Where(p => p.Name != part.Name).Sum(p => p.VolumeM3);
        var mixture = c.Machine.Charge.Mixture;
        var whole = new RestingGas(mixture.Names, space.VolumeM3, c.RoomK, names => Model(c, names));
        double moles = ChargePlanner.Amount(c.Machine, new ChargeOptions(), whole, c.Z, mixture.Names.Zip(c.Z, (n, x) => x * Fluids.Substances.SubstanceCatalog.Get(n).MolarMass).Sum(), c.Said);
        double limit = target?.Value ?? (ChargeFindings.LowestLimit(c.Machine) is { } lowest ? c.RoomPa + OfLimit * (lowest.Pa - c.RoomPa)
            : throw new ArgumentException("no part of the loop states a pressure to stay below; a target says at what pressure it may stand", nameof(target)));
        if (target is null) c.Said.Add(FormattableString.Invariant($"sized to stand at {100 * OfLimit:0} % of the lowest limit in the loop (our assumption); a target asks for another pressure"));
        double At(double volume) => new RestingGas(mixture.Names, others + volume, c.RoomK, names => Model(c, names)).At([.. c.Z.Select(x => x * moles)]).PressurePa;
        double need = At(1e-6) <= limit ? 0 : Math.Exp(Brent.Solve(ln => Math.Log(At(Math.Exp(ln)) / limit), Math.Log(1e-6), Math.Log(At(1e-6) / limit), Math.Log(5), Math.Log(At(5) / limit), 1e-6));
        var options = StockLoop.Each(c, _litres, l => FormattableString.Invariant($"{l} L"), l => new SizeOption
        {
            Stock = FormattableString.Invariant($"{l} L"),
            Figures = [new("volume_m3", "Volume", 1e-3 * l, "m3"), new("standstill_Pa", "The loop stands at", At(1e-3 * l), "Pa")],
            Cut = [new(FormattableString.Invariant($"tank, {l} L"), 1, "piece")],
            Keys = [("volume", FormattableString.Invariant($"{l} L"))],
            WhyNot = 1e-3 * l < need ? FormattableString.Invariant($"{1e3 * need:0.##} L are needed") : "",
        });
        return new SizeResult
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Target = new("standstill_Pa", "The loop at rest stands at most at", limit, "Pa"),
            TargetRemark = FormattableString.Invariant($"{moles:0.##} mol; {1e3 * need:0.##} L besides {1e3 * others:0.##} L of tubes and parts"),
            Method = "equilibrium of the whole charge at the room's temperature",
            Options = SizeContext.Sorted(options, "volume_m3"),
            Columns = ["volume_m3", "standstill_Pa"],
            Sources = ["docs/theory/charge.md", "docs/theory/size.md"],
            Warnings = ["what the first warm minutes need is another matter: rate --hold neither says it"],
        };
    }

    private static Fluids.EquationsOfState.HelmholtzModel Model(SizeContext c, IReadOnlyList<string> names) =>
        c.Model.Name == "cubic" ? Fluids.EquationsOfState.PengRobinson.CubicModel.Create(names) : Fluids.EquationsOfState.MultiFluid.ReferenceModel.Create(names);
}
