using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Cooldown;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>Whole cooldowns of the examples.</summary>
public sealed class CooldownTests
{
    /// <summary>
    /// Nothing moves any more: the same balances as the closed loop's, on another grid and with tables of their own. Without product, as the fill valve is shut: the rating
    /// fits the coil's outside film to a product that condenses on it.
    /// </summary>
    [Theory]
    [InlineData("stops-pinch")]
    [InlineData("stops-leak")]
    [InlineData("stops-copper")]
    public void The_plateau_is_the_closed_loops_no_load_temperature(string example)
    {
        var folder = Coolers.Folder(example);
        var model = CubicModel.Create(folder.Machine!.Charge.Mixture.Names);
        var dry = folder.Layout! with { Feed = null };
        var operation = folder.Machine.Operation;
        var target = new LoopTarget(HeldPressure.Neither, operation.SolveFor, operation.HighPressurePa, operation.LowPressurePa, dry.Aftercooler.PressureDropPa);
        var solver = new ClosedSolver(HardwareReader.Read(folder.Machine, dry, model, TestContext.Current.CancellationToken), model, target, new RatingOptions(), TestContext.Current.CancellationToken);
        solver.Solve();
        var rest = (solver.Closer.Finish(solver.NoLoad!, double.NaN, 1e-6) ?? solver.NoLoad!).Pass;
        // what cooling it leaves there, along its own curve
        var near = solver.Curve.Select(c => c.Pass).Where(c => Math.Abs(c.LoadK - rest.LoadK) > 0.5).OrderBy(c => Math.Abs(c.LoadK - rest.LoadK)).First();
        double noLoadK = rest.LoadK - rest.NetCoolingW * (near.LoadK - rest.LoadK) / (near.NetCoolingW - rest.NetCoolingW);
        Assert.Equal(noLoadK, FollowedCoolers.Of(example).PlateauK, 0.2);
    }

    [Theory]
    [InlineData("workshop")]
    [InlineData("stops-leak")]
    [InlineData("stops-pinch")]
    [InlineData("stops-copper")]
    public void Energy_closes_and_the_split_sums_to_the_cooling(string example)
    {
        var r = FollowedCoolers.Of(example);
        Assert.True(r.EnergyError < 1e-6, $"{r.EnergyError}");
        var s = r.Series;
        for (int i = 0; i < s.TimeS.Count; i++) Assert.Equal(s.CoolingW[i], s.StoredHeatW[i] + s.LeakW[i] + s.LoadW[i], 1e-6 * Math.Max(1, s.CoolingW[i]));
        Assert.All(s.HighPressurePa.Zip(s.LowPressurePa), p => Assert.True(p.First > p.Second));
        Assert.Equal(1, r.StoppedBy.Sum(t => t.Share), 1e-9);
    }

    [Theory]
    [InlineData("stops-leak", "leak", "heat leak stops it")]
    [InlineData("stops-pinch", "exchanger", "recuperator stops it")]
    [InlineData("stops-copper", "stored-heat", "it crawls")]
    public void Three_coolers_that_do_not_get_there_are_told_apart(string example, string id, string words)
    {
        var r = FollowedCoolers.Of(example);
        Assert.Contains(words, r.Sentence.ToString(), StringComparison.Ordinal);
        var share = r.StoppedBy.Single(t => t.Id == id).Share;
        Assert.True(share > (id == "stored-heat" ? 0.2 : 0.45), $"{id} {share}");
        if (id == "stored-heat") Assert.True(r.EndK > r.PlateauK + 2 && r.EndRateKPerH < -1.5, $"{r.EndK} {r.EndRateKPerH}");
        else Assert.True(r.PlateauK > r.CondensingK, $"{r.PlateauK}");
    }

    [Fact]
    public void The_longer_the_steps_and_cells_the_further_off_but_not_far()
    {
        var folder = Coolers.Folder("stops-pinch");
        double Time(CooldownOptions o) => FollowedCoolers.Follow(folder, o with { UntilK = 200, Plateau = false, TimedK = [200] }).TimeToK.Single(t => t.TemperatureK == 200).TimeS!.Value;
        var o = FollowedCoolers.Plain;
        double usual = Time(o), fine = Time(o with { Tolerance = 1e-6 }), cells = Time(o with { Cells = 80, InsulationCells = 28 });
        Assert.Equal(1, usual / fine, 5e-3);
        Assert.Equal(1, usual / cells, 0.03);
    }

    [Fact]
    public void Half_the_copper_is_cold_sooner_and_half_the_leak_gets_colder()
    {
        var r = FollowedCoolers.Follow(Coolers.Folder("stops-pinch"), FollowedCoolers.Plain with { Halving = true });
        CooldownChange By(string id) => r.Changes.Single(c => c.Id == id);
        Assert.True(By("leak").PlateauChangeK < -2);
        Assert.True(By("exchanger").PlateauChangeK < By("leak").PlateauChangeK);
        Assert.Equal(0, By("load-mass").PlateauChangeK);
        Assert.True(By("load-mass").TimeAfterS < By("load-mass").TimeBeforeS);
        Assert.True(By("insulation-heat").TimeAfterS < By("insulation-heat").TimeBeforeS);
    }

    [Fact]
    public void A_warm_up_takes_days_and_ends_near_the_pressure_of_the_file()
    {
        var r = FollowedCoolers.Follow(Coolers.Folder("closed-loop"), FollowedCoolers.Plain with { WarmUp = true, FromK = 110 });
        Assert.True(r.IsWarmUp);
        Assert.Equal(110, r.Series.TemperatureK[0], 0.5);
        Assert.True(r.Series.TemperatureK.Zip(r.Series.TemperatureK.Skip(1)).All(p => p.Second >= p.First - 1e-6));
        Assert.True(r.Series.TimeS[^1] > 4 * 3600);
        Assert.True(r.EnergyError < 1e-6, $"{r.EnergyError}");
        // 4 K below the room: nearly the standstill pressure of the charge's weight
        Assert.Equal(Coolers.Folder("closed-loop").Machine!.Operation.StandstillPressurePa!.Value, r.Series.HighPressurePa[^1], 1e5);
    }

    [Fact]
    public void A_load_put_in_on_purpose_raises_the_plateau()
    {
        var r = FollowedCoolers.Follow(Coolers.Folder("workshop"), FollowedCoolers.Plain with { LoadW = 10 });
        Assert.True(r.PlateauK > FollowedCoolers.Of("workshop").PlateauK + 1, $"{r.PlateauK}");
        Assert.Equal(10, r.Series.LoadW[^1]);
    }

    [Fact]
    public void Values_outside_their_range_are_refused_by_name_and_limit()
    {
        var e = Assert.Throws<ArgumentException>(() => FollowedCoolers.Follow(Coolers.Folder("workshop"), FollowedCoolers.Plain with { FromK = 20 }));
        Assert.Contains("FromK is 20 K; it must be 60 to 330 K", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Cancelled_on_the_way_it_keeps_what_is_done()
    {
        using var cancel = new CancellationTokenSource();
        var folder = Coolers.Folder("stops-pinch");
        int heard = 0;
        var r = CooldownSolver.Run(folder.Machine!, folder.Layout!, FollowedCoolers.Plain with { Halving = true }, text => { if (text.Contains("min, load at 2", StringComparison.Ordinal) && ++heard == 3) cancel.Cancel(); }, cancel.Token);
        Assert.True(r.Stopped && !r.HasPlateau);
        Assert.True(r.Series.TimeS.Count > 5 && r.Series.TimeS[^1] < 3600, $"{r.Series.TimeS.Count}");
        Assert.Contains("Stopped on your wish", r.Sentence.ToString(), StringComparison.Ordinal);
        Assert.True(r.EnergyError < 1e-6 && r.Changes.Count == 0);
    }

    [Fact]
    public void Cancelled_before_anything_is_done_it_stops()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        var folder = Coolers.Folder("stops-pinch");
        Assert.ThrowsAny<OperationCanceledException>(() => CooldownSolver.Run(folder.Machine!, folder.Layout!, FollowedCoolers.Plain, null, cancel.Token));
    }
}
