using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Report.Parts;
using Coldwright.Report.Safety;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Cli.Commands;

/// <summary><c>rate DIR --part NAME</c>: one part alone at the cooler's operating point.</summary>
internal static class RatePart
{
    private const string Option = "--part";

    /// <summary>How the operating point of the parts is found: by one model, between the two pressures of the file.</summary>
    public static RatingOptions Options(Faces faces) => new() { Model = faces.Model == ModelChoice.Cubic ? RatingModel.Cubic : RatingModel.Reference, Hold = HeldPressure.Both };

    public static int Run(MachineFolder folder, string name, ShopDescription shop, Faces faces)
    {
        var part = Find(folder.Machine!, name);
        var report = Report(folder, Rate(folder, part, shop, faces), faces);
        faces.Terminal.Output.Write(faces.Json ? PartJson.Write(report) : PartText.Write(report, faces.Colour));
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, PartPage.FileName(part));
            SafeFile.Write(page, w => w.Write(PartPage.Write(report)));
            (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
        }
        return report.Rating.BreaksLimit ? ExitCode.No : ExitCode.Done;
    }

    // A wrong name is answered with the names that exist, the nearest first.
    private static string Find(MachineDescription machine, string name)
    {
        var rateable = PartRater.Rateable(machine);
        if (rateable.Contains(name)) return name;
        var names = $"parts that can be rated alone: {string.Join(", ", rateable)}";
        if (machine.Parts.Any(p => p.Name == name)) throw new InputException(Option, $"part '{Faces.Shorten(name)}' has no model of its own; its figures are in the rating of the whole cooler", names);
        var near = NearestWord.Find(name, rateable).FirstOrDefault();
        throw new InputException(Option, $"'{Faces.Shorten(name)}' is no part of {machine.Name}" + (near is null ? "" : $"; did you mean {near}?"), names);
    }

    private static PartRating Rate(MachineFolder folder, string part, ShopDescription shop, Faces faces)
    {
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("a part is rated with one model at a time; the reference model answers, --model cubic asks the other");
        var stage = $"rating {part}";
        using var progress = new Progress(faces.Terminal, () => stage);
        try
        {
            return PartRater.Rate(folder.Machine!, folder.Layout!, shop, part, Options(faces), text => stage = text, faces.Terminal.Cancel);
        }
        catch (MissingKeysException e)
        {
            throw new InputException(Path.Combine(folder.Directory, "machine.yaml"), [.. e.Keys.Select(k => $"add {k}")], $"to rate '{e.Part}' alone its own model needs these; nothing was computed");
        }
        catch (ArgumentException e)
        {
            // The parts' models refuse what the file could not know to be wrong: a coil that does not fit its vessel, say.
            throw new InputException(Option, $"'{part}' cannot be rated as described: {Sentence(e)}");
        }
    }

    /// <summary>A refusal's words without what the platform appends about the program's own parameter.</summary>
    public static string Sentence(ArgumentException e) => e.ParamName is { } name ? e.Message.Replace($" (Parameter '{name}')", "", StringComparison.Ordinal) : e.Message;

    private static PartReport Report(MachineFolder folder, PartRating rating, Faces faces)
    {
        var findings = Cautions.For(folder.Machine!, CautionInputs.Of(folder.Machine!, folder.Shop));
        return new PartReport
        {
            Machine = folder.Machine!,
            Rating = rating with { Warnings = [.. rating.Warnings, .. folder.Notes.Where(n => !n.Contains("shop.yaml", StringComparison.Ordinal))] },
            Findings = [.. findings.Where(f => GraveLines.IsGrave(f) || f.Part.Split(", ").Contains(rating.Part) || f.Id == Cautions.LocalCodes.Id)],
            Units = faces.Units,
        };
    }
}
