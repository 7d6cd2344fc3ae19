using System.Globalization;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Runs.Files;
using Coldwright.Runs.Logs;
using Coldwright.Runs.Record;
using Coldwright.Runs.Repair;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs;

/// <summary>Reads a run's folder: <c>run.yaml</c> and the logger's file. Bad input never throws; it ends in <see cref="RunFolder.Problems"/>.</summary>
public static class RunImporter
{
    /// <summary>Name of the file that describes a run.</summary>
    public const string RunFile = "run.yaml";

    private const double StandardPa = 101325;
    // Weather moves the barometer by this much either way; a barometer read on the day is far better. Our assumptions.
    private const double WeatherLimitPa = 1500;
    private const double ReadBarometerLimitPa = 300;

    /// <summary>Reads the folder.</summary>
    /// <param name="directory">Folder of the run.</param>
    /// <param name="cancel">Stops the work.</param>
    public static RunFolder Read(string directory, CancellationToken cancel = default)
    {
        var problems = new ProblemList(RunFile);
        var path = Path.Combine(directory, RunFile);
        if (!Directory.Exists(directory)) problems.Add(File.Exists(directory) ? $"'{directory}' is a file; give the folder that holds {RunFile}" : $"there is no folder '{directory}'");
        else if (!File.Exists(path)) problems.Add($"'{directory}' holds no {RunFile}. A run's folder, runs/DATE-NAME in the cooler's, holds {RunFile} (what was done, which column is which sensor) and the logger's file");
        if (!problems.IsEmpty || FileText.Read(path, problems) is not { } text) return new() { Directory = directory, Problems = problems.InFileOrder() };
        return Read(text, directory, problems, null, cancel);
    }

    /// <summary>Reads a description and a log from memory.</summary>
    /// <param name="runText">Text of <c>run.yaml</c>.</param>
    /// <param name="log">Bytes of the log; null to look for none.</param>
    /// <param name="cancel">Stops the work.</param>
    public static RunFolder ReadTexts(string runText, byte[]? log, CancellationToken cancel = default) => Read(runText, "", new ProblemList(RunFile), log, cancel);

    private static RunFolder Read(string text, string directory, ProblemList problems, byte[]? logBytes, CancellationToken cancel)
    {
        var warnings = new List<string>();
        var cooler = FindCooler(text, directory, warnings);
        var machine = cooler?.Machine;
        var context = new ReadingContext(problems, warnings, name => SubstanceCatalog.Get(name).MolarMass) { RoomPressurePa = machine?.Room.PressurePa ?? StandardPa };
        var run = RunReader.Read(text, context, machine?.Charge.Mixture);
        if (run is null || !problems.IsEmpty) return new() { Directory = directory, Problems = problems.InFileOrder() };
        PlaceCheck.Check(run, machine, problems);
        byte[]? bytes = null;
        if (run.Log is { } log)
        {
            bytes = logBytes is not null ? LogBytes.Plain(logBytes) : directory.Length > 0 ? LogBytes.Read(Path.Combine(directory, log.File), log.File, problems) : null;
            if (bytes is null && problems.IsEmpty) problems.Add($"there is no log '{log.File}'");
        }
        if (!problems.IsEmpty) return new() { Directory = directory, Problems = problems.InFileOrder() };
        var record = new RunAssembly(run, machine, directory, problems, warnings).Build(bytes, cancel);
        return new() { Directory = directory, Record = problems.IsEmpty ? record : null, Cooler = cooler, Problems = problems.InFileOrder() };
    }

    // The description itself says where the cooler is, but its gauge pressures need the cooler's barometer: the key is looked up first.
    private static MachineFolder? FindCooler(string text, string directory, List<string> warnings)
    {
        if (directory.Length == 0) return null;
        var given = CoolerKey(text);
        var folder = given is null ? Path.Combine(directory, "..", "..") : Path.Combine(directory, given);
        if (given is null && !File.Exists(Path.Combine(folder, MachineFolderReader.MachineFile)))
        {
            warnings.Add($"there is no {MachineFolderReader.MachineFile} two folders up, so the places of the sensors cannot be checked; 'cooler:' says where it is");
            return null;
        }
        var found = MachineFolderReader.Read(folder);
        if (found.IsGood) return found;
        warnings.Add($"the cooler in '{given ?? "../.."}' cannot be read ({found.Problems[0]}), so the places of the sensors cannot be checked");
        return null;
    }

    private static string? CoolerKey(string text) => text.Split('\n').FirstOrDefault(l => l.StartsWith("cooler:", StringComparison.Ordinal)) is { } line
        ? line["cooler:".Length..].TrimEnd('\r').Split(" #")[0].Trim().Trim('"', '\'') is { Length: > 0 } value ? value : null
        : null;

    /// <summary>Pressure of the room and its standard uncertainty, Pa.</summary>
    internal static (double Pa, double UncertaintyPa) Room(RunDescription run, MachineDescription? machine, List<string> warnings)
    {
        if (run.RoomPressurePa is { } day) return (day, run.RoomPressureUncertaintyPa ?? ReadBarometerLimitPa / Math.Sqrt(3));
        var u = run.RoomPressureUncertaintyPa ?? WeatherLimitPa / Math.Sqrt(3);
        if (machine is not null) return (machine.Room.PressurePa, u);
        warnings.Add($"neither run nor cooler says the room's pressure; {(StandardPa / 100).ToString("0.##", CultureInfo.InvariantCulture)} mbar is taken for gauge readings");
        return (StandardPa, u);
    }
}
