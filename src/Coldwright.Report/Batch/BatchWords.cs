using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Batch;

/// <summary>Grams, minutes and the schedule in words.</summary>
internal static class BatchWords
{
    public static string Grams(Readout r, double kg) => $"{r.Fixed(1e3 * kg, Math.Abs(kg) < 0.1 ? 1 : 0)} g";

    public static string Minutes(Readout r, double s) => s < 600 ? $"{r.Figures(s / 60, 2)} min" : s < 7200 ? $"{r.Fixed(s / 60, 0)} min" : $"{r.Fixed(s / 3600, 1)} h";

    /// <summary>What a builder does, step by step.</summary>
    public static IEnumerable<(string Start, string Action, string Until, string For)> Schedule(BatchReport report, Readout r)
    {
        var plan = report.Run.Plan;
        foreach (var s in report.Run.Schedule)
            yield return (Minutes(r, s.StartS), s.Action, (s.Action, s.Until) switch
            {
                ("feed", "full") => $"{Grams(r, report.Run.Series.LastOrDefault(m => m.TimeS <= s.EndS)?.VesselKg ?? 0)} are in it, at {r.Pressure(plan.FeedPressurePa)}",
                ("wait", "opening pressure") => $"the vessel is down to {r.Pressure(plan.OpeningPressurePa)}",
                ("wait", "cold end spent") => "the cold end has nothing left",
                ("discharge", "liquid gone") => "only vapour comes",
                _ => s.Until,
            }, Minutes(r, s.EndS - s.StartS));
    }

    /// <summary><c>one batch</c> or how many.</summary>
    public static string Batches(BatchReport report) => report.Run.Schedule.Count(s => s.Action == "discharge") is > 1 and var n ? $"{n} batches" : "one batch";

    /// <summary>The answer in two sentences.</summary>
    public static string Verdict(BatchReport report, Readout r)
    {
        var g = report.Run.Grams;
        var worst = GramRows.Of(report.Run).MaxBy(x => x.Kg);
        if (g.CollectedKg <= 1e-6) return $"Of {Grams(r, g.FedKg)} fed nothing ended in the flask. Most of it, {Grams(r, worst.Kg)}, {Verb(worst.Name)}.";
        return $"Of {Grams(r, g.FedKg)} fed {Grams(r, g.CollectedKg)} are in the flask, {r.Percent(g.CollectedKg / g.FedKg)}. The largest loss: {Grams(r, worst.Kg)} {Verb(worst.Name)}.";
    }

    private static string Verb(string name) => name == "in the feed lines" ? "stayed in the feed lines" : name;

    public static string Chosen(BatchReport report) => report.Result.Goal switch
    {
        BatchGoal.LitresPerHour => $"most litres per hour of {report.Result.Tried} schedules tried",
        BatchGoal.EnergyPerLitre => $"least electricity per litre of {report.Result.Tried} schedules tried",
        _ => "schedule as given",
    };
}
