using System.CommandLine;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Report.Batch;
using Coldwright.Safety;
using Coldwright.Simulation.Batch;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Cli.Commands;

/// <summary><c>batch DIR</c>: feed, condense, discharge: where every gram of the gas goes.</summary>
internal static class BatchCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var goal = new Option<string?>("--for") { HelpName = "litres|energy", Description = "seek the schedule with most litres per hour (as when left out) or least electricity per litre" };
        var fill = new Option<string?>("--fill") { HelpName = "SHARE", Description = "fill the vessel so far, such as \"80 %\" of brimful, instead of seeking the best" };
        var open = new Option<string?>("--open-at") { HelpName = "PRESSURE", Description = "open the drain at this vessel pressure, such as \"5 barg\"" };
        var batches = new Option<int?>("--batches") { HelpName = "N", Description = "so many batches in a row; the flask is cold from the second on" };
        var cold = new Option<bool>("--cold-flask") { Description = "the flask is cold at the start" };
        var hold = new Option<string?>("--hold") { HelpName = "neither|high|low|both", Description = "which of the file's two pressures the rating of the cold end holds, as for rate" };
        var command = new Command("batch", "From feed gas to liquid in the flask, in grams: schedule, losses, litres per hour.") { directory, goal, fill, open, batches, cold, hold };
        command.SetAction(p => Run(p.GetRequiredValue(directory), p.GetValue(goal), p.GetValue(fill), p.GetValue(open), p.GetValue(batches), p.GetValue(cold), Held(p.GetValue(hold)), Faces.Of(p, terminal)));
        return command;
    }

    private static int Run(string directory, string? goal, string? fill, string? open, int? batches, bool coldFlask, HeldPressure? hold, Faces faces)
    {
        var folder = MachineFiles.ReadGood(directory);
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("batch rates the cold end with one model; the reference model answers, --model cubic asks the other");
        if (batches is < 1 or > 50) throw new InputException("--batches", $"{batches} batches; 1 to 50 are expected");
        var options = new BatchOptions { Goal = Goal(goal), Plan = Plan(folder, fill, open), Batches = batches ?? 1, FlaskCold = coldFlask };
        var report = Report(folder, options, hold, faces);
        faces.Terminal.Output.Write(faces.Json ? BatchJson.Write(report) : BatchText.Write(report, faces.Colour));
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, BatchPage.FileName);
            SafeFile.Write(page, w => w.Write(BatchPage.Write(report)));
            // JSON stays alone on standard output.
            (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
        }
        if (report.Result.Stopped) return ExitCode.Stopped;
        return report.Result.Run.Grams.CollectedKg > 0 ? ExitCode.Done : ExitCode.No;
    }

    private static BatchReport Report(MachineFolder folder, BatchOptions options, HeldPressure? hold, Faces faces)
    {
        var stage = $"batch of {folder.Machine!.Name}";
        using var progress = new Progress(faces.Terminal, () => stage);
        var rating = new RatingOptions { Model = faces.Model == ModelChoice.Cubic ? RatingModel.Cubic : RatingModel.Reference, Hold = hold };
        BatchResult result;
        try
        {
            result = BatchSimulation.Run(folder.Machine, folder.Layout!, folder.Shop, rating, options, text => stage = text, faces.Terminal.Cancel);
        }
        catch (MissingKeysException e)
        {
            throw new InputException(Path.Combine(folder.Directory, "machine.yaml"), [.. e.Keys.Select(k => $"add {k}")], "a loop closed from its hardware needs these; '--hold both' takes the two pressures of the file");
        }
        catch (ArgumentException e)
        {
            // The parts' models refuse what the file could not know to be wrong.
            throw new InputException(Path.Combine(folder.Directory, "machine.yaml"), $"the batch cannot be simulated as described: {RatePart.Sentence(e)}");
        }
        return new BatchReport { Machine = folder.Machine, Result = result, Findings = BatchFindings.Of(folder.Machine, folder.Shop, result), Notes = folder.Notes, Units = faces.Units };
    }

    private static BatchGoal Goal(string? word) => word switch
    {
        null or "litres" => BatchGoal.LitresPerHour,
        "energy" => BatchGoal.EnergyPerLitre,
        _ => throw new InputException("--for", $"'{Faces.Shorten(word)}' is not one of litres, energy"),
    };

    private static HeldPressure? Held(string? word) => Faces.OneOf(word, "--hold", "neither", "high", "low", "both") switch
    {
        "neither" => HeldPressure.Neither,
        "high" => HeldPressure.High,
        "low" => HeldPressure.Low,
        "both" => HeldPressure.Both,
        _ => null,
    };

    private static BatchPlan? Plan(MachineFolder folder, string? fill, string? open)
    {
        if (fill is null && open is null) return null;
        if (fill is null || open is null) throw new InputException(fill is null ? "--open-at" : "--fill", "--fill and --open-at go together: how full, and at what pressure to open", "such as --fill \"80 %\" --open-at \"5 barg\"");
        var (machine, feed) = (folder.Machine!, folder.Machine!.Parts.OfType<FeedPart>().FirstOrDefault());
        if (feed is null) return null;
        return new()
        {
            FeedPressurePa = feed.PressurePa,
            FillShare = Value("--fill", fill, QuantityKind.Fraction.Between(0.05, 0.95), machine.Room.PressurePa),
            OpeningPressurePa = Value("--open-at", open, QuantityKind.Pressure.Between(machine.Room.PressurePa, 3e7), machine.Room.PressurePa),
        };
    }

    private static double Value(string option, string text, QuantityKind kind, double roomPa) =>
        Quantity.TryParse(text, kind, roomPa, out var value, out var problem) ? value : throw new InputException(option, problem.Message);
}
