using Coldwright.Web.Work;

namespace Coldwright.Web.Tests;

/// <summary>Long work: the same question once, answers kept by kind, stopped work not handed to the next who asks.</summary>
public sealed class JobBoardTests : IDisposable
{
    private readonly JobBoard _board = new();

    private static WorkQuestion About(string kind, int revision) => new(kind, "cubic", "", $"{revision}");

    [Fact]
    public async Task TheSameQuestionIsWorkedOnOnce()
    {
        var times = 0;
        object Work(Action<string> say, CancellationToken cancel) => Interlocked.Increment(ref times);
        var jobs = Enumerable.Range(0, 20).Select(_ => _board.Ask(About("batch", 1), Work)).ToArray();
        await Over(jobs);
        Assert.Single(jobs.Distinct());
        Assert.Equal(1, times);
        Assert.NotSame(jobs[0], _board.Ask(About("batch", 1) with { Details = "{}" }, Work));
    }

    [Fact]
    public async Task NewerAnswersPushOutOlderOnesOfTheirKindAlone()
    {
        var slow = _board.Ask(About("batch", 0), (_, _) => "slow");
        await Over(slow);
        for (var i = 0; i < 100; i++) await Over(_board.Ask(About("rate", i), (_, _) => new byte[10]));
        Assert.Contains(slow, _board.Jobs);
        Assert.InRange(_board.Jobs.Count, 4, 6);
        Assert.Contains(_board.Jobs, j => j.Question == About("rate", 99));
    }

    [Fact]
    public async Task WorkThatWasStoppedIsBegunAnewForTheNextWhoAsks()
    {
        object Patient(Action<string> say, CancellationToken cancel)
        {
            cancel.WaitHandle.WaitOne();
            return "the best so far";
        }
        var job = _board.Ask(About("blend", 1), Patient);
        job.Cancel();
        await Over(job);
        // Stopped while it waited there is nothing; stopped on its way there is what was found.
        Assert.True(job.State == JobState.Cancelled || job is { State: JobState.Done, IsShortened: true });
        var again = _board.Ask(About("blend", 1), (_, _) => "all of it");
        Assert.NotSame(job, again);
        await Over(again);
        Assert.Equal("all of it", again.Answer);
    }

    [Fact]
    public async Task LongWorkKeepsNoShortWorkWaitingAndIsOvertakenByAChange()
    {
        using var end = new ManualResetEventSlim();
        var running = _board.Ask(About("batch", 1), (_, cancel) => { end.Wait(cancel); return "done"; });
        while (running.State == JobState.Waiting) await Task.Delay(5, TestContext.Current.CancellationToken);
        var waiting = _board.Ask(About("cooldown", 1), (_, _) => "never begun");
        await Over(_board.Ask(About("rate", 1), (_, _) => "at once"));
        Assert.Equal(JobState.Waiting, waiting.State);
        var newer = _board.Ask(About("cooldown", 2), (_, _) => "of the files as they are");
        await Over(waiting);
        Assert.Equal((JobState.Cancelled, true), (waiting.State, waiting.Stage.Contains("changed", StringComparison.Ordinal)));
        // What has begun goes on: somebody may want to see it beside the newer one.
        Assert.False(running.IsOver);
        end.Set();
        await Over(running, newer);
        Assert.Equal(("done", "of the files as they are"), (running.Answer, newer.Answer));
    }

    [Fact]
    public async Task WhatGoesWrongIsSaidInWords()
    {
        var job = _board.Ask(About("size", 1), (_, _) => throw new ArgumentException("the wall is thinner than nothing (Parameter 'wall')"));
        await Over(job);
        Assert.Equal("it cannot be computed as described: the wall is thinner than nothing", Assert.Single(job.Problems));
    }

    public void Dispose() => _board.Dispose();

    private static async Task Over(params Job[] jobs)
    {
        while (!jobs.All(j => j.IsOver)) await Task.Delay(5, TestContext.Current.CancellationToken);
    }
}
