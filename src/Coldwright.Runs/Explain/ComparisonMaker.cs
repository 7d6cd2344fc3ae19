using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>Puts a log beside the model's runs.</summary>
internal static class ComparisonMaker
{
    // scales of what a sensor that is wrong usually shows, K; a second fluid model's distance as one standard deviation; of the room's temperature as noted, K. Our assumptions.
    private const double UsualOffsetK = 8, UsualJunctionK = 6, MapDoubt = 0.5, FluidDoubt = 0.7, ReadingLag = 0.3, VapourPerK = 0.06, Alike = 0.6, PlugOnset = 0.93;

    /// <summary>The comparison.</summary>
    public static Comparison Make(Observation o, ModelRuns runs)
    {
        var trace = o.Trace;
        var plain = ModelRuns.TraceOf(runs.Plain, trace);
        var batch = trace.Batch is null ? null : BatchModel.Of(runs.Machine, runs.Layout);
        var seen = batch?.Measured(trace.Batch!);
        BatchFigures? Predicted(Course c) => batch?.Predict(c, trace, new BatchOddity());
        var own = Predicted(runs.Plain);
        Feature[] features =
        [
            .. FeatureReader.Of(trace).Where(f => FeatureReader.Value(plain, f) is not null),
            .. Enumerable.Range(0, seen is null ? 0 : BatchFigures.Count).Where(i => seen![i] is not null && own![i] is not null).Select(i => new Feature(FeatureKind.Batch, Observable.Load, i)),
        ];
        double[] measured = [.. features.Select(f => f.Kind == FeatureKind.Batch ? seen![(int)f.At]!.Value : FeatureReader.Value(trace, f)!.Value)], expected = With(Figures(plain, features, new double[features.Length]), own);
        double[] With(double[] figures, BatchFigures? b)
        {
            for (int i = 0; i < features.Length; i++) if (features[i].Kind == FeatureKind.Batch) figures[i] = b![(int)features[i].At]!.Value;
            return figures;
        }

        double[] Of(Course c, double[] otherwise) => With(Figures(ModelRuns.TraceOf(c, trace), features, otherwise), Predicted(c));
        double[] ground = ReferenceEquals(runs.Base, runs.Plain) ? expected : Of(runs.Base, expected);
        double[] Change(Course c, double[] from)
        {
            var figures = Of(c, from);
            for (int i = 0; i < figures.Length; i++) figures[i] -= from[i];
            return figures;
        }

        var shared = new List<(string, double[])>();
        var suspects = new List<Suspect>();
        foreach (var cause in runs.Causes)
        {
            var (a, b) = runs.Curve(cause.Id);
            if (a is null && b is null) continue;
            double[]? first = a is null ? null : Change(a, ground), second = b is null ? null : Change(b, ground);
            // where one of the two runs has no answer, the other's slope stands for it
            first ??= [.. second!.Select(v => v * cause.Strengths.First / cause.Strengths.Second)];
            second ??= [.. first.Select(v => v * cause.Strengths.Second / cause.Strengths.First)];
            double[] doubt = [.. features.Select(f => f.Kind == FeatureKind.Batch ? 1e9 : ModelDoubt.Of(f).Own)];
            first = Sober(first, second, doubt);
            // one slope through both runs: the model's own teeth count less
            var (x, y) = cause.Strengths;
            if (cause.Doubt > 0) shared.Add((cause.Id, [.. first.Select((v, i) => cause.Doubt * (x * v + y * second[i]) / (x * x + y * y))]));
            if (cause.OnlyDoubt) continue;
            suspects.Add(new Suspect(cause.Id, "", cause, first, second, cause.Strengths, cause.Usual, false) { Least = Turn(first, second, cause.Strengths, doubt) });
            if (cause.Id == "precooler-weak" && b is not null)
            {
                // a weak one may move less gas, and draw less, or lose it inside and draw as much as ever
                suspects[^1] = suspects[^1] with { OddsShare = 0.5 };
                double[] strong = Change(WithPowerOf(b, runs.Base), ground), weak = a is null ? [.. strong.Select(v => v * cause.Strengths.First / cause.Strengths.Second)] : Change(WithPowerOf(a, runs.Base), ground);
                suspects.Add(new Suspect(cause.Id, "drawing as much as ever", cause, weak, strong, cause.Strengths, cause.Usual, false) { OddsShare = 0.5 });
            }
            if (cause.FromShare is not null)
            {
                suspects[^1] = suspects[^1] with { Detail = "on the way", OddsShare = 0.5 };
                suspects.Add(LatePlug(features, first, second, cause));
            }
        }
        WetOutside(suspects);
        if (runs.OtherFluid is { } other) shared.Add(("fluid model", [.. Change(other, expected).Select(v => v * FluidDoubt)]));
        Kinds(features, shared);
        Map(features, plain, shared);
        shared.Add(("start", [.. features.Select(f => f.Kind == FeatureKind.LnTime && FeatureReader.Moment(trace, f.At) is > 0 and var t ? Math.Log(1 + o.StartDoubtS / t) : 0)]));
        shared.Add(("stop", [.. features.Select(f => f.Kind == FeatureKind.LnWarmUp && FeatureReader.WarmingS(trace, f.At) is > 0 and var t ? Math.Log(1 + o.StopDoubtS / t) : 0)]));
        shared.Add(("room", [.. features.Select(f => f.Kind == FeatureKind.WarmReading ? o.RoomDoubtK : 0)]));
        shared.Add(("model: approach to the end", [.. features.Select(ModelDoubt.Approach)]));
        Sensors(o, features, measured, shared, suspects);
        if (batch is not null) suspects.AddRange(BatchSuspects.Of(batch, runs.Plain, trace, features, expected));
        double[] variance = [.. features.Select((f, i) => f.Kind == FeatureKind.Batch ? Square(batch!.Doubt((int)f.At, own!, trace.Batch!)) : Variance(f, o))];
        return new Comparison { Plain = runs.Plain, Features = features, Measured = measured, Expected = expected, Variance = variance, Batch = batch, Shared = shared, Suspects = suspects };
    }

    // the same course with the other machines' electricity of another
    private static Course WithPowerOf(Course c, Course other)
    {
        var rest = new TraceLine([.. other.TimeS], [.. other.PowerW.Select((p, i) => p - other.CompressorW[i])]);
        return c with { PowerW = [.. c.CompressorW.Select((p, i) => p + rest.At(c.TimeS[i]))] };
    }

    /// <summary>Figures of a course; those it cannot give are those of another.</summary>
    public static double[] Figures(Trace t, IReadOnlyList<Feature> features, double[]? otherwise) => [.. features.Select((f, i) => FeatureReader.Value(t, f) ?? otherwise![i])];

    // where a weak cause does little, what its run shows is mostly the model's own teeth: the strong run's direction is taken, as far as the weak one goes along with it
    private static double[] Sober(double[] first, double[] second, double[] doubt)
    {
        double a = 0, b = 0, both = 0;
        for (int i = 0; i < first.Length; i++)
        {
            double w = 1 / (doubt[i] * doubt[i]);
            (a, b, both) = (a + w * first[i] * first[i], b + w * second[i] * second[i], both + w * first[i] * second[i]);
        }
        if (b < 1e-12 || both >= Alike * Math.Sqrt(a * b)) return first;
        double share = Math.Clamp(both / b, 0, 0.5);
        return [.. second.Select(v => share * v)];
    }

    // Water may sit where it freezes and cools with the box, or in the outer part, which stays as warm as ever: there it conducts, and its heat is not felt. Then it is a leak by another name.
    private static void WetOutside(List<Suspect> suspects)
    {
        int wet = suspects.FindIndex(s => s.Id == "wet-insulation"), leak = suspects.FindIndex(s => s.Id == "leak");
        if (wet < 0 || leak < 0) return;
        var inside = suspects[wet] with { OddsShare = 0.5 };
        double[] Like(double share) => ExplanationBuilder.Change(suspects[leak], CauseCatalog.MoistureFactor * share);
        suspects[wet] = inside;
        suspects.Add(inside with { Detail = "in its outer part", First = Like(inside.Strengths.First), Second = Like(inside.Strengths.Second) });
    }

    // An effect that comes all at once bends more than a parabola through nothing can without doing the opposite first: the strength below which it would, 0 where it bends less.
    private static double Turn(double[] first, double[] second, (double First, double Second) strengths, double[] doubt)
    {
        double both = 0, own = 0;
        for (int i = 0; i < first.Length; i++) (both, own) = (both + first[i] * second[i] / (doubt[i] * doubt[i]), own + second[i] * second[i] / (doubt[i] * doubt[i]));
        var (x, y) = strengths;
        double slope = own > 1e-12 ? both / own / x : 1 / y, bend = (1 / y - slope) / (y - x);
        return Math.Clamp(bend > 0 ? x - slope / bend : 0, 0, x);
    }

    // a plug that only begins near the end: nothing of it before
    private static Suspect LatePlug(Feature[] features, double[] first, double[] second, CauseModel plug)
    {
        double Share(Feature f) => f.Kind switch
        {
            FeatureKind.AtShare => f.At > PlugOnset ? 0.5 : 0,
            FeatureKind.AtEnd or FeatureKind.LnWarmUp => 1,
            FeatureKind.LnTime => f.At > PlugOnset ? 0.6 : 0,
            _ => 0,
        };
        double[] Masked(double[] change) => [.. change.Select((v, i) => features[i].Kind == FeatureKind.LateChange ? End(i, change) : v * Share(features[i]))];
        double End(int i, double[] change)
        {
            int end = Array.FindIndex(features, f => f.Kind == FeatureKind.AtEnd && f.What == features[i].What);
            return end < 0 ? 0 : change[end];
        }
        return new Suspect(plug.Id, "late", plug, Masked(first), Masked(second), plug.Strengths, plug.Usual, false) { OddsShare = 0.5 };
    }

    // doubts that all figures of one kind share
    private static void Kinds(Feature[] features, List<(string, double[])> shared)
    {
        static string Key(Feature f) => f.Kind is FeatureKind.AtShare or FeatureKind.AtEnd ? (f.What == Observable.CompressorPower ? Observable.Power : f.What).ToString() : f.Kind.ToString();
        foreach (var group in features.Select((f, i) => (f, i)).GroupBy(x => Key(x.f)))
        {
            var shift = new double[features.Length];
            foreach (var (f, i) in group) shift[i] = ModelDoubt.Of(f).Common;
            if (shift.Any(v => v > 0)) shared.Add(($"model: {group.Key}", shift));
        }
    }

    // a compressor's map is least sure far from the ratio it is rated at
    private static void Map(Feature[] features, Trace plain, List<(string, double[])> shared)
    {
        if (!plain.Lines.TryGetValue(Observable.HighPressure, out var high) || !plain.Lines.TryGetValue(Observable.LowPressure, out var low)) return;
        double Ratio(double at) => Math.Log(high.At(at) / low.At(at));
        double end = Ratio(plain.EndS), late = Ratio(0.65 * plain.EndS);
        var shift = new double[features.Length];
        for (int i = 0; i < shift.Length; i++)
        {
            var f = features[i];
            double gain = f.What switch { Observable.LowPressure => MapDoubt, Observable.CompressorPower => 0.5 * MapDoubt, Observable.Power => 0.35 * MapDoubt, Observable.MassFlow => 0.3 * MapDoubt, Observable.Discharge => MapDoubt * 60, _ => 0 };
            if (gain == 0) continue;
            if (f.Kind == FeatureKind.AtShare && FeatureReader.Moment(plain, f.At) is { } at) shift[i] = gain * (Ratio(at) - end);
            if (f.Kind == FeatureKind.LateChange) shift[i] = gain * (end - late);
        }
        if (shift.Any(v => v != 0)) shared.Add(("model: compressor map", shift));
    }

    private static void Sensors(Observation o, Feature[] features, double[] measured, List<(string, double[])> shared, List<Suspect> suspects)
    {
        var junction = new double[features.Length];
        bool couples = false;
        foreach (var c in o.Channels)
        {
            var shift = new double[features.Length];
            var unit = new double[features.Length];
            for (int i = 0; i < features.Length; i++)
            {
                var f = features[i];
                // a difference to the load hangs on the load's sensor too
                double sign = f.What == c.What ? 1 : c.What == Observable.Load && FeatureReader.IsAboveLoad(f.What) && f.Kind != FeatureKind.WarmReading ? -1 : 0;
                if (sign == 0 || FeatureReader.Level(o.Trace, f, c.What) is not { } value) continue;
                // the vapour pressure at the vessel's temperature rises by some 6 % a kelvin
                double per = f.IsLog ? 1 / value : f is { Kind: FeatureKind.Batch, At: 3 } ? -VapourPerK : sign;
                shift[i] = c.CommonAt(value) * per;
                if (c.Channel.Measured == Runs.Sensors.Measured.Temperature) unit[i] = f.Kind == FeatureKind.Batch ? per : sign;
                double gain = c.JunctionGain(value, o.Trace.RoomK);
                junction[i] += (f.Kind == FeatureKind.Batch ? per : sign) * gain;
                couples |= gain > 0;
            }
            shared.Add(($"sensor: {c.Channel.Name}", shift));
            if (c.Channel.Measured == Runs.Sensors.Measured.Temperature) suspects.Add(new Suspect("sensor-offset", c.Channel.Name, null, unit, unit, (1, 2), UsualOffsetK, true) { OddsShare = 1.0 / o.Channels.Count(x => x.Channel.Measured == Runs.Sensors.Measured.Temperature) });
        }
        if (couples) suspects.Add(new Suspect("cold-junction", "", null, junction, junction, (1, 2), UsualJunctionK, true));
    }

    private static double Variance(Feature f, Observation o)
    {
        double own = ModelDoubt.Of(f).Own, v = own * own;
        var channel = o.Channels.FirstOrDefault(c => c.What == f.What);
        if (channel is null) return v;
        // between two readings nobody looked
        if (f.Kind == FeatureKind.LnTime && FeatureReader.Moment(o.Trace, f.At) is > 0 and var t) v += Square(ReadingLag * channel.StepS / t);
        if (f.Kind is FeatureKind.LnWarmUp && FeatureReader.WarmingS(o.Trace, f.At) is { } warming) v += Square(ReadingLag * channel.StepS / warming);
        if (f.Kind is FeatureKind.WarmUpPressure && FeatureReader.WarmingS(o.Trace, f.At) is { } after) v += Square(0.3 * ReadingLag * channel.StepS / after);
        if (f.Kind == FeatureKind.AtShare && f.At < 0.9 && o.Trace.Lines[f.What] is var line && FeatureReader.Moment(o.Trace, f.At) is { } m)
        {
            double change = ReadingLag * (line.At(m + channel.StepS) - line.At(m - channel.StepS));
            v += Square(f.IsLog ? change / line.At(m) : change);
        }
        return v;
    }

    private static double Square(double x) => x * x;
}
