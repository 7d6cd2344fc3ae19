using System.CommandLine;
using Coldwright.Machine.Files;
using Coldwright.Report;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Cli.Commands;

/// <summary><c>check DIR</c>: reads a cooler's folder and reports every problem at once.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var command = new Command("check", "Read a cooler's folder and report every problem.") { directory };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, Faces faces)
    {
        faces.SayUnused("check", report: false, model: false);
        var folder = MachineFolderReader.Read(directory);
        var findings = FindingsText.For(folder);
        if (faces.Json)
        {
            faces.Terminal.Output.Write(Document(folder, findings));
            return folder.IsGood ? ExitCode.Done : ExitCode.BadInput;
        }
        if (!folder.IsGood) throw MachineFiles.Refusal(folder);

        FindingsText.WriteGrave(faces, folder, findings);
        var output = faces.Terminal.Output;
        var good = folder.Machine!;
        output.WriteLine($"{directory}: good. '{good.Name}', {good.Parts.Count} parts, {good.Lines.Count} lines, charge {good.Charge.Mixture}.");
        foreach (var note in folder.Notes) output.WriteLine($"note      {note}");
        FindingsText.WriteOthers(faces, folder, findings);
        return ExitCode.Done;
    }

    private static string Document(MachineFolder folder, IReadOnlyList<Finding> findings) => Json.Text(w =>
    {
        w.WriteStartObject();
        w.WriteString("schema", "coldwright/check/1");
        w.WriteBoolean("good", folder.IsGood);
        w.WriteStartArray("problems");
        foreach (var problem in folder.Problems)
        {
            w.WriteStartObject();
            w.WriteString("file", problem.File);
            w.WriteNumber("line", problem.Line);
            w.WriteNumber("column", problem.Column);
            w.WriteString("message", problem.Message);
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteStartArray("warnings");
        foreach (var note in folder.Notes) w.WriteStringValue(note);
        w.WriteEndArray();
        FindingsJson.WriteProperty(w, findings);
        w.WriteEndObject();
    });
}
