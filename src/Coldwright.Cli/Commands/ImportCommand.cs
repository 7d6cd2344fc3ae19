using System.CommandLine;
using Coldwright.Report;
using Coldwright.Report.Runs;
using Coldwright.Report.Safety;
using Coldwright.Runs;
using Coldwright.Runs.Tightness;

namespace Coldwright.Cli.Commands;

/// <summary><c>import RUN</c>: reads what a logger wrote and a person noted, and says what it is worth.</summary>
internal static class ImportCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("RUN") { Description = "the run's folder, which holds run.yaml and the logger's file" };
        var command = new Command("import", "Read a run's log and notes: what each sensor said, how far to trust it, what is wrong with the log.") { directory };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, Faces faces)
    {
        faces.SayUnused("import", report: true, model: false);
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        var folder = Read(directory, faces);
        if (folder.Record is not { } record)
        {
            if (!faces.Json) throw Refusal(folder);
            faces.Terminal.Output.Write(Problems(folder));
            return ExitCode.BadInput;
        }
        var report = new RunReport { Record = record, Answer = TightnessAnswer.Of(record), Findings = folder.Cooler is { } cooler ? FindingsText.For(cooler) : [], Units = faces.Units };
        faces.Terminal.Output.Write(faces.Json ? RunJson.Write(report) : RunText.Write(report, faces.Colour));
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, RunPage.FileName(Path.GetFileName(Path.GetFullPath(directory).TrimEnd(Path.DirectorySeparatorChar))));
            SafeFile.Write(page, w => w.Write(RunPage.Write(report)));
            // JSON stays alone on standard output.
            (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
        }
        return report.IsNo ? ExitCode.No : ExitCode.Done;
    }

    private static RunFolder Read(string directory, Faces faces)
    {
        using var progress = new Progress(faces.Terminal, () => $"reading {directory}");
        return RunImporter.Read(directory, faces.Terminal.Cancel);
    }

    private static InputException Refusal(RunFolder folder)
    {
        var count = folder.Problems.Count;
        return new InputException("", folder.Problems.Select(p => p.Line > 0 ? $"{Path.Combine(folder.Directory, p.File)}:{p.Line}:{p.Column}: {p.Message}" : p.ToString()).ToArray(),
            count > 1 ? $"{count} problems in {folder.Directory}; nothing was imported" : "");
    }

    private static string Problems(RunFolder folder) => Json.Text(w =>
    {
        w.WriteStartObject();
        w.WriteString("schema", "coldwright/import/1");
        w.WriteBoolean("good", false);
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
        w.WriteEndArray();
        FindingsJson.WriteProperty(w, []);
        w.WriteEndObject();
    });
}
