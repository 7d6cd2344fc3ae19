using Coldwright.Fluids.Substances;
using Coldwright.Report.Batch;
using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Tests.Batch;

/// <summary>A made-up batch with every part that a report can show.</summary>
internal static class FakeBatch
{
    private static readonly BatchPlan _plan = new() { FeedPressurePa = 16e5, FillShare = 0.7, OpeningPressurePa = 8e5 };

    public static BatchRun Run { get; } = new()
    {
        Plan = _plan,
        Grams = new(0.2, 0.001, 0.019, 0.06, 0.015, 0.025, 0.08),
        Details = new(0.001, 0.0005, 0.0002, 0.18, 0.17),
        Joules = new([("feed", -12000), ("cold_end", -40000), ("vessel", 2000), ("collected", 50000)], 1e-15),
        Schedule = [new(0, "feed", "shell too hot", 900), new(900, "rest", "shell cooled", 1200), new(1200, "feed", "full", 2400), new(2400, "wait", "opening pressure", 2700), new(2700, "discharge", "liquid gone", 2880), new(2880, "stand", "weighed", 3000)],
        Series = [.. Enumerable.Range(0, 61).Select(i => new BatchMoment(50 * i, 1e5 + 15e5 * Math.Min(1, i / 10.0), 95 + 0.2 * i, i / 80.0, 0.003 * i, 9e5 - 5e3 * i, 295 + 0.5 * i, 290 - i, i > 54 ? 0.08 * (i - 54) / 6 : 0, 25))],
        DurationS = 3000, CollectedLPerH = 0.119, EnergyKWhPerL = 6.1, LoopJ = 2.1e6, FeedJ = 3e4, HottestShellK = 325, HottestDischargeK = 390, FlaskLossKgPerS = 2e-6,
    };

    public static BatchReport Full { get; } = new()
    {
        Machine = FakeRating.Working.Machine,
        Findings = FakeRating.Working.Findings,
        Result = new()
        {
            Run = Run, OtherGoal = Run with { Plan = _plan with { FillShare = 0.9 }, CollectedLPerH = 0.11, EnergyKWhPerL = 5.9 }, Goal = BatchGoal.LitresPerHour, Tried = 70,
            Waiting = [new(0, 15e5, 0.07, 0.11, 6.5, 0.003), new(300, 8e5, 0.08, 0.119, 6.1, 0.001), new(600, 6e5, 0.083, 0.115, 6.3, 0.001)],
            Impurities = new() { Feed = new Composition(["nitrogen", "oxygen"], [0.999, 0.001]), GlideK = 0.01, VapourThatStays = [0.9995, 0.0005], Collected = [0.9985, 0.0015], Oxygen = (0.0015, 0.008), Traces = [("water", 1e-6, 0.9e-6, 210), ("carbon-dioxide", 2e-6, 0, null)] },
            Coil = new(new([70, 300], [-5, 40], new bool[2]), new([70, 300], [0, 45], new bool[2]), [0, 0.5, 1], [24, 16, 9], 16),
            Feed = new(340, 325, 0.6, 900, 600, 4e-4, 390, 400, 0.7), Rating = FakeRating.Working.Result.Main, Substance = "nitrogen", VesselVolumeM3 = 0.4e-3, LiquidDensity = 806, Concerns = [], Warnings = ["a note"],
        },
    };

    /// <summary>Nothing came of it, and it was stopped.</summary>
    public static BatchReport Empty { get; } = Full with
    {
        Units = UnitSystem.Us,
        Result = Full.Result with
        {
            Run = Run with { Grams = new(0.01, 0.001, 0.009, 0, 0, 0, 0), Schedule = [], Series = [], DurationS = 5, CollectedLPerH = 0, EnergyKWhPerL = null, Stopped = true }, OtherGoal = null, Goal = null, Waiting = [], Feed = null, Stopped = true,
            Impurities = new() { Feed = new Composition(["nitrogen"], [1]), Collected = [1], Traces = [] },
        },
    };
}
