namespace Coldwright.Simulation.Batch;

/// <summary>The same batch opened after longer and longer waits: what each further minute of subcooling buys.</summary>
internal static class WaitingValue
{
    private const int Points = 9;
    private const double LeastSpanS = 600;

    /// <summary>Runs from no wait to twice the wait of the schedule; ends where waiting no longer changes the pressure, or when cancelled.</summary>
    public static IReadOnlyList<WaitValue> Of(BatchCooler cooler, BatchRun run, BatchOptions options, CancellationToken cancel)
    {
        double waited = run.Schedule.FirstOrDefault(s => s.Action == "wait") is { } wait ? wait.EndS - wait.StartS : 0, span = Math.Max(LeastSpanS, 2 * waited);
        var quick = options with { RelativeTolerance = Math.Max(options.RelativeTolerance, 1e-5), Batches = 1 };
        var found = new List<WaitValue>();
        for (int i = 0; i < Points && !cancel.IsCancellationRequested; i++)
        {
            // opened by the clock: the pressure asked for is never reached
            double s = span * i / (Points - 1);
            var plan = run.Plan with { OpeningPressurePa = i == 0 ? double.MaxValue : 0, LongestWaitS = Math.Max(s, 1e-3) };
            BatchRun one;
            try
            {
                one = new BatchRunner(cooler, plan, quick, keepSeries: true, cancel).Run();
            }
            catch (Numerics.SolveException)
            {
                // one point without an answer leaves the others standing
                continue;
            }
            if (one.Stopped) break;
            double opened = one.Schedule.FirstOrDefault(x => x.Action == "discharge") is { } discharge ? one.Series.Last(m => m.TimeS <= discharge.StartS).PressurePa : one.Series[^1].PressurePa;
            // the cold end was spent before the clock ran out: from here on waiting changes nothing
            double took = one.Schedule.FirstOrDefault(x => x.Action == "wait") is { } w ? w.EndS - w.StartS : 0;
            bool spent = i > 0 && took < 0.98 * s;
            if (spent) s = took;
            if (found.Count > 0 && s <= found[^1].WaitS) break;
            double gain = found.Count == 0 ? 0 : (one.Grams.CollectedKg - found[^1].CollectedKg) / ((s - found[^1].WaitS) / 60);
            found.Add(new(s, opened, one.Grams.CollectedKg, one.CollectedLPerH, one.EnergyKWhPerL, gain));
            if (spent) break;
        }
        // the gain is what the next minute brings, so it stands with the point before
        return [.. found.Select((w, i) => w with { GainKgPerMinute = i + 1 < found.Count ? found[i + 1].GainKgPerMinute : found.Count > 1 ? w.GainKgPerMinute : 0 })];
    }
}
