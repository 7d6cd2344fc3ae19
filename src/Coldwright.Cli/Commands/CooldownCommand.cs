using System.CommandLine;
using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Report.Cooldown;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Cli.Commands;

/// <summary><c>cooldown DIR</c>: temperature against time, and why it stops where it stops.</summary>
internal static class CooldownCommand
{
    private static readonly Option<string?> _until = new("--until") { HelpName = "TIME|TEMPERATURE", Description = "follow it so long, or so cold: \"6 h\", \"120 K\"; else to where it stands still" };
    private static readonly Option<string?> _from = new("--from") { HelpName = "TEMPERATURE", Description = "start with the load at this temperature and everything settled to it: \"200 K\"" };
    private static readonly Option<string?> _load = new("--load") { HelpName = "POWER", Description = "heat put into the load on purpose: \"5 W\"" };
    private static readonly Option<bool> _warmUp = new("--warm-up") { Description = "the compressor stands still: how it warms up, from --from or from the plateau" };
    private static readonly Option<bool> _slopes = new("--sensitivity") { Description = "also the slopes of temperature and time by the machine's parameters" };
    private static readonly Option<bool> _direct = new("--direct") { Description = "no property tables: every property a flash of the model. Takes a few times as long; a check on the tables" };

    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var command = new Command("cooldown", "Temperature against time: how long it takes, where it stops and which term stops it.") { directory, _until, _from, _load, _warmUp, _slopes, _direct };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), parsed, Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, ParseResult parsed, Faces faces)
    {
        var folder = MachineFiles.ReadGood(directory);
        var options = Options(parsed, folder, faces);
        if (CooldownSolver.Missing(folder.Machine!, folder.Layout!) is { Count: > 0 } missing)
            throw new InputException(Path.Combine(directory, "machine.yaml"), [.. missing.Select(m => $"a cooldown needs {m}")], "it follows from hardware and charge, so both must be described");
        if (faces.ReportFolder is { } reportFolder) SafeFile.MakeFolder(reportFolder);
        if (faces.Model == ModelChoice.Both) faces.Terminal.Note("a cooldown is followed with one model; the reference model answers, --model cubic asks the other");

        var report = new CooldownReport { Machine = folder.Machine!, Result = Follow(folder, options, faces), Findings = FindingsText.For(folder), Units = faces.Units };
        faces.Terminal.Output.Write(faces.Json ? CooldownJson.Write(report) : CooldownText.Write(report, faces.Colour));
        if (faces.ReportFolder is { } target)
        {
            var page = Path.Combine(target, CooldownPage.FileName(report.Result.IsWarmUp));
            SafeFile.Write(page, w => w.Write(CooldownPage.Write(report)));
            // JSON stays alone on standard output.
            (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
        }
        if (report.Result.Stopped) return ExitCode.Stopped;
        return report.Result.ReachesItsPurpose ? ExitCode.Done : ExitCode.No;
    }

    private static CooldownResult Follow(MachineFolder folder, CooldownOptions options, Faces faces)
    {
        var stage = $"cooling down {folder.Machine!.Name}";
        using var progress = new Progress(faces.Terminal, () => stage);
        return CooldownSolver.Run(folder.Machine, folder.Layout!, options, text => stage = text, faces.Terminal.Cancel);
    }

    private static CooldownOptions Options(ParseResult parsed, MachineFolder folder, Faces faces)
    {
        double room = folder.Machine!.Room.PressurePa;
        var problems = new List<string>();
        double? Read(Option<string?> option, QuantityKind kind)
        {
            if (parsed.GetValue(option) is not { } text) return null;
            if (Quantity.TryParse(text, kind, room, out var value, out var problem)) return value;
            problems.Add($"{option.Name}: {problem.Message}");
            return null;
        }

        double? seconds = null, kelvin = null;
        if (parsed.GetValue(_until) is { } until)
        {
            if (Quantity.TryParse(until, QuantityKind.Temperature, room, out var k, out _)) kelvin = k;
            else if (Quantity.TryParse(until, QuantityKind.Time, room, out var s, out _)) seconds = s;
            else problems.Add($"--until: '{Faces.Shorten(until)}' is neither a time (6 h) nor a temperature (120 K)");
        }
        var options = new CooldownOptions
        {
            Cubic = faces.Model == ModelChoice.Cubic,
            UntilS = seconds,
            UntilK = kelvin,
            FromK = Read(_from, QuantityKind.Temperature),
            LoadW = Read(_load, QuantityKind.Power) ?? 0,
            WarmUp = parsed.GetValue(_warmUp),
            Sensitivity = parsed.GetValue(_slopes),
            Direct = parsed.GetValue(_direct),
        };
        // what halving changes is a difference of runs that tables give as well
        if (options.Direct) options = options with { Halving = false };
        if (problems.Count > 0) throw new InputException("", problems);
        try
        {
            options.Check();
        }
        catch (ArgumentException e)
        {
            throw new InputException("cooldown", e.Message);
        }
        return options;
    }
}
