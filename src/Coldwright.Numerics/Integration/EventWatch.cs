namespace Coldwright.Numerics.Integration;

/// <summary>Follows the signs of the event functions and finds their crossings on the dense output.</summary>
internal sealed class EventWatch
{
    private readonly IntegrationEvent[] _events;
    private readonly InitialValueProblem _problem;
    private readonly int[] _sign;
    // Not 0: the event has just happened, and its function is not looked at until it has grown beyond this size.
    private readonly double[] _asleepBelow;
    private readonly double[] _point;
    private readonly int _samples;

    public EventWatch(InitialValueProblem problem, IReadOnlyList<IntegrationEvent> events, int samples)
    {
        (_problem, _samples) = (problem, samples);
        _events = [.. events.Where(e => e.Value is not null)];
        foreach (var e in events)
            if (e is { Change: not null, Effect: EventEffect.Record }) throw new ArgumentException($"event '{e.Name}' changes the state but only records; its effect must be a restart or a stop");
        _sign = new int[_events.Length];
        _asleepBelow = new double[_events.Length];
        _point = new double[problem.Count];
    }

    public IntegrationEvent this[int index] => _events[index];

    public int Count => _events.Length;

    /// <summary>Takes the signs anew; where a function is zero the sign it had stays.</summary>
    public void Observe(double time, ReadOnlySpan<double> state)
    {
        for (int e = 0; e < _events.Length; e++)
        {
            int sign = Math.Sign(Value(e, time, state));
            if (sign != 0) _sign[e] = sign;
        }
    }

    /// <summary>The earliest crossing after a time within the step; false when there is none.</summary>
    public bool TryFindFirst(AcceptedStep step, double from, out int index, out double time)
    {
        (index, time) = (-1, double.PositiveInfinity);
        double left = from;
        for (int k = 1; k <= _samples && index < 0; k++)
        {
            double right = k == _samples ? step.End : from + (step.End - from) * k / _samples;
            for (int e = 0; e < _events.Length; e++)
            {
                int sign = Math.Sign(Awake(e, OnStep(e, step, right)));
                if (_sign[e] == 0 || _asleepBelow[e] > 0 || sign == _sign[e] || !_events[e].Counts(rising: _sign[e] < 0)) continue;
                double root = Locate(e, step, left, right);
                if (root < time) (index, time) = (e, root);
            }
            // The other functions have been followed as far as the crossing, no further.
            double reached = index < 0 ? right : time;
            for (int e = 0; e < _events.Length; e++)
            {
                int sign = Math.Sign(OnStep(e, step, reached));
                if (sign != 0 && _asleepBelow[e] == 0 && (_sign[e] == 0 || !_events[e].Counts(rising: _sign[e] < 0))) _sign[e] = sign;
            }
            left = right;
        }
        return index >= 0;
    }

    /// <summary>True when this event crosses, the way that counts, at this very time; used for events that coincide.</summary>
    public bool CrossesAt(int e, double time, ReadOnlySpan<double> state)
    {
        int sign = Math.Sign(Value(e, time, state));
        return sign != _sign[e] && _sign[e] != 0 && _asleepBelow[e] == 0 && _events[e].Counts(rising: _sign[e] < 0);
    }

    /// <summary>An event has happened: its function is now on the other side, whatever rounding says.</summary>
    public void Passed(int e) => _sign[e] = -_sign[e];

    /// <summary>
    /// Lets an event that has restarted the run sleep until its function is larger than a change of the state within its tolerance
    /// makes it: a stiff component that settles after the restart would else cross again.
    /// </summary>
    public void Sleep(int e, double time, ReadOnlySpan<double> state, ReadOnlySpan<double> tolerance)
    {
        double value = Value(e, time, state);
        for (int sign = -1; sign <= 1; sign += 2)
        {
            for (int i = 0; i < _point.Length; i++) _point[i] = state[i] + sign * tolerance[i];
            _asleepBelow[e] = Math.Max(_asleepBelow[e], Math.Abs(Value(e, time, _point) - value));
        }
    }

    private double Awake(int e, double value)
    {
        if (Math.Abs(value) > _asleepBelow[e]) _asleepBelow[e] = 0;
        return value;
    }

    public double Value(int e, double time, ReadOnlySpan<double> state)
    {
        double value = _events[e].Value!(time, state, _problem.NominalParameters);
        return double.IsNaN(value) ? throw new InvalidOperationException($"event '{_events[e].Name}' gave no number at time {time}") : value;
    }

    private double OnStep(int e, AcceptedStep step, double time)
    {
        step.Evaluate(time, _point);
        return Value(e, time, _point);
    }

    // Secant steps that keep the bracket (Illinois), a halving in every third; the end on the far side is returned.
    private double Locate(int e, AcceptedStep step, double left, double right)
    {
        double a = left, b = right, fa = OnStep(e, step, a), fb = OnStep(e, step, b);
        if (fa == 0 || Math.Sign(fa) != _sign[e]) fa = _sign[e] * double.Epsilon;
        double tolerance = 1e-13 * step.Length + 4 * 2.2e-16 * Math.Abs(b);
        int side = 0;
        for (int k = 0; k < 200 && b - a > tolerance && fb != 0; k++)
        {
            double c = k % 3 == 2 ? 0.5 * (a + b) : b - fb * (b - a) / (fb - fa);
            if (!(c > a && c < b)) c = 0.5 * (a + b);
            double fc = OnStep(e, step, c);
            if (Math.Sign(fc) == _sign[e])
            {
                (a, fa) = (c, fc);
                if (side == -1) fb *= 0.5;
                side = -1;
            }
            else
            {
                (b, fb) = (c, fc);
                if (side == 1) fa *= 0.5;
                side = 1;
            }
        }
        return b;
    }
}
