namespace Coldwright.Runs.Explain;

/// <summary>Takes features from a trace. Shares of the way are those of the trace's own pull-down, so that a slow or a warm machine is still compared at like moments.</summary>
public static class FeatureReader
{
    // the last part of the pull-down that counts as its end, and the part before it that late changes are held against
    private const double Around = 0.05, EndShare = 0.06, LateFrom = 0.6, LateTo = 0.7;
    internal static readonly double[] Shares = [0.04, 0.12, 0.25, 0.45, 0.65, 0.8, 0.9, 0.96];
    internal static readonly double[] Warmings = [4, 10, 20, 40, 80];
    private const double LeastPull = 15, SettledK = 20, AtRestS = -2, ClearlyBeforeS = 60, LongestRestS = 3600, LeastToRoomK = 5, LateBeginS = 60, BeforeEndS = 1, LeastHoleS = 300, HoleSteps = 3;

    /// <summary>Value of a feature; null where the trace cannot give it.</summary>
    public static double? Value(Trace t, Feature f) => f.Kind switch
    {
        FeatureKind.Batch => null,
        FeatureKind.RestPressure => t.RestPa is > 0 and var p ? Math.Log(p) : null,
        _ => t.Lines.TryGetValue(f.What, out var line) && Raw(t, f, line) is { } v && double.IsFinite(v) ? f.IsLog && f.Kind is not (FeatureKind.LnTime or FeatureKind.LnWarmUp or FeatureKind.LateChange) ? v > 0 ? Math.Log(v) : null : v : null,
    };

    private static double? Raw(Trace t, Feature f, TraceLine line)
    {
        // what is read seldom must not be drawn across the end of the pull-down, where all changes at once
        double Mean(TraceLine of, double fromS, double toS) => of.LastAt(t.EndS - BeforeEndS) is { } last && last < toS ? of.Mean(Math.Min(fromS, last), last) : of.Mean(fromS, toS);
        switch (f.Kind)
        {
            case FeatureKind.LnTime: return Moment(t, f.At) is > 0 and var m ? Math.Log(m) : null;
            case FeatureKind.AtShare: return Moment(t, f.At) is { } at && !IsHole(t, line, at) ? Mean(line, at * (1 - Around), at * (1 + Around)) - (IsAboveLoad(f.What) ? Mean(t.Lines[Observable.Load], at * (1 - Around), at * (1 + Around)) : 0) : null;
            case FeatureKind.AtEnd: return Mean(line, t.EndS * (1 - EndShare), t.EndS) - (IsAboveLoad(f.What) ? Mean(t.Lines[Observable.Load], t.EndS * (1 - EndShare), t.EndS) : 0);
            case FeatureKind.LateChange when IsHole(t, line, 0.5 * (LateFrom + LateTo) * t.EndS): return null;
            case FeatureKind.LateChange:
                double late = Mean(line, t.EndS * (1 - EndShare), t.EndS), before = line.Mean(t.EndS * LateFrom, t.EndS * LateTo);
                return f.What >= Observable.HighPressure ? late > 0 && before > 0 ? Math.Log(late / before) : null : late - before;
            case FeatureKind.WarmReading: return t.BeginsAtRest ? 0 : AtRest(line) - t.RoomK;
            case FeatureKind.LnWarmUp: return WarmingS(t, f.At) is > 0 and var w && TowardsRoom(t, f.At) is { } share ? Math.Log(w / share) : null;
            case FeatureKind.WarmUpPressure: return WarmingS(t, f.At) is { } w2 ? line.At(t.StopS!.Value + w2) : null;
            default: return null;
        }
    }

    // between two readings that lie far apart nothing is known (a gap in the log, a channel that froze); a model's run has no gaps, only long steps
    private static bool IsHole(Trace t, TraceLine line, double atS) => !t.BeginsAtRest && line.HoleAt(atS) > Math.Max(LeastHoleS, HoleSteps * line.StepS);

    // a start noted by hand may be a minute off: what was read well before it counts, the last reading only where there is none
    private static double? AtRest(TraceLine line) => line.Middle(-LongestRestS, -ClearlyBeforeS) ?? line.Before(AtRestS);

    /// <summary>True for the two stations beside the load: they are compared as differences to it, which say more than where all three stand together.</summary>
    public static bool IsAboveLoad(Observable what) => what is Observable.CoilOutlet or Observable.ThrottleInlet;

    /// <summary>What a channel shows at the moment of a feature; null where it has none.</summary>
    public static double? Level(Trace t, Feature f, Observable what) => !t.Lines.TryGetValue(what, out var line) ? null : f.Kind switch
    {
        FeatureKind.AtShare => Moment(t, f.At) is { } at ? line.At(at) : null,
        FeatureKind.AtEnd => line.Mean(t.EndS * (1 - EndShare), t.EndS),
        FeatureKind.WarmReading => t.BeginsAtRest ? t.RoomK : AtRest(line),
        FeatureKind.Batch => f.At is 3 or 4 ? t.Batch?.OpeningK : null,
        FeatureKind.WarmUpPressure => WarmingS(t, f.At) is { } w ? line.At(t.StopS!.Value + w) : null,
        _ => null,
    };

    /// <summary>When the load has gone a share of the way, s; null when it hardly moved.</summary>
    public static double? Moment(Trace t, double share)
    {
        if (!t.Lines.TryGetValue(Observable.Load, out var load)) return null;
        // a log that begins later than the run has not seen the way from the room to its first reading
        bool late = load.TimeS[0] > LateBeginS;
        double warm = late ? t.RoomK : load.At(0), end = load.Mean(t.EndS * (1 - EndShare), t.EndS), level = warm - share * (warm - end);
        return warm - end < LeastPull || late && load.Value[0] <= level || load.Passes(level, 0, falling: true) is not { } at || IsHole(t, load, at) ? null : at;
    }

    /// <summary>Time in which the load warms by so many kelvin after the stop, s; null when it does not.</summary>
    public static double? WarmingS(Trace t, double kelvin)
    {
        if (t.StopS is not { } stop || !t.Lines.TryGetValue(Observable.Load, out var load) || t.LastS - stop < 60) return null;
        return load.Passes(load.At(stop) + kelvin, stop, falling: false) is { } at ? at - stop : null;
    }

    // A lumped body nears its room as exp(-t/tau): a warming by some kelvin is then worth ln of the ratio of the distances, from wherever it begins. What is left is tau, heat capacity over conductance.
    private static double? TowardsRoom(Trace t, double kelvin)
    {
        double before = t.RoomK - t.Lines[Observable.Load].At(t.StopS!.Value);
        return before - kelvin > LeastToRoomK ? Math.Log(before / (before - kelvin)) : null;
    }

    /// <summary>All features that a trace gives.</summary>
    public static IReadOnlyList<Feature> Of(Trace t)
    {
        var all = new List<Feature> { new(FeatureKind.RestPressure, Observable.HighPressure, 0) };
        all.AddRange(Shares.Select(s => new Feature(FeatureKind.LnTime, Observable.Load, s)));
        foreach (var what in t.Lines.Keys)
        {
            // before the start every thermometer must show the room
            if (what < Observable.HighPressure) all.Add(new(FeatureKind.WarmReading, what, 0));
            if (what != Observable.Load) all.AddRange(Shares.Select(s => new Feature(FeatureKind.AtShare, what, s)));
            all.Add(new(FeatureKind.AtEnd, what, 1));
            all.Add(new(FeatureKind.LateChange, what, 1));
        }
        foreach (var k in Warmings)
        {
            all.Add(new(FeatureKind.LnWarmUp, Observable.Load, k));
            // before, the two sides still find to one another
            if (k >= SettledK) all.Add(new(FeatureKind.WarmUpPressure, Observable.HighPressure, k));
        }
        return [.. all.Where(f => Value(t, f) is not null)];
    }
}
