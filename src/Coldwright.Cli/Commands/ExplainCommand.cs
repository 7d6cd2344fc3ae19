using System.CommandLine;
using Coldwright.Machine.Files;
using Coldwright.Report.Explain;
using Coldwright.Runs;
using Coldwright.Runs.Explain;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Cli.Commands;

/// <summary><c>explain RUN</c>: where the cold went, how sure that is, and which short test would settle it.</summary>
internal static class ExplainCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("RUN") { Description = "the run's folder, which holds run.yaml and the logger's file; its cooler's machine.yaml lies two folders up" };
        var command = new Command("explain", "Where the cold of a run went, how sure that is, and what to measure next.") { directory };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, Faces faces)
    {
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("explain follows the cooler with one fluid model and takes the other's distance as a doubt; the reference model answers, --model cubic is quicker");
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        var (record, cooler) = RunFiles.Read(directory, faces);
        var report = new ExplainReport { Machine = record.Machine!, Run = record.Name, Result = Follow(record, cooler, faces), Findings = FindingsText.For(cooler), Units = faces.Units };
        faces.Terminal.Output.Write(faces.Json ? ExplainJson.Write(report) : ExplainText.Write(report, faces.Colour));
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, ExplainPage.FileName);
            SafeFile.Write(page, w => w.Write(ExplainPage.Write(report)));
            // JSON stays alone on standard output.
            (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
        }
        return ExitCode.Done;
    }

    private static Explanation Follow(Runs.Record.RunRecord record, MachineFolder cooler, Faces faces)
    {
        var stage = $"explaining {record.Name}";
        using var progress = new Progress(faces.Terminal, () => stage);
        return Explainer.Explain(record, cooler.Layout!, null, faces.Model == ModelChoice.Cubic, text => stage = text, cancel: faces.Terminal.Cancel);
    }
}
