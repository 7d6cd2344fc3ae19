using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tests.Repair;

/// <summary>Every fault put into a log is found at its place, and a log without one shows none.</summary>
public sealed class FaultTests
{
    private const int Rows = 800;
    private const double StepS = 15;

    /// <summary>A cooldown with scatter: the hard background for every finder.</summary>
    private static List<(double S, double T)> Cooldown(int seed = 1, double sigma = 0.08)
    {
        var noise = Make.Noise(seed, sigma);
        return [.. Enumerable.Range(0, Rows).Select(i => (StepS * i, -172 + 190 * Math.Exp(-StepS * i / 2400) + noise()))];
    }

    private static RunRecord Read(IEnumerable<(double S, double T)> rows, string log = "{}") =>
        Make.Record(Make.OneChannel.Replace("log: {}", $"log: {log}", StringComparison.Ordinal), Make.Log(rows.Select(r => (Make.Iso(r.S), r.T))));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void AGoodLogShowsNoFault(int seed)
    {
        foreach (var sigma in new[] { 0, 0.003, 0.02, 0.1, 1.0 }) Assert.Empty(Read(Cooldown(seed, sigma)).Faults);
    }

    [Theory]
    [InlineData(0.002)]
    [InlineData(0.05)]
    [InlineData(0.5)]
    public void APlateauIsNotFrozen(double sigma)
    {
        var rows = Cooldown(7, sigma).Concat(Enumerable.Range(Rows, 2000).Select(i => (StepS * i, -171.0)).Zip(Enumerable.Repeat(Make.Noise(8, sigma), 2000), (r, n) => (r.Item1, r.Item2 + n())));
        Assert.Empty(Read(rows).Faults);
    }

    [Fact]
    public void AStartingCompressorIsNoSpike()
    {
        var noise = Make.Noise(3, 0.05);
        Assert.Empty(Read(Enumerable.Range(0, 300).Select(i => (StepS * i, (i < 150 ? 20.0 : 55.0) + noise()))).Faults);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void SpikesAreFoundAndOnlyThey(int width)
    {
        var rows = Cooldown();
        int[] places = [30, 200, 201 + 60, 500, 700];
        foreach (var p in places)
            for (var k = 0; k < width; k++) rows[p + k] = (rows[p + k].S, rows[p + k].T + (p % 2 == 0 ? 40 : -15));
        var channel = Read(rows).Channel("t")!;
        var found = Enumerable.Range(0, channel.Count).Where(i => channel.Flags[i] != SampleFlag.Good).ToArray();
        Assert.Equal(places.SelectMany(p => Enumerable.Range(p, width)), found);
        Assert.All(found, i => Assert.Equal(SampleFlag.Spike, channel.Flags[i]));
    }

    [Theory]
    [InlineData(100, 40)]
    [InlineData(600, 60)]
    [InlineData(740, 60)]
    public void AFrozenChannelIsFound(int first, int length)
    {
        var rows = Cooldown();
        for (var i = first; i < first + length && i < Rows; i++) rows[i] = (rows[i].S, rows[first].T);
        var record = Read(rows);
        var fault = Assert.Single(record.Faults);
        Assert.Equal(FaultKind.Frozen, fault.Kind);
        Assert.Equal(first * StepS, fault.FromS, StepS);
        Assert.Equal(length - 1, fault.Count, 1.0);
        Assert.Equal(SampleFlag.Good, record.Channel("t")!.Flags[first]);
        Assert.Equal(SampleFlag.Frozen, record.Channel("t")!.Flags[first + 5]);
    }

    /// <summary>Quieter than the logger's step, cooling: the channel that comes back has to catch up.</summary>
    [Fact]
    public void AQuietFrozenChannelIsFound()
    {
        var rows = Cooldown(1, 0);
        for (var i = 100; i < 160; i++) rows[i] = (rows[i].S, rows[100].T);
        Assert.Equal(FaultKind.Frozen, Assert.Single(Read(rows).Faults).Kind);
    }

    /// <summary>A logger of whole kelvins on a plateau that drifts by two: it stands still by nature.</summary>
    [Fact]
    public void APlateauInWholeKelvinsIsNotFrozen()
    {
        var noise = Make.Noise(5, 0.3);
        var course = Cooldown().Concat(Enumerable.Range(Rows, 1000).Select(i => (S: StepS * i, T: -171 + 0.002 * (i - Rows) + 0.3 * noise())));
        Assert.Empty(Make.Record(Make.OneChannel, "time,T\n" + string.Concat(course.Select(r => FormattableString.Invariant($"{Make.Iso(r.S)},{r.T:0}\n")))).Faults);
    }

    /// <summary>A pressure that stands still, or a plateau, and is then let go is no frozen channel.</summary>
    [Theory]
    [InlineData(-30.0)]
    [InlineData(25.0)]
    public void WhatIsHeldAndLetGoIsNotFrozen(double then)
    {
        var rows = Enumerable.Range(0, 400).Select(i => (StepS * i, i < 60 ? 2.0 * i : i < 300 ? 120.0 : 120.0 + then * (i - 299) / 20));
        Assert.Empty(Read(rows).Faults);
    }

    [Fact]
    public void AGapStaysAGap()
    {
        var rows = Cooldown();
        rows.RemoveRange(200, 60);
        var record = Read(rows);
        var fault = Assert.Single(record.Faults);
        Assert.Equal((FaultKind.Gap, 199 * StepS, 260 * StepS), (fault.Kind, fault.FromS, fault.ToS));
        Assert.Equal(260 * StepS, record.Channel("t")!.TimesS[200], 1e-6);
    }

    /// <summary>A clock set forward by an hour while it cools: the readings go on as if nothing had passed, so the rows are moved back.</summary>
    [Fact]
    public void AClockSetForwardIsToldFromAGap()
    {
        var rows = Cooldown().Select((r, i) => (i >= 120 ? r.S + 3600 : r.S, r.T)).ToArray();
        var record = Read(rows);
        var fault = Assert.Single(record.Faults);
        Assert.Equal(FaultKind.ClockJump, fault.Kind);
        Assert.Equal(StepS * 400, record.Channel("t")!.TimesS[400], 1e-6);
        Assert.Equal(FaultKind.Gap, Assert.Single(Read(rows, "{forward-jumps: gap}").Faults).Kind);
    }

    [Fact]
    public void OnAPlateauAJumpForwardCountsAsAGapUnlessSaid()
    {
        var noise = Make.Noise(5, 0.05);
        var rows = Enumerable.Range(0, 300).Select(i => (i >= 150 ? StepS * i + 3600 : StepS * i, -170 + noise())).ToArray();
        Assert.Equal(FaultKind.Gap, Assert.Single(Read(rows).Faults).Kind);
        Assert.Equal(FaultKind.ClockJump, Assert.Single(Read(rows, "{forward-jumps: clock}").Faults).Kind);
    }

    [Fact]
    public void AClockSetBackIsCarriedOn()
    {
        var record = Read(Cooldown().Select((r, i) => (i >= 300 ? r.S - 1000 : r.S, r.T)));
        var fault = Assert.Single(record.Faults);
        Assert.Equal((FaultKind.ClockJump, 302), (fault.Kind, fault.Line));
        for (var i = 0; i < Rows; i++) Assert.Equal(StepS * i, record.Channel("t")!.TimesS[i], 1e-6);
    }

    [Fact]
    public void RowsWrittenTwiceAreLeftOut()
    {
        var rows = Cooldown();
        rows.InsertRange(300, rows.GetRange(280, 20));
        rows.Insert(100, rows[99]);
        var record = Read(rows);
        var fault = Assert.Single(record.Faults);
        Assert.Equal((FaultKind.Repeat, 21), (fault.Kind, fault.Count));
        Assert.Equal(Rows, record.Channel("t")!.Count);
    }

    [Fact]
    public void OneRowOutOfOrderIsLeftOut()
    {
        var rows = Cooldown();
        rows.Insert(300, (rows[250].S, 12.34));
        var record = Read(rows);
        Assert.Equal(FaultKind.OddRow, Assert.Single(record.Faults).Kind);
        Assert.Equal(Rows, record.Channel("t")!.Count);
    }

    [Fact]
    public void ACoarseClockIsSpread()
    {
        var noise = Make.Noise(5, 0.05);
        var record = Read(Enumerable.Range(0, 400).Select(i => (Math.Floor(i / 4.0), -100 - 0.05 * i + noise())));
        Assert.Equal(FaultKind.CoarseClock, Assert.Single(record.Faults).Kind);
        for (var i = 0; i < 400; i++) Assert.Equal(0.25 * i, record.Channel("t")!.TimesS[i], 1e-6);
    }

    /// <summary>All at once, each found once; the good samples are those of the undisturbed log.</summary>
    [Fact]
    public void FaultsDoNotHideOneAnother()
    {
        var rows = Cooldown();
        rows[50] = (rows[50].S, 400);
        for (var i = 300; i < 345; i++) rows[i] = (rows[i].S, rows[300].T);
        rows.InsertRange(500, rows.GetRange(490, 10));
        rows.RemoveRange(600, 80);
        var record = Read(rows);
        Assert.Equal([FaultKind.Spike, FaultKind.Frozen, FaultKind.Gap, FaultKind.Repeat], record.Faults.Select(f => f.Kind).Order());
        var clean = Cooldown();
        var channel = record.Channel("t")!;
        for (var i = 0; i < channel.Count; i++)
            if (channel.Flags[i] == SampleFlag.Good) Assert.Equal(clean[(int)Math.Round(channel.TimesS[i] / StepS)].T + 273.15, channel.Values[i], 0.0051);
    }
}
