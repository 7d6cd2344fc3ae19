namespace Coldwright.Runs.Explain;

/// <summary>Which short test would settle most between the causes that remain.</summary>
internal static class TestRanking
{
    private const int MostRivals = 8;
    private const double WarmReadingDoubtK = 0.4;

    private static readonly (string Id, string What, Func<Feature, bool> Adds)[] _tests =
    [
        ("warm-up", "stop the compressor when it is cold and log how it warms up, at least half an hour", f => f.Kind == FeatureKind.LnWarmUp),
        ("standstill-pressures", "read both gauges with everything warm before the start, and again an hour after the stop", f => f.Kind is FeatureKind.RestPressure or FeatureKind.WarmUpPressure),
        ("precooled", "measure the gas behind the precooler, with the precooler on", f => f.What == Observable.Precooled && f.Kind == FeatureKind.AtEnd),
        ("return", "measure the returning gas where it leaves the recuperator", f => f.What == Observable.Return && f.Kind is FeatureKind.AtEnd or FeatureKind.AtShare),
        ("throttle-inlet", "measure the gas before the throttle", f => f.What == Observable.ThrottleInlet && f.Kind is FeatureKind.AtEnd or FeatureKind.AtShare),
        ("power", "measure the compressor's electricity", f => f.What == Observable.CompressorPower && f.Kind is FeatureKind.AtEnd or FeatureKind.AtShare),
        ("sensor-check", "dip the vessel's sensor into ice water and boiling nitrogen", f => f.Kind == FeatureKind.WarmReading),
    ];

    /// <summary>The tests, the most telling first.</summary>
    public static IReadOnlyList<ShortTest> Of(Observation o, ModelRuns runs, Comparison c, Judgement j, bool follow)
    {
        var best = j.Best;
        string Ids(FittedSet s) => string.Join('+', s.Members.Select(m => c.Suspects[m].Id).Distinct().Order(StringComparer.Ordinal));
        var rivals = j.Sets.Select((s, i) => (Set: s, P: j.Probabilities[i])).Where(x => Ids(x.Set) != Ids(best) && x.P > 0.003).Take(MostRivals).ToArray();
        if (rivals.Length == 0) return [];
        var plain = ModelRuns.TraceOf(runs.Plain, o.Trace with { StopS = o.Trace.StopS ?? o.Trace.EndS });
        var all = FeatureReader.Of(plain).Where(f => !c.Features.Contains(f)).ToArray();
        var list = new List<ShortTest>();
        foreach (var (id, what, adds) in _tests)
        {
            if (id == "sensor-check")
            {
                double between = rivals.Sum(r => r.P * Separated(Offset(c, best) - Offset(c, r.Set), WarmReadingDoubtK)) / rivals.Sum(r => r.P);
                list.Add(new(id, what, between));
                continue;
            }
            var extra = all.Where(adds).ToArray();
            if (extra.Length == 0) continue;
            double[] expected = ComparisonMaker.Figures(plain, extra, null), ground = ComparisonMaker.Figures(ModelRuns.TraceOf(runs.Base, plain), extra, expected);
            double[] Predicted(FittedSet s)
            {
                var sum = new double[extra.Length];
                for (int m = 0; m < s.Members.Length; m++)
                {
                    if (c.Suspects[s.Members[m]].Model is not { } cause) continue;
                    var (a, b) = runs.Curve(cause.Id);
                    var (wa, wb) = c.Suspects[s.Members[m]].Weights(s.Strengths[m]);
                    foreach (var (course, w) in new[] { (a, wa), (b, wb) })
                    {
                        if (course is null) continue;
                        var f = ComparisonMaker.Figures(ModelRuns.TraceOf(course, plain), extra, ground);
                        for (int i = 0; i < sum.Length; i++) sum[i] += w * (f[i] - ground[i]);
                    }
                }
                return sum;
            }

            double[] mine = Predicted(best);
            double settles = 0, weight = 0;
            foreach (var (set, p) in rivals)
            {
                double[] theirs = Predicted(set);
                double far = 0;
                // the figures of one test share most of their doubt: the one that parts best counts
                for (int i = 0; i < extra.Length; i++)
                {
                    var (own, common) = ModelDoubt.Of(extra[i]);
                    far = Math.Max(far, Math.Abs(mine[i] - theirs[i]) / Math.Sqrt(own * own + common * common));
                }
                settles += p * Separated(far, 1);
                weight += p;
            }
            list.Add(new(id, what, settles / weight));
        }
        list.AddRange(Weighings(o, c, best, rivals));
        if (follow) list.AddRange(AlteredRuns.Of(runs, c, o.Trace, best, rivals));
        return [.. list.Where(t => t.Settles > 0.01).OrderByDescending(t => t.Settles)];
    }

    // what a balance under bottle or flask would add, where the record has no such figure
    private static IEnumerable<ShortTest> Weighings(Observation o, Comparison c, FittedSet best, IReadOnlyList<(FittedSet Set, double P)> rivals)
    {
        if (c.Batch is not { } model || o.Trace.Batch is not { } batch) yield break;
        foreach (var (figure, id, what) in new[] { (0, "weigh-feed", "put the bottle on a balance and weigh what is fed"), (1, "weigh-flask", "weigh the flask after the discharge"), (2, "weigh-boil-off", "weigh the filled flask twice, half an hour apart") })
        {
            if (c.Features.Any(f => f is { Kind: FeatureKind.Batch, IsEarlier: false } && f.At == figure)) continue;
            var plain = model.Predict(c.Plain, o.Trace, new BatchOddity());
            double doubt = model.Doubt(figure, plain, batch);
            double Of(FittedSet s) => model.Predict(c.Plain, o.Trace, BatchSuspects.OddityOf(s.Members.Select((m, i) => (c.Suspects[m].Id, s.Strengths[i]))))[figure] ?? 0;
            double mine = Of(best);
            yield return new ShortTest(id, what, rivals.Sum(r => r.P * Separated(mine - Of(r.Set), doubt)) / rivals.Sum(r => r.P));
        }
    }

    private static double Offset(Comparison c, FittedSet s) => s.Members.Select((m, i) => c.Suspects[m].Model is null ? s.Strengths[i] : 0).Sum();

    // share of doubt between two guesses that a reading takes away: one less the overlap of two normal distributions (Bhattacharyya)
    internal static double Separated(double difference, double sigma) => 1 - Math.Exp(-difference * difference / (8 * sigma * sigma));
}
