using Coldwright.Design.Charging;
using Coldwright.Machine.Description;
using Coldwright.Simulation.Rating;
using Xunit;
using static Coldwright.Design.Tests.Sizing.Sized;

namespace Coldwright.Design.Tests.Sizing;

/// <summary>Precooler, oil separator, buffer, drain and its line: each sized, then rated.</summary>
public sealed class WarmPartTests
{
    /// <summary>The conductance found brings the mixture where it was asked for, and the tubes take up the heat that the loop takes.</summary>
    [Fact]
    public void APrecoolerAsSizedBringsTheMixtureToItsTemperature()
    {
        const double outletK = 237.15;
        var result = Size("precooler", new("outlet_K", outletK));
        var best = result.Best!;
        var machine = With<PrecoolerPart>(p => p with { OutletTemperatureK = outletK, Loop = p.Loop! with { EvaporatorConductanceWPerK = best.Figure("conductance_W_K") } });
        // the load of the rating is that of the sizing when the file's outlet is the same
        var again = Size("precooler", null, machine).Best!;
        var rated = Rate(machine with { Parts = [.. machine.Parts.Select(p => p is PrecoolerPart q ? q with { Loop = q.Loop! with { EvaporatorConductanceWPerK = again.Figure("conductance_W_K") } } : p)] }, "precooler");
        Assert.Equal(outletK, Figure(rated, "mixture_outlet_K"), 0.05);
        Assert.Equal(Figure(rated, "cooling_W"), again.Figure("duty_W"), 2e-3 * again.Figure("duty_W"));
        Assert.Equal(outletK, again.Figure("outlet_K"), 0.3);
        Assert.All(result.Options.Where(o => o.Fits), o => Assert.True(o.Cost > 0 == o.Cut.All(c => c.PricePerUnit is not null)));
        Assert.InRange(best.Figure("charge_kg"), 0.01, 0.2);
        Assert.Contains(best.Cut, c => c.What.StartsWith("capillary", StringComparison.Ordinal));
    }

    /// <summary>With the capillary found in place of the valve the loop brings the mixture to nearly the same temperature.</summary>
    [Fact]
    public void ThePrecoolersCapillaryPassesItsFlow()
    {
        var best = Size("precooler").Best!;
        var bore = double.Parse(best.Cut.Single(c => c.What.StartsWith("capillary", StringComparison.Ordinal)).What.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
        var machine = With<PrecoolerPart>(p => p with { Loop = p.Loop! with { EvaporatorConductanceWPerK = best.Figure("conductance_W_K"), SuperheatK = null, Capillary = new CapillaryDescription { BoreM = 1e-3 * bore, LengthM = best.Figure("capillary_m") } } });
        var rated = Rate(machine, "precooler");
        Assert.Equal(best.Figure("refrigerant_kg_s"), Figure(rated, "mass_flow_kg_s"), 0.03 * best.Figure("refrigerant_kg_s"));
        Assert.Equal(best.Figure("outlet_K"), Figure(rated, "mixture_outlet_K"), 2.0);
    }

    [Fact]
    public void APrecoolerThatIsTooSmallIsRefused() =>
        Assert.Contains("too small", Assert.Throws<Numerics.SolveException>(() => Size("precooler", new("outlet_K", 200))).Report.Advice, StringComparison.Ordinal);

    /// <summary>The sump found fills in the time asked for, and the gas in the pipe is slower than drops fall.</summary>
    [Fact]
    public void ASeparatorAsSizedFillsInTheTimeAskedFor()
    {
        var result = Size("compressor", new("interval_s", 1500));
        var best = result.Best!;
        var machine = With<CompressorPart>(p => p with { Oil = p.Oil! with { SumpVolumeM3 = best.Figure("sump_m3") } });
        Assert.Equal(1500, Figure(Rate(machine, "compressor"), "interval_s"), 1e-3 * 1500);
        Assert.All(result.Options.Where(o => o.Fits), o => Assert.True(o.Figure("gas_speed_m_s") <= o.Figure("speed_allowed_m_s") && o.Figure("length_m") > 0.08));
        Assert.Contains(result.Options, o => !o.Fits && !o.WhyNot.IsEmpty);
    }

    /// <summary>The buffer found brings the loop to rest where the filling recipe with that buffer says it stands.</summary>
    [Fact]
    public void ABufferAsSizedStandsWhereTheRecipeSays()
    {
        var best = Size("buffer", new("standstill_Pa", 16e5)).Best!;
        var folder = Examples.Read("workshop");
        var machine = With<BufferPart>(b => b with { VolumeM3 = best.Figure("volume_m3") });
        var plan = ChargePlanner.Plan(machine, Layout(machine), folder.Shop, new ChargeOptions { Circulation = false }, new RatingOptions { Model = RatingModel.Cubic }, null, TestContext.Current.CancellationToken);
        Assert.Equal(plan.Recipe.StandstillPa, best.Figure("standstill_Pa"), 10.0);
        Assert.True(plan.Recipe.StandstillPa <= 16e5);
    }

    /// <summary>Each line has the valve opening that empties the vessel in the time asked for; that in which least boils comes first.</summary>
    [Fact]
    public void ADrainAndItsLineEmptyTheVesselInTheTimeAskedFor()
    {
        var result = Size("drain-valve", new("discharge_s", 240));
        Assert.True(result.Options.Count(o => o.Fits) > 2);
        Assert.All(result.Options.Where(o => o.Fits), o => Assert.Equal(240, o.Figure("discharge_s"), 1.0));
        Assert.Equal(result.Options.Where(o => o.Fits).Min(o => o.Figure("line_boil_kg")), result.Best!.Figure("line_boil_kg"));
        Assert.Equal(0.3, result.Best.Cut.Single().Amount, 1e-9);
    }
}
