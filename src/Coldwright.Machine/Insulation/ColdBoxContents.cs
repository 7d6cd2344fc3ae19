using Coldwright.Machine.Description;

namespace Coldwright.Machine.Insulation;

/// <summary>Which parts stand inside the cold box: recuperator, throttle, coil, vessel and block; everything else is in the room.</summary>
public static class ColdBoxContents
{
    /// <summary>True for the kinds of part that stand in the box.</summary>
    public static bool Holds(Part part) => part is RecuperatorPart or ThrottlePart or CoilPart or VesselPart or BlockPart;

    /// <summary>The part a port belongs to: <c>recuperator</c> of <c>recuperator.high</c>.</summary>
    /// <param name="port">Port as written in a line.</param>
    public static string PartName(string port)
    {
        var dot = port.IndexOf('.', StringComparison.Ordinal);
        return dot < 0 ? port : port[..dot];
    }

    /// <summary>The lines with one end in the room and one in the box, each with the part at its inner end.</summary>
    public static IEnumerable<(Line Line, Part Inner)> Crossing(MachineDescription machine)
    {
        var parts = machine.Parts.ToDictionary(p => p.Name);
        foreach (var line in machine.Lines)
        {
            if (!parts.TryGetValue(PartName(line.From), out var from) || !parts.TryGetValue(PartName(line.To), out var to)) continue;
            if (Holds(from) != Holds(to)) yield return (line, Holds(from) ? from : to);
        }
    }
}
