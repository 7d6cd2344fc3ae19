using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Fluids.Envelopes;

/// <summary>Where an envelope is looked for.</summary>
public sealed record EnvelopeWindow
{
    /// <summary>Coldest temperature, K.</summary>
    public double ColdestK { get; init; } = 75;
    /// <summary>Warmest temperature, K; null: a little above the highest critical temperature of a component.</summary>
    public double? WarmestK { get; init; }
    /// <summary>Lowest pressure, Pa.</summary>
    public double LowestPa { get; init; } = 0.2e5;
    /// <summary>Highest pressure, Pa.</summary>
    public double HighestPa { get; init; } = 150e5;
    /// <summary>Isobars and isotherms scanned.</summary>
    public int Scans { get; init; } = 44;
}

/// <summary>
/// Traces every phase boundary by scanning isobars and isotherms with certified flashes and closing in on each change of
/// phases by bisection: retrograde parts, two liquids and three phases come out of the same walk, and no point is a
/// metastable one. The crossings are then joined to lines; where neighbours lie too far apart a note says so.
/// </summary>
public sealed class EnvelopeTracer
{
    private const double StepK = 2.5, PressureStep = 0.07, WidthK = 1e-3, WidthLogP = 1e-5;

    private readonly Flash _flash;
    private readonly double[] _z;
    private readonly EnvelopeWindow _window;
    private readonly double _warmestK;
    private readonly List<(BoundaryKind Kind, string Between, BoundaryPoint Point)> _found = [];
    private readonly List<string> _notes = [];

    private EnvelopeTracer(HelmholtzModel model, IReadOnlyList<double> z, EnvelopeWindow window)
    {
        _flash = new Flash(model);
        _z = z.ToArray();
        _window = window;
        double hottest = model.Substances.Where((_, i) => z[i] > 1e-6).Max(s => s.CriticalTemperatureK);
        _warmestK = window.WarmestK ?? 1.02 * hottest;
    }

    /// <summary>Traces the envelope of a mixture of two or more components.</summary>
    /// <param name="model">The model.</param>
    /// <param name="z">Mole fractions.</param>
    /// <param name="window">Where to look.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static EnvelopeResult Trace(HelmholtzModel model, IReadOnlyList<double> z, EnvelopeWindow? window = null, CancellationToken cancel = default)
    {
        if (model.Count < 2) throw new ArgumentException("a pure substance has a saturation line, not an envelope; use PureSaturation");
        var tracer = new EnvelopeTracer(model, z, window ?? new EnvelopeWindow());
        tracer.Scan(cancel);
        return tracer.Assemble(cancel);
    }

    private readonly record struct State(double Coordinate, string Phases, double Density, double VapourFraction);

    private void Scan(CancellationToken cancel)
    {
        double low = Math.Log(_window.LowestPa), high = Math.Log(_window.HighestPa);
        for (int i = 0; i <= _window.Scans; i++)
        {
            cancel.ThrowIfCancellationRequested();
            double p = Math.Exp(low + (high - low) * i / _window.Scans);
            Walk(_window.ColdestK, _warmestK, StepK, WidthK, t => (t, p));
        }
        for (int i = 0; i <= _window.Scans; i++)
        {
            cancel.ThrowIfCancellationRequested();
            double t = _window.ColdestK + (_warmestK - _window.ColdestK) * i / _window.Scans;
            Walk(low, high, PressureStep, WidthLogP, lnP => (t, Math.Exp(lnP)));
        }
    }

    private void Walk(double from, double to, double step, double width, Func<double, (double T, double P)> place)
    {
        State? previous = null;
        bool lost = false;
        int count = (int)Math.Ceiling((to - from) / step);
        for (int i = 0; i <= count; i++)
        {
            double x = from + (to - from) * i / count;
            var state = Solve(x, place, previous is not null);
            if (state is null) { lost = true; previous = null; continue; }
            if (previous is { } a) Close(a, state.Value, width, place, 0);
            previous = state;
        }
        if (lost && _notes.Count == 0) _notes.Add("the equations have no answer in part of the cold, dense corner; lines that enter it stop there");
    }

    private State? Solve(double x, Func<double, (double T, double P)> place, bool warm)
    {
        var (t, p) = place(x);
        if (!_flash.TrySolve(t, p, _z, warm)) return null;
        string names = _flash.PhaseNames();
        // vapour and liquid of a single phase are two names for one thing
        return new State(x, names is "vapour" or "liquid" ? "one" : names, _flash.Density(), _flash.VapourFraction());
    }

    private void Close(State a, State b, double width, Func<double, (double T, double P)> place, int depth)
    {
        if (a.Phases == b.Phases) return;
        if (b.Coordinate - a.Coordinate > width && depth < 40)
        {
            if (Solve(0.5 * (a.Coordinate + b.Coordinate), place, true) is not { } m) return;
            Close(a, m, width, place, depth + 1);
            Close(m, b, width, place, depth + 1);
            return;
        }
        int na = Count(a.Phases), nb = Count(b.Phases);
        // a change of names alone: nothing jumps
        if (na == nb && Math.Abs(a.Density / b.Density - 1) < 0.02) return;
        var (t, p) = place(0.5 * (a.Coordinate + b.Coordinate));
        var (fewer, more) = na <= nb ? (a, b) : (b, a);
        var kind = na == nb || Math.Max(na, nb) > 2 ? BoundaryKind.ThreePhase
            : !more.Phases.Contains("vapour") ? BoundaryKind.LiquidLiquid
            : more.VapourFraction < 0.5 ? BoundaryKind.Bubble : BoundaryKind.Dew;
        string between = (fewer.Phases == "one" ? kind == BoundaryKind.Dew ? "vapour" : "liquid" : fewer.Phases) + " | " + more.Phases;
        _found.Add((kind, between, new BoundaryPoint(t, p)));
    }

    private static int Count(string phases) => phases.Count(c => c == '+') + 1;

    private EnvelopeResult Assemble(CancellationToken cancel)
    {
        double spanT = _warmestK - _window.ColdestK, spanP = Math.Log(_window.HighestPa / _window.LowestPa);
        var lines = new List<BoundaryLine>();
        foreach (var group in _found.GroupBy(f => (f.Kind, Key: f.Kind == BoundaryKind.ThreePhase ? f.Between : "")))
            lines.AddRange(LineJoiner.Join(group.Select(g => g.Point), spanT, spanP)
                .Select(points => new BoundaryLine(group.Key.Kind, points, group.First().Between)));
        var saturation = _found.Where(f => f.Kind is BoundaryKind.Bubble or BoundaryKind.Dew).Select(f => f.Point).ToList();
        var critical = CriticalPointFinder.Find(_flash.Model, _z, cancel).ToArray();
        foreach (var point in critical.Where(c => c.Stable))
            if (saturation.Count > 0 && !saturation.Any(q => Math.Abs(q.TemperatureK - point.TemperatureK) < 0.05 * spanT))
                _notes.Add(FormattableString.Invariant($"no traced point lies near the critical point at {point.TemperatureK:0.0} K: the lines leave a gap there"));
        return new EnvelopeResult
        {
            Lines = lines.OrderBy(l => l.Kind).ThenByDescending(l => l.Points.Count).ToArray(),
            CriticalPoints = critical,
            HighestPressure = saturation.Count > 0 ? saturation.MaxBy(q => q.PressurePa) : null,
            HighestTemperature = saturation.Count > 0 ? saturation.MaxBy(q => q.TemperatureK) : null,
            Notes = _notes,
        };
    }
}
