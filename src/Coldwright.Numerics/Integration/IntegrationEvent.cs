namespace Coldwright.Numerics.Integration;

/// <summary>g(t, y, p), smooth; the event is where it passes zero.</summary>
public delegate double EventFunction(double time, ReadOnlySpan<double> state, ReadOnlySpan<double> parameters);

/// <summary>Changes the state at an event. Pure: it may be called several times.</summary>
public delegate void StateChange(double time, Span<double> state, ReadOnlySpan<double> parameters);

/// <summary>Told once that an event has happened, after the state was changed: the place to switch what the right-hand side does.</summary>
public delegate void EventAction(double time, ReadOnlySpan<double> state);

/// <summary>Which crossings of zero count.</summary>
public enum EventDirection
{
    /// <summary>Both.</summary>
    Either,
    /// <summary>From below to above.</summary>
    Rising,
    /// <summary>From above to below.</summary>
    Falling,
}

/// <summary>What an event does to the run.</summary>
public enum EventEffect
{
    /// <summary>It is noted; the run goes on undisturbed.</summary>
    Record,
    /// <summary>The run begins anew from it: slopes may jump there.</summary>
    Restart,
    /// <summary>The run ends.</summary>
    Stop,
}

/// <summary>Something that happens where a function of the state passes zero, or at a known time.</summary>
public sealed record IntegrationEvent
{
    private IntegrationEvent(string name, EventFunction? value, double time) => (Name, Value, Time) = (name, value, time);

    /// <summary>Name in results and messages.</summary>
    public string Name { get; }

    /// <summary>g; null for an event at a known time.</summary>
    public EventFunction? Value { get; }

    /// <summary>The known time; not a number for an event of the state.</summary>
    public double Time { get; }

    /// <summary>Which crossings count.</summary>
    public EventDirection Direction { get; init; } = EventDirection.Either;

    /// <summary>What it does to the run. A state change needs a restart or a stop.</summary>
    public EventEffect Effect { get; init; } = EventEffect.Restart;

    /// <summary>How the state jumps; null when it does not.</summary>
    public StateChange? Change { get; init; }

    /// <summary>Told when it has happened.</summary>
    public EventAction? Happened { get; init; }

    /// <summary>An event where g passes zero.</summary>
    /// <param name="name">Name.</param>
    /// <param name="value">g.</param>
    public static IntegrationEvent WhenZero(string name, EventFunction value) => new(name, value, double.NaN);

    /// <summary>An event at a known time. The run steps exactly to it, so the right-hand side may jump there if it is switched by <see cref="Happened"/>. Times up to the start of the run do not happen.</summary>
    /// <param name="name">Name.</param>
    /// <param name="time">Time.</param>
    public static IntegrationEvent AtTime(string name, double time)
        => double.IsFinite(time) ? new(name, null, time) : throw new ArgumentException($"event '{name}': time {time}; a finite number expected");

    internal bool Counts(bool rising) => Direction == EventDirection.Either || rising == (Direction == EventDirection.Rising);
}
