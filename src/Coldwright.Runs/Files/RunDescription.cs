using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;
using Coldwright.Runs.Tightness;

namespace Coldwright.Runs.Files;

/// <summary>What stands in <c>run.yaml</c>, before the log is read.</summary>
internal sealed record RunDescription
{
    public required string Name { get; init; }
    public required RunKind Kind { get; init; }
    public required Moment? Start { get; init; }
    public required string Cooler { get; init; }
    public required double? RoomTemperatureK { get; init; }
    public required double? RoomPressurePa { get; init; }
    public required double? RoomPressureUncertaintyPa { get; init; }
    public required LogDescription? Log { get; init; }
    public required IReadOnlyList<ChannelDescription> Channels { get; init; }
    public required IReadOnlyList<HandReading> Readings { get; init; }
    public required IReadOnlyList<EventDescription> Events { get; init; }
    public required TestDescription? Test { get; init; }
}

/// <summary>A channel as described; <see cref="Sensor"/> is null for hand-noted channels whose unit stands with each value.</summary>
internal sealed record ChannelDescription(string Name, string Column, Whereabouts Place, SensorDescription Sensor, bool UnitIsGiven, int Line, int FileColumn);

/// <summary>A value noted by hand.</summary>
internal sealed record HandReading(Moment Time, string Channel, string Text, int Line, int FileColumn);

/// <summary>An event with its time as written.</summary>
internal sealed record EventDescription(Moment Time, EventKind Kind, string At, double? MassKg, double? UncertaintyKg, string Note, int Line);

/// <summary>A test with its times as written.</summary>
internal sealed record TestDescription(TightnessDescription Test, Moment? From, Moment? To, int Line, int FileColumn);

/// <summary>How the log is to be read; what is null is found.</summary>
internal sealed record LogDescription
{
    public string File { get; init; } = "log.csv";
    public string? TimeColumn { get; init; }
    public string? DateColumn { get; init; }
    public string? TimeForm { get; init; }
    public string? TimeUnit { get; init; }
    public double? IntervalS { get; init; }
    public string? Delimiter { get; init; }
    public string? Decimal { get; init; }
    public string? DateOrder { get; init; }
    public double ClockAheadS { get; init; }
    public string ForwardJumps { get; init; } = "judge";
}
