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
    private const string HoldOption = "--hold", SensitivityOption = "--sensitivity";

    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var part = new Option<string?>("--part") { HelpName = "NAME", Description = "rate this part alone, by the model of its own, at the cooler's operating point" };
        var hold = new Option<string?>(HoldOption) { HelpName = "neither|high|low|both", Description = "which of the file's two pressures are held; those that are not follow from hardware and charge" };
        var sensitivity = new Option<bool>(SensitivityOption) { Description = "what matters most: how the figures answer to each length, bore, gram and doubt, and bands on the figures" };
        var command = new Command("rate", "Rate a cooler: temperature, cooling, litres per hour, watts, cost, losses, what limits it.") { directory, part, hold, sensitivity };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), parsed.GetValue(part), Held(parsed.GetValue(hold)), parsed.GetValue(sensitivity), Faces.Of(parsed, terminal)));
        return command;
    }

    private static HeldPressure? Held(string? word) => Faces.OneOf(word, HoldOption, "neither", "high", "low", "both") switch
    {
        "neither" => HeldPressure.Neither,
        "high" => HeldPressure.High,
        "low" => HeldPressure.Low,
        "both" => HeldPressure.Both,
        _ => null,
    };

    private static int Run(string directory, string? part, HeldPressure? hold, bool sensitivity, Faces faces)
    {
        var folder = MachineFiles.ReadGood(directory);
        var machine = folder.Machine!;
        // Made before the work: a folder that cannot be written is better known at once.
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        if (part is not null)
        {
            if (hold is not null || sensitivity) faces.Terminal.Note($"a part alone is rated at a given operating point; {HoldOption} and {SensitivityOption} are not used");
            return RatePart.Run(folder, part, folder.Shop ?? NoShop, faces);
        }

        var report = Report(folder, Rate(folder, hold, sensitivity, faces), faces);
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
        return PartRater.RateAll(folder.Machine!, folder.Layout!, folder.Shop ?? NoShop, RatePart.Options(faces),
            text => stage = text, faces.Terminal.Cancel);
    }

    private static RatingResult Rate(MachineFolder folder, HeldPressure? hold, bool sensitivity, Faces faces)
    {
        var options = new RatingOptions
        {
            Model = faces.Model switch
            {
                ModelChoice.Reference => RatingModel.Reference,
                ModelChoice.Cubic => RatingModel.Cubic,
                _ => RatingModel.Both,
            },
            Hold = hold,
            Sensitivity = sensitivity,
        };
        var stage = $"rating {folder.Machine!.Name}";
        using var progress = new Progress(faces.Terminal, () => stage);
        try
        {
            // Sensitivities belong to a closed loop; without one they would be missing from the answer in silence.
            if (sensitivity && CoolerRating.Held(folder.Machine, folder.Layout!, options, out var missing) == HeldPressure.Both && missing.Count > 0)
                throw new MissingKeysException("the whole loop", "closed loop", missing);
            var result = CoolerRating.Rate(folder.Machine, folder.Layout!, folder.Shop ?? NoShop, options, text => stage = text, faces.Terminal.Cancel);
            return folder.Shop is null ? WithoutCost(result) : result;
        }
        catch (MissingKeysException e)
        {
            throw new InputException(Path.Combine(folder.Directory, "machine.yaml"), [.. e.Keys.Select(k => $"add {k}")],
                $"pressures that follow from hardware and charge need these{(sensitivity ? ", and so do sensitivities" : "")}; nothing was computed. '{HoldOption} both' without '{SensitivityOption}' rates the cooler between the two pressures of the file");
        }
        catch (ArgumentException e)
        {
            // The parts' models refuse what the file could not know to be wrong: a coil that does not fit its vessel, say.
            throw new InputException(Path.Combine(folder.Directory, "machine.yaml"), $"the loop cannot be rated as described: {RatePart.Sentence(e)}");
        }
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
