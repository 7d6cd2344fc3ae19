using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Numerics.Tests.Integration;

public sealed class EventTests(ITestOutputHelper output)
{
    private static readonly IntegrationOptions _options = new() { RelativeTolerance = 1e-8, AbsoluteTolerances = new double[] { 1e-10 } };

    // E. Torricelli: h' = -k sqrt(h), so sqrt(h) falls evenly.
    private static InitialValueProblem Tank(Func<double> valve) => new(1, (_, y, _, f) =>
    {
        if (y[0] < 0) return false;
        f[0] = -valve() * Math.Sqrt(y[0]);
        return true;
    });

    [Fact]
    public void A_draining_tank_stops_at_its_level()
    {
        var result = TestRun.Integrate(Tank(() => 0.2), 0, [1], 100, _options,
            [IntegrationEvent.WhenZero("low", (_, y, _) => y[0] - 0.04) with { Effect = EventEffect.Stop }]).OrThrow();
        Assert.Equal("low", result.StoppedBy);
        Assert.Equal(2 * (1 - 0.2) / 0.2, result.Time, 1e-7);
        Assert.Equal(0.04, result.State[0], 1e-10);
        Assert.Equal(result.Time, Assert.Single(result.Events).Time);
    }

    /// <summary>A valve closes halfway at one level, and again wide at a known time; sqrt(h) is a chain of straight lines.</summary>
    [Fact]
    public void Slopes_may_jump_at_events_of_state_and_time()
    {
        double valve = 0.2;
        var times = new List<double>();
        var result = TestRun.Integrate(Tank(() => valve), 0, [1], 9, _options,
        [
            IntegrationEvent.WhenZero("half", (_, y, _) => y[0] - 0.25) with { Direction = EventDirection.Falling, Happened = (_, _) => valve = 0.02 },
            IntegrationEvent.AtTime("wide", 7) with { Happened = (t, _) => { valve = 0.1; times.Add(t); } },
            IntegrationEvent.WhenZero("never", (_, y, _) => y[0] - 0.25) with { Direction = EventDirection.Rising },
        ]).OrThrow();
        Assert.Equal([7.0], times);
        Assert.Equal(["half", "wide"], result.Events.Select(e => e.Name));
        Assert.Equal(5, result.Events[0].Time, 1e-7);
        Assert.Equal(Math.Pow(0.5 - 0.01 * 2 - 0.05 * 2, 2), result.State[0], 1e-8);
        Assert.Equal(2, result.Statistics.Restarts);
    }

    /// <summary>A ball dropped from 10 m, 80 % of its speed kept: times of the impacts are a geometric series.</summary>
    [Fact]
    public void A_ball_bounces_at_the_exact_times()
    {
        var problem = new InitialValueProblem(2, (_, y, _, f) =>
        {
            (f[0], f[1]) = (y[1], -9.80665);
            return true;
        });
        var result = TestRun.Integrate(problem, 0, [10, 0], 8, _options,
            [IntegrationEvent.WhenZero("floor", (_, y, _) => y[0]) with { Direction = EventDirection.Falling, Change = (_, y, _) => y[1] *= -0.8 }]).OrThrow();
        double fall = Math.Sqrt(2 * 10 / 9.80665), time = fall, speed = 9.80665 * fall;
        foreach (var bounce in result.Events)
        {
            Assert.Equal(time, bounce.Time, 1e-8);
            speed *= 0.8;
            time += 2 * speed / 9.80665;
        }
        Assert.True(time > 8, $"an impact at {time} was missed");
        output.WriteLine($"{result.Events.Length} impacts, {result.Statistics.Steps} steps");
    }

    [Fact]
    public void Crossings_are_recorded_without_disturbing_the_run()
    {
        var problem = new InitialValueProblem(2, (_, y, _, f) =>
        {
            (f[0], f[1]) = (y[1], -y[0]);
            return true;
        });
        var plain = TestRun.Integrate(problem, 0, [0, 1], 20, _options).OrThrow();
        var seen = new List<double>();
        var watched = TestRun.Integrate(problem, 0, [0, 1], 20, _options,
        [
            IntegrationEvent.WhenZero("up", (_, y, _) => y[0]) with { Direction = EventDirection.Rising, Effect = EventEffect.Record, Happened = (t, _) => seen.Add(t) },
            IntegrationEvent.WhenZero("either", (_, y, _) => y[0] - 0.5) with { Effect = EventEffect.Record },
        ]).OrThrow();
        Assert.Equal(plain.State, watched.State);
        Assert.Equal(3, seen.Count);
        for (int k = 0; k < 3; k++) Assert.Equal(2 * Math.PI * (k + 1), seen[k], 1e-6);
        double[] half = [.. watched.Events.Where(e => e.Name == "either").Select(e => e.Time)];
        double[] exact = [.. Enumerable.Range(0, 4).SelectMany(k => new[] { Math.PI / 6 + 2 * Math.PI * k, 5 * Math.PI / 6 + 2 * Math.PI * k }).Where(t => t < 20)];
        Assert.Equal(exact.Length, half.Length);
        for (int k = 0; k < exact.Length; k++) Assert.Equal(exact[k], half[k], 1e-6);
        Assert.Equal(watched.Events.Select(e => e.Time).Order(), watched.Events.Select(e => e.Time));
    }

    [Fact]
    public void Events_at_the_same_moment_all_happen()
    {
        int count = 0;
        var result = TestRun.Integrate(Tank(() => 0.2), 0, [1], 6, _options,
        [
            IntegrationEvent.WhenZero("a", (_, y, _) => y[0] - 0.25) with { Happened = (_, _) => count++ },
            IntegrationEvent.WhenZero("b", (_, y, _) => 0.5 - 2 * y[0]) with { Happened = (_, _) => count++ },
        ]).OrThrow();
        Assert.Equal(2, count);
        Assert.Equal(2, result.Events.Length);
        Assert.Equal(Math.Pow(1 - 0.6, 2), result.State[0], 1e-8);
    }

    /// <summary>On a stiff problem too the event is found on the slow solution, and the observer's steps join without gaps.</summary>
    [Fact]
    public void Steps_cut_by_events_join()
    {
        var problem = new InitialValueProblem(1, (t, y, _, f) =>
        {
            f[0] = -1e5 * (y[0] - Math.Sin(t));
            return true;
        });
        double last = 0, value = 0;
        var point = new double[1];
        var result = TestRun.Integrate(problem, 0, [0], 10, _options, [IntegrationEvent.WhenZero("half", (_, y, _) => y[0] - 0.5)], step =>
        {
            Assert.Equal(last, step.Start);
            step.Evaluate(step.Start, point);
            Assert.Equal(value, point[0], 1e-13);
            step.Evaluate(step.End, point);
            (last, value) = (step.End, point[0]);
        }).OrThrow();
        Assert.Equal(4, result.Events.Length);
        // y lags behind sin t by cos t / 1e5.
        Assert.Equal(Math.Asin(0.5) + 1e-5, result.Events[0].Time, 1e-7);
        Assert.Equal(10, last);
    }

    [Fact]
    public void A_state_change_that_only_records_is_refused()
        => Assert.Contains("'bad' changes the state but only records", Assert.Throws<ArgumentException>(() => TestRun.Integrate(Tank(() => 1), 0, [1], 1, _options,
            [IntegrationEvent.WhenZero("bad", (_, y, _) => y[0]) with { Effect = EventEffect.Record, Change = (_, y, _) => y[0] = 1 }])).Message);
}
