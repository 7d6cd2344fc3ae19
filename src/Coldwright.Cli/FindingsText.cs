using Coldwright.Machine.Files;
using Coldwright.Report;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Cli;

/// <summary>Safety findings around the answer of a command that only reads: the grave ones ahead of it, the cautions after it.</summary>
internal static class FindingsText
{
    /// <summary>The findings about a folder's machine before it was rated; none when the folder is not good.</summary>
    public static IReadOnlyList<Finding> For(MachineFolder folder) =>
        folder is { IsGood: true, Machine: { } machine } ? Cautions.For(machine, CautionInputs.Of(machine, folder.Shop)) : [];

    /// <summary>Writes danger and serious, with a blank line after them.</summary>
    public static void WriteGrave(Faces faces, MachineFolder folder, IReadOnlyList<Finding> findings)
    {
        var lines = GraveLines.Of(findings, Readout(faces, folder), faces.Colour);
        foreach (var line in lines) faces.Terminal.Output.WriteLine(line);
        if (lines.Count > 0) faces.Terminal.Output.WriteLine();
    }

    /// <summary>Writes the others, the standing reminder last.</summary>
    public static void WriteOthers(Faces faces, MachineFolder folder, IReadOnlyList<Finding> findings)
    {
        foreach (var line in OtherLines.Of(findings, Readout(faces, folder))) faces.Terminal.Output.WriteLine(line);
    }

    private static Readout Readout(Faces faces, MachineFolder folder) => new(faces.Units, folder.Machine!.Room.PressurePa, typographic: false);
}
