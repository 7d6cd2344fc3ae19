using System.Collections.Immutable;

namespace Coldwright.Numerics.Integration;

/// <summary>What the events do to a run: cuts steps, changes the state, tells the listeners, keeps the list.</summary>
internal sealed class EventPassage
{
    private readonly EventWatch _watch;
    private readonly ProblemEvaluator _evaluator;
    private readonly ErrorNorm _norm;
    private readonly SensitivityTracker? _sensitivities;
    private readonly EventSensitivity? _crossing;
    private readonly IntegrationEvent[] _timed;
    private readonly ImmutableArray<EventOccurrence>.Builder _occurrences = ImmutableArray.CreateBuilder<EventOccurrence>();
    private readonly List<(IntegrationEvent Event, EventOccurrence Occurrence)> _pending = [];
    private readonly double[] _before;
    private readonly double _end;
    private double[] _state = [];
    private double _time;
    private int _nextTimed;

    public EventPassage(ProblemEvaluator evaluator, ErrorNorm norm, IReadOnlyList<IntegrationEvent> events, SensitivityTracker? sensitivities, int samples, double start, double end)
    {
        (_evaluator, _norm, _sensitivities, _end) = (evaluator, norm, sensitivities, end);
        _watch = new(evaluator.Problem, events, samples);
        _timed = [.. events.Where(e => e.Value is null && e.Time > start && e.Time <= end).OrderBy(e => e.Time)];
        _before = new double[evaluator.Problem.Count];
        if (sensitivities is null || events.Count == 0) return;
        if (evaluator.Problem.HasAlgebraicRows) throw new ArgumentException("sensitivities across events need a mass matrix without zeros");
        _crossing = new(evaluator, sensitivities);
    }

    public ImmutableArray<EventOccurrence> Occurrences => _occurrences.ToImmutable();

    /// <summary>Name of the event that has ended the run.</summary>
    public string? StoppedBy { get; private set; }

    /// <summary>Whether the last step ended in a restart.</summary>
    public bool Restarted { get; private set; }

    /// <summary>The event handled last.</summary>
    public string LastEvent { get; private set; } = "";

    /// <summary>The next time the run must hit exactly.</summary>
    public double NextTime => _nextTimed < _timed.Length ? _timed[_nextTimed].Time : _end;

    public void Begin(double time, ReadOnlySpan<double> state) => _watch.Observe(time, state);

    /// <summary>
    /// Looks through a step; cuts it, and sets the state, where an event restarts or stops. Returns the time reached.
    /// </summary>
    public double After(AcceptedStep step, double target, double[] state)
    {
        (_state, _time, Restarted) = (state, target, false);
        _pending.Clear();
        double from = step.Start;
        while (_watch.Count > 0 && _watch.TryFindFirst(step, from, out int index, out double time))
        {
            bool cuts = _watch[index].Effect != EventEffect.Record;
            step.Evaluate(time, _before);
            if (cuts) _before.CopyTo(state, 0);
            Note(_watch[index], step, time, _before);
            _watch.Passed(index);
            from = time;
            if (!cuts) continue;
            step.CutAt(time);
            _time = time;
            if (_watch[index].Change is null) _watch.Sleep(index, time, state, _norm.Scale);
            for (int e = 0; e < _watch.Count; e++)
            {
                if (e == index || !_watch.CrossesAt(e, time, state)) continue;
                Note(_watch[e], step, time, state);
                _watch.Passed(e);
            }
            break;
        }
        while (_nextTimed < _timed.Length && _timed[_nextTimed].Time <= _time)
        {
            Note(_timed[_nextTimed], step, _time, state);
            _nextTimed++;
        }
        // Noting an event moved the sensitivities to its time.
        if (_pending.Count > 0 && _sensitivities is not null) Take(step, _time, _sensitivities);
        return _time;
    }

    /// <summary>Carries out what the step's events do, after the observer has seen the step. False when the slope beside an event cannot be found.</summary>
    public bool TryAct()
    {
        bool done = true;
        foreach (var (happened, occurrence) in _pending)
        {
            LastEvent = happened.Name;
            if (happened.Effect == EventEffect.Record)
            {
                happened.Happened?.Invoke(occurrence.Time, occurrence.State.AsSpan());
                continue;
            }
            bool restarts = happened.Effect == EventEffect.Restart;
            _state.CopyTo(_before, 0);
            if (restarts && _crossing is not null) done &= _crossing.TryBefore(_time, _before);
            happened.Change?.Invoke(_time, _state, _evaluator.Parameters);
            happened.Happened?.Invoke(_time, _state);
            if (restarts) Restarted = true;
            else StoppedBy ??= happened.Name;
            if (restarts && _crossing is not null) done &= _crossing.TryPass(happened.Change, _time, _before, _state, occurrence.TimeSensitivities.AsSpan());
        }
        if (Restarted) _watch.Observe(_time, _state);
        return done;
    }

    private static void Take(AcceptedStep step, double time, SensitivityTracker sensitivities)
    {
        for (int k = 0; k < sensitivities.Count; k++) step.EvaluateSensitivity(time, k, sensitivities.Value(k));
    }

    private void Note(IntegrationEvent happened, AcceptedStep step, double time, ReadOnlySpan<double> state)
    {
        double[] derivatives = [];
        if (_sensitivities is not null && _crossing is not null)
        {
            Take(step, time, _sensitivities);
            derivatives = _crossing.TimeDerivatives(happened, time, state, step.Length);
        }
        _occurrences.Add(new(happened.Name, time, [.. state], [.. derivatives]));
        _pending.Add((happened, _occurrences[^1]));
    }
}
