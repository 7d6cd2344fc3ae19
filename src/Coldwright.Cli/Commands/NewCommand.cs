using System.CommandLine;
using Coldwright.Machine.Files;
using Coldwright.Report;
using Coldwright.Report.Safety;

namespace Coldwright.Cli.Commands;

/// <summary><c>new DIR</c>: writes a commented starter folder and says what to mind before building.</summary>
internal static class NewCommand
{
    private static readonly string[] _files = [MachineFolderReader.MachineFile, MachineFolderReader.ShopFile, "runs"];

    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder to write; existing files are never touched" };
        var command = new Command("new", "Write a commented starter folder for your own cooler.") { directory };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, Faces faces)
    {
        faces.SayUnused("new", report: false, model: false);
        var problems = StarterFolder.Write(directory);
        if (problems.Count > 0) throw new InputException("", problems.Select(p => p.ToString()).ToArray());

        var folder = MachineFolderReader.Read(directory);
        var findings = FindingsText.For(folder);
        var output = faces.Terminal.Output;
        if (faces.Json)
        {
            output.Write(Json.Text(w =>
            {
                w.WriteStartObject();
                w.WriteString("schema", "coldwright/new/1");
                w.WriteString("directory", directory);
                w.WriteStartArray("files");
                foreach (var file in _files) w.WriteStringValue(file);
                w.WriteEndArray();
                w.WriteStartArray("warnings");
                foreach (var note in folder.Notes) w.WriteStringValue(note);
                w.WriteEndArray();
                FindingsJson.WriteProperty(w, findings);
                w.WriteEndObject();
            }));
            return ExitCode.Done;
        }

        FindingsText.WriteGrave(faces, folder, findings);
        output.WriteLine($"Written to {directory}:");
        output.WriteLine($"  {MachineFolderReader.MachineFile}   the cooler as built: parts, lines, gases, room");
        output.WriteLine($"  {MachineFolderReader.ShopFile}      prices of gases and electricity");
        output.WriteLine("  runs/          what you measure later");
        output.WriteLine();
        output.WriteLine("Next: change machine.yaml to your cooler, then");
        output.WriteLine($"  coldwright check {directory}");
        output.WriteLine($"  coldwright safety {directory}");
        output.WriteLine($"  coldwright rate {directory}");
        output.WriteLine();
        output.WriteLine("Before anything is built or run, for the cooler as the starter describes it:");
        FindingsText.WriteOthers(faces, folder, findings);
        return ExitCode.Done;
    }
}
