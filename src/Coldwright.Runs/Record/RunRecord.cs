using Coldwright.Machine.Description;
using Coldwright.Runs.Tightness;

namespace Coldwright.Runs.Record;

/// <summary>What happened in a run: channels in SI with uncertainty, events, and what was found wrong with the log. Immutable.</summary>
public sealed record RunRecord
{
    /// <summary>Name of the run.</summary>
    public required string Name { get; init; }
    /// <summary>Folder of the run; empty when it was not read from one.</summary>
    public required string Directory { get; init; }
    /// <summary>What kind of run.</summary>
    public required RunKind Kind { get; init; }
    /// <summary>Wall-clock time of the start (time zero), local; null when nothing says it.</summary>
    public required DateTime? Start { get; init; }
    /// <summary>Pressure of the room that gauge readings were counted from, Pa; a barometer among the channels goes before it.</summary>
    public required double RoomPressurePa { get; init; }
    /// <summary>Its standard uncertainty, Pa.</summary>
    public required double RoomPressureUncertaintyPa { get; init; }
    /// <summary>Temperature of the room, K.</summary>
    public required double RoomTemperatureK { get; init; }
    /// <summary>True when the run's own file notes it; false when it is the machine file's or 20 °C.</summary>
    public required bool IsRoomNoted { get; init; }
    /// <summary>Channels in file order.</summary>
    public required IReadOnlyList<RunChannel> Channels { get; init; }
    /// <summary>Events in order of time.</summary>
    public required IReadOnlyList<RunEvent> Events { get; init; }
    /// <summary>What was found wrong with the log, in order of time.</summary>
    public required IReadOnlyList<Fault> Faults { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
    /// <summary>How the log was read; null when there was none.</summary>
    public required LogSummary? Log { get; init; }
    /// <summary>The cooler; null when its folder could not be read.</summary>
    public required MachineDescription? Machine { get; init; }
    /// <summary>The leak or proof test described in the file; null for a run.</summary>
    public required TightnessDescription? Test { get; init; }

    /// <summary>The channel of that name; null when there is none.</summary>
    public RunChannel? Channel(string name) => Channels.FirstOrDefault(c => c.Name == name);

    /// <summary>First moment of the record, s from the start.</summary>
    public double FirstS => Moments().DefaultIfEmpty(0).Min();

    /// <summary>Last moment of the record, s from the start.</summary>
    public double LastS => Moments().DefaultIfEmpty(0).Max();

    private IEnumerable<double> Moments()
    {
        foreach (var channel in Channels.Where(c => c.Count > 0))
        {
            yield return channel.TimesS[0];
            yield return channel.TimesS[^1];
        }
        foreach (var e in Events) yield return e.TimeS;
    }
}

/// <summary>How a log was read.</summary>
/// <param name="File">File name.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Rows">Rows of data that were used.</param>
/// <param name="Columns">Columns found.</param>
/// <param name="Delimiter">What stands between cells, in words.</param>
/// <param name="Decimal">Decimal sign, in words.</param>
/// <param name="TimeForm">How times are written, in words.</param>
/// <param name="StepS">Usual time from row to row, s.</param>
/// <param name="Unused">Columns that no channel uses.</param>
public sealed record LogSummary(string File, long Bytes, int Rows, int Columns, string Delimiter, string Decimal, string TimeForm, double StepS, IReadOnlyList<string> Unused);
