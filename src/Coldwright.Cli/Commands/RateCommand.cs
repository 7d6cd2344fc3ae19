using System.CommandLine;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Report.Rating;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Cli.Commands;

/// <summary><c>rate DIR</c>: the steady rating of a described cooler.</summary>
internal static class RateCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var part = new Option<string?>("--part") { HelpName = "NAME", Description = "rate this part alone, by the model of its own, at the cooler's operating point" };
        var command = new Command("rate", "Rate a cooler: temperature, cooling, litres per hour, watts, cost, losses, what limits it.") { directory, part };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), parsed.GetValue(part), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, string? part, Faces faces)
    {
        var folder = MachineFiles.ReadGood(directory);
        var machine = folder.Machine!;
        // Made before the work: a folder that cannot be written is better known at once.
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        if (part is not null) return RatePart.Run(folder, part, folder.Shop ?? NoShop, faces);

        var report = Report(folder, Rate(folder, faces), faces);
        if (faces.ReportFolder is not null) report = report with { Parts = Parts(folder, faces) };
        faces.Terminal.Output.Write(faces.Json ? RatingJson.Write(report) : RatingText.Write(report, faces.Colour));
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, RatingPage.FileName);
            SafeFile.Write(page, w => w.Write(RatingPage.Write(report)));
            // JSON stays alone on standard output.
            (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
        }
        return Answer(report.Result.Main);
    }

    private static PartRatings Parts(MachineFolder folder, Faces faces)
    {
        var stage = "rating the parts";
        using var progress = new Progress(faces.Terminal, () => stage);
        return PartRater.RateAll(folder.Machine!, folder.Layout!, folder.Shop ?? NoShop, new RatingOptions { Model = faces.Model == ModelChoice.Cubic ? RatingModel.Cubic : RatingModel.Reference },
            text => stage = text, faces.Terminal.Cancel);
    }

    private static RatingResult Rate(MachineFolder folder, Faces faces)
    {
        var stage = $"rating {folder.Machine!.Name}";
        using var progress = new Progress(faces.Terminal, () => stage);
        var options = new RatingOptions
        {
            Model = faces.Model switch
            {
                ModelChoice.Reference => RatingModel.Reference,
                ModelChoice.Cubic => RatingModel.Cubic,
                _ => RatingModel.Both,
            },
        };
        var result = CoolerRating.Rate(folder.Machine, folder.Layout!, folder.Shop ?? NoShop, options, text => stage = text, faces.Terminal.Cancel);
        return folder.Shop is null ? WithoutCost(result) : result;
    }

    // Without prices there is no cost, rather than a cost of 0; the folder's notes say so.
    private static ShopDescription NoShop => new() { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() };

    private static RatingResult WithoutCost(RatingResult result) => result with
    {
        Main = result.Main with { CostPerL = null },
        SecondOpinion = result.SecondOpinion is { } second ? second with { CostPerL = null } : null,
    };

    private static RatingReport Report(MachineFolder folder, RatingResult result, Faces faces)
    {
        var findings = Cautions.For(folder.Machine!, CautionInputs.Of(folder.Machine!, folder.Shop, result.Main));
        return new RatingReport
        {
            Machine = folder.Machine!,
            Result = result with { Warnings = [.. result.Warnings, .. folder.Notes] },
            Findings = findings,
            Units = faces.Units,
        };
    }

    // "No" is an answer: a broken limit, or something that stops the cooler.
    private static int Answer(ModelRating rating) =>
        rating.LimitedBy.Kind == LimitationKind.Works && !rating.Limits.Any(l => l.Broken) ? ExitCode.Done : ExitCode.No;
}
