using System.CommandLine;
using Coldwright.Machine.Files;
using Coldwright.Report.Safety;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Cli.Commands;

/// <summary><c>safety DIR</c>: what about a described cooler can hurt somebody.</summary>
internal static class SafetyCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var command = new Command("safety", "Find what can hurt somebody: each finding with rule, figures, source, consequence and remedy.") { directory };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, Faces faces)
    {
        var folder = MachineFiles.ReadGood(directory);
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("safety rates with one model; the reference model answers, --model cubic asks the other");
        var report = new SafetyReport { Machine = folder.Machine!, Review = Review(folder, faces), Units = faces.Units };
        faces.Terminal.Output.Write(faces.Json ? FindingsJson.Write(report) : SafetyText.Write(report, faces.Colour));
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, SafetyPage.FileName);
            SafeFile.Write(page, w => w.Write(SafetyPage.Write(report)));
            // JSON stays alone on standard output.
            (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
        }
        return report.HasGrave ? ExitCode.No : ExitCode.Done;
    }

    private static SafetyReview Review(MachineFolder folder, Faces faces)
    {
        var stage = $"looking at {folder.Machine!.Name}";
        using var progress = new Progress(faces.Terminal, () => stage);
        var options = new RatingOptions { Model = faces.Model == ModelChoice.Cubic ? RatingModel.Cubic : RatingModel.Reference };
        return CoolerReview.Of(folder.Machine, folder.Layout!, folder.Shop, options, text => stage = text, faces.Terminal.Cancel);
    }
}
