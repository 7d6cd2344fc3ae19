using System.CommandLine;
using Coldwright.Machine.Files;
using Coldwright.Report.Explain;
using Coldwright.Runs;
using Coldwright.Runs.Explain;
using Coldwright.Runs.Record;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Cli.Commands;

/// <summary><c>explain RUN</c>: where the cold went, how sure that is, and which short test would settle it.</summary>
internal static class ExplainCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("RUN") { Description = "the run's folder, which holds run.yaml and the logger's file; its cooler's machine.yaml lies two folders up" };
        var against = new Option<string?>("--against") { HelpName = "RUN", Description = "folder of an earlier run of the same cooler in good order: what the model has wrong about this cooler then falls out" };
        var command = new Command("explain", "Where the cold of a run went, how sure that is, and what to measure next.") { directory, against };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), parsed.GetValue(against), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, string? against, Faces faces)
    {
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("explain follows the cooler with one fluid model and takes the other's distance as a doubt; the reference model answers, --model cubic is quicker");
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        var (record, cooler) = RunFiles.Read(directory, faces);
        var earlier = against is null ? null : Earlier(against, cooler, faces);
        var report = new ExplainReport { Machine = record.Machine!, Run = record.Name, Result = Follow(record, earlier, cooler, faces), Findings = FindingsText.For(cooler), Units = faces.Units };
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

    private static RunRecord Earlier(string directory, MachineFolder cooler, Faces faces)
    {
        var (earlier, other) = RunFiles.Read(directory, faces);
        if (Path.GetFullPath(other.Directory) != Path.GetFullPath(cooler.Directory))
            throw new InputException(directory, $"--against: this run belongs to the cooler in {other.Directory}, the other to the one in {cooler.Directory}", "a run is held against an earlier one of the same cooler");
        return earlier;
    }

    private static Explanation Follow(RunRecord record, RunRecord? earlier, MachineFolder cooler, Faces faces)
    {
        var stage = $"explaining {record.Name}";
        using var progress = new Progress(faces.Terminal, () => stage);
        return Explainer.Explain(record, cooler.Layout!, null, faces.Model == ModelChoice.Cubic, text => stage = text, earlier: earlier, cancel: faces.Terminal.Cancel);
    }
}
