using System.CommandLine;
using Coldwright.Design.Sizing;
using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Report.Safety;
using Coldwright.Report.Sizing;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Cli.Commands;

/// <summary><c>size DIR PART</c>: dimensions for a part to reach a target, from stock.</summary>
internal static class SizeCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var part = new Argument<string>("PART") { Description = "name of a part in machine.yaml" };
        var target = new Option<string?>("--target") { HelpName = "QUANTITY", Description = "what it is sized for: \"45 W\" or \"100 W/K\" for a recuperator, \"0.6 L\" for a vessel, \"4 W\" of leak for a cold box, ...; left out: what the file describes" };
        var command = new Command("size", "Length, wall or bore of a part from real stock, with a cut list.") { directory, part, target };
        command.SetAction(p => Run(p.GetRequiredValue(directory), p.GetRequiredValue(part), p.GetValue(target), Faces.Of(p, terminal)));
        return command;
    }

    private static int Run(string directory, string name, string? target, Faces faces)
    {
        var folder = MachineFiles.ReadGood(directory);
        var part = Find(folder, name);
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("a part is sized with one model; the reference model answers, --model cubic asks the other");
        var wanted = target is null ? null : Target(target, folder, name);
        var stage = $"sizing {part}";
        SizeResult result;
        using (new Progress(faces.Terminal, () => stage))
            try
            {
                result = PartSizer.Size(folder.Machine!, folder.Layout!, folder.Shop, part, wanted, new RatingOptions { Model = faces.Model == ModelChoice.Cubic ? RatingModel.Cubic : RatingModel.Reference }, text => stage = text, faces.Terminal.Cancel);
            }
            catch (MissingKeysException e)
            {
                throw new InputException(Path.Combine(folder.Directory, "machine.yaml"), [.. e.Keys.Select(k => $"add {k}")], $"to size '{part}' these are needed; nothing was computed");
            }
            catch (ArgumentException e)
            {
                throw new InputException("size", $"'{part}' cannot be sized: {RatePart.Sentence(e)}");
            }
        var findings = Cautions.For(folder.Machine!, CautionInputs.Of(folder.Machine!, folder.Shop));
        var report = new SizeReport
        {
            Machine = folder.Machine!,
            Result = result,
            Currency = folder.Shop?.Currency ?? "",
            Notes = [.. folder.Notes.Where(n => !n.Contains("shop.yaml", StringComparison.Ordinal))],
            Units = faces.Units,
            Findings = [.. findings.Where(f => GraveLines.IsGrave(f) || f.Part.Split(", ").Contains(part) || f.Id == Cautions.LocalCodes.Id)],
        };
        faces.Terminal.Output.Write(faces.Json ? SizeJson.Write(report) : SizeText.Write(report, faces.Colour));
        ReportPage.Write(faces, SizePage.FileName(part), () => SizePage.Write(report));
        if (result.Stopped) return ExitCode.Stopped;
        return result.Best is null ? ExitCode.No : ExitCode.Done;
    }

    // A wrong name is answered with the names that exist, the nearest first.
    private static string Find(MachineFolder folder, string name)
    {
        var able = PartSizer.Sizeable(folder.Machine!);
        if (able.Contains(name)) return name;
        var names = $"parts that can be sized: {string.Join(", ", able)}";
        if (folder.Machine!.Parts.Any(p => p.Name == name)) throw new InputException("PART", $"part '{Faces.Shorten(name)}' is not sized by this program", names);
        var near = NearestWord.Find(name, able).FirstOrDefault();
        throw new InputException("PART", $"'{Faces.Shorten(name)}' is no part of {folder.Machine.Name}" + (near is null ? "" : $"; did you mean {near}?"), names);
    }

    // The unit tells which of a part's targets is meant.
    private static SizeTarget Target(string text, MachineFolder folder, string part)
    {
        var kinds = SizeTargets.Of(folder.Machine!.Parts.First(p => p.Name == part));
        if (kinds.Count == 0) throw new InputException("--target", $"'{part}' takes no target: what it has to pass follows from the machine");
        QuantityProblem? first = null;
        foreach (var kind in kinds)
        {
            if (Quantity.TryParse(text, kind.Kind, folder.Machine.Room.PressurePa, out var value, out var problem)) return new(kind.Id, value);
            first ??= problem;
        }
        throw new InputException("--target", first!.Message, $"'{part}' is sized for {string.Join(", or ", kinds.Select(k => $"{k.Name} ({k.Kind.Example})"))}");
    }
}
