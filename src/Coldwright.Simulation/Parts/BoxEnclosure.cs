using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Materials.Solids;

namespace Coldwright.Simulation.Parts;

/// <summary>The cold box of the machine file as the insulation model's input: layers, and every tube and wire that crosses the wall.</summary>
internal static class BoxEnclosure
{
    /// <summary>Relative humidity where the file gives none: only the dew point hangs on it.</summary>
    public const double UsualHumidity = 0.5;

    /// <summary>Metal of the tubes that cross.</summary>
    public const string TubeMetal = "copper-dhp";

    /// <summary>The enclosure; lines without a tube are told in the warnings.</summary>
    public static InsulatedEnclosure Of(MachineDescription machine, ColdBoxPart part, double warmEndK, List<string> warnings)
    {
        var layers = BoxLayers.Of(part);
        double wall = layers.Sum(l => l.ThicknessM);
        return new InsulatedEnclosure(new BoxWall(part.Inside.LengthM, part.Inside.WidthM, part.Inside.HeightM), layers, [.. Crossing(machine, part, wall, warmEndK, warnings)],
            machine.Room.TemperatureK, machine.Room.RelativeHumidity ?? UsualHumidity, new FreeConvectionFilm(part.Inside.HeightM + 2 * wall));
    }

    /// <summary>True for a path that ends at the recuperator's warm end and not in the cold.</summary>
    public static bool EndsWarm(WallPenetration p) => p.InnerK is not null;

    private static IEnumerable<WallPenetration> Crossing(MachineDescription machine, ColdBoxPart part, double wall, double warmEndK, List<string> warnings)
    {
        var copper = SolidLibrary.Default.Find(TubeMetal);
        foreach (var (line, inner) in ColdBoxContents.Crossing(machine))
        {
            if (line.Tube is { } tube) yield return new WallPenetration($"tube {line.From} to {line.To}", copper, tube.MetalAreaM2, wall, inner is RecuperatorPart ? warmEndK : null);
            else warnings.Add($"the line {line.From} to {line.To} crosses the insulation without a tube given: its conduction is left out");
        }
        foreach (var (p, i) in part.Penetrations.Select((p, i) => (p, i)))
            yield return new WallPenetration(FormattableString.Invariant($"penetration {i + 1}, {p.Material}"), SolidLibrary.Default.Find(p.Material), p.AreaM2, p.LengthM);
    }
}
