using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Design.Sizing;

/// <summary>Thickness of each insulation for a heat leak.</summary>
internal static class BoxSizer
{
    // our assumptions: thicknesses that are built; a vacuum needs its own jacket and is not offered
    private const double ThinnestM = 0.01, ThickestM = 0.5;
    private static readonly string[] _materials = ["polyurethane-foam", "polystyrene-foam", "glass-wool", "perlite", "foam-glass", "aerogel-blanket", "aerogel-powder"];

    public static SizeResult Size(SizeContext c, ColdBoxPart part, SizeTarget? target)
    {
        double insideK = c.Loop.OperatingTemperatureK, warmEndK = c.At("into the recuperator").TemperatureK;
        var told = new List<string>();
        double leak = target?.Value ?? EnclosureSolver.Solve(BoxEnclosure.Of(c.Machine, part, warmEndK, told), insideK).TotalW;
        if (target is null) c.Said.Add("sized for the leak of the box that the file describes: what other insulation would do the same; a target asks for another leak");
        var found = StockLoop.Each(c, _materials, m => m, m => One(c, part, m, insideK, warmEndK, leak, told));
        return new SizeResult
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Target = new("leak_W", "Heat leak", leak, "W"),
            TargetRemark = Spoken.Of($"with the inside at {Temperature(insideK, "0.#")}, tubes and wires counted"),
            Method = "conduction through the wall and along tubes and wires, with free convection and radiation outside",
            Options = SizeContext.Sorted(found, "volume_m3"),
            Columns = ["wall_m", "leak_W", "through_wall_W", "outside_surface_K", "volume_m3", "mass_kg"],
            Sources = ["docs/theory/insulation.md", "docs/theory/size.md"],
            Warnings = [.. told],
        };
    }

    private static SizeOption One(SizeContext c, ColdBoxPart part, string material, double insideK, double warmEndK, double leak, List<string> told)
    {
        ColdBoxPart Box(double wall) => new() { Name = part.Name, Inside = part.Inside, WallM = wall, Insulation = material, Penetrations = part.Penetrations };
        EnclosureLeak At(double wall) => EnclosureSolver.Solve(BoxEnclosure.Of(c.Machine, Box(wall), warmEndK, told), insideK);
        double thin = At(ThinnestM).TotalW, thick = At(ThickestM).TotalW;
        if (thick > leak)
            throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, thick - leak, FormattableString.Invariant($"{1e3 * ThickestM:0} mm of it still let {thick:0.##} W in; {At(ThickestM).TotalW - At(ThickestM).WallW:0.##} W of that along tubes and wires")));
        double wall = thin <= leak ? ThinnestM : Math.Exp(Brent.Solve(ln => At(Math.Exp(ln)).TotalW - leak, Math.Log(ThinnestM), thin - leak, Math.Log(ThickestM), thick - leak, 1e-7));
        var r = At(wall);
        var (l, w, h) = part.Inside;
        double volume = (l + 2 * wall) * (w + 2 * wall) * (h + 2 * wall) - l * w * h;
        var solid = Materials.Solids.SolidLibrary.Default.Find(material);
        var figures = new List<PartFigure>
        {
            new("wall_m", "Thickness", wall, "m"), new("leak_W", "Heat leak", r.TotalW, "W", new(r.TotalW - r.DeviationW, r.TotalW + r.DeviationW)), new("through_wall_W", "Of it through the wall", r.WallW, "W"), new("outside_surface_K", "Outside surface", r.OutsideSurfaceK, "K"),
            new("volume_m3", "Insulation", volume, "m3"),
        };
        if (solid.Density is { } density) figures.Add(new("mass_kg", "It weighs", volume * density.KgPerM3, "kg"));
        var sweats = r.OutsideSurfaceK < r.DewPointK ? Spoken.Of($"its outside, {Celsius(r.OutsideSurfaceK, "0.0")}, is below the room's dew point, {Celsius(r.DewPointK, "0.0")}: it sweats") : "";
        return new SizeOption
        {
            Stock = material,
            Figures = figures,
            Cut = [new(material, 1e3 * volume, "L", c.PerLitre(material))],
            Keys = [("insulation", material), ("wall", FormattableString.Invariant($"{1e3 * wall:0} mm"))],
            WhyNot = sweats,
        };
    }
}
