using Coldwright.Design.Sizing;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;
using Xunit;
using static Coldwright.Design.Tests.Sizing.Sized;

namespace Coldwright.Design.Tests.Sizing;

/// <summary>Each size is the inverse of the part's own model, and keeps published ratings.</summary>
public sealed class SizingTests
{
    private const double PsiPa = 6894.757293168;
    private static readonly RatingOptions _cubic = new() { Model = RatingModel.Cubic };

    [Fact]
    public void ARecuperatorAsSizedGivesWhatWasAskedFor()
    {
        const double asked = 60;
        var result = Size("recuperator", new("cooling_W", asked));
        var best = result.Best!;
        Assert.Equal(asked, best.Figure("cooling_left_W"), 0.015 * asked);
        var (high, low) = (best.Stock.Split(" in ACR in ")[0], best.Stock.Split(" in ACR in ")[1].Replace(" in ACR", "", StringComparison.Ordinal));
        var machine = With<RecuperatorPart>(r => new RecuperatorPart
        {
            Name = r.Name, Arrangement = RecuperatorArrangement.TubeInTube, HighTube = Tube(high), LowTube = Tube(low), LengthM = best.Figure("length_m"), CoilDiameterM = r.CoilDiameterM, LowSidePressureDropPa = best.Figure("low_drop_Pa"),
        });
        var rated = Rate(machine, "recuperator");
        Assert.Equal(best.Figure("conductance_W_K"), Figure(rated, "conductance_W_K"), 0.03 * best.Figure("conductance_W_K"));
        var loop = new SizeContext(machine, Layout(machine), null, _cubic, null, TestContext.Current.CancellationToken).Loop;
        double cooling = loop.Loop.MolarFlow * (loop.Loop.Points.Single(p => p.Name == "coil outlet").MolarEnthalpy - loop.Loop.Points.Single(p => p.Name == "throttle outlet").MolarEnthalpy);
        Assert.Equal(asked, cooling, 0.03 * asked);
    }

    private static Tube Tube(string inches)
    {
        var row = Materials.Tubes.TubeTable.Sizes.Single(s => s.Series == "ACR" && s.Size == inches);
        return new Tube(row.Text, row.OutsideDiameterM, row.WallM);
    }

    [Fact]
    public void MoreConductanceIsMoreTube()
    {
        double Length(double ua) => Size("recuperator", new("conductance_W_K", ua)).Options.First(o => o.Stock == "1/4 in ACR in 1/2 in ACR").Figure("length_m");
        Assert.True(Length(60) < Length(90));
    }

    [Fact]
    public void MoreThanAnEndlessExchangerGivesIsRefused() =>
        Assert.Contains("endless", Assert.Throws<Numerics.SolveException>(() => Size("recuperator", new("cooling_W", 5000))).Report.Advice, StringComparison.Ordinal);

    /// <summary>A capillary of the length found passes the flow asked for.</summary>
    [Fact]
    public void ACapillaryAsSizedPassesTheFlow()
    {
        var best = Size("throttle", new("mass_flow_kg_s", 2e-3)).Best!;
        double bore = double.Parse(best.Stock.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture) * 1e-3;
        var rated = Rate(With<ThrottlePart>(t => t with { Capillary = t.Capillary! with { BoreM = bore, LengthM = best.Figure("length_m") } }), "throttle");
        Assert.Equal(2e-3, Figure(rated, "mass_flow_kg_s"), 2e-3 * 2e-3);
        Assert.True(best.Figure("longer_flow_kg_s") < 2e-3);
    }

    [Fact]
    public void ACoilAsSizedTakesUpTheRatingsHeat()
    {
        var best = Size("coil").Best!;
        var coil = Examples.Read("workshop").Layout!.Coil;
        var rated = Rate(With<CoilPart>(p => p with { Tube = new Tube(best.Stock, coil.Tube!.OutsideDiameterM, coil.Tube.WallM), LengthM = best.Figure("length_m"), Turns = null }), "coil");
        Assert.Equal("1/4 in ACR", best.Stock);
        Assert.Equal(Figure(rated, "rating_heat_W"), Figure(rated, "heat_W"), 2e-3 * Figure(rated, "heat_W"));
    }

    /// <summary>The box's own insulation comes out as thick as the file says it is.</summary>
    [Fact]
    public void ABoxOfItsOwnLeakIsItself()
    {
        var foam = Size("cold-box").Options.Single(o => o.Stock == "polyurethane-foam");
        Assert.Equal(0.18, foam.Figure("wall_m"), 1e-5);
        double leak = foam.Figure("leak_W");
        Assert.True(Size("cold-box", new("leak_W", 1.1 * leak)).Options.Single(o => o.Stock == "polyurethane-foam").Figure("wall_m") < 0.18);
    }

    /// <summary>Pressures that annealed copper tube is allowed at up to 100 °F: Copper Development Association, Copper Tube Handbook, type M 2 in 299 and 3 in 253 psi.</summary>
    [Theory]
    [InlineData("2 in type M", 299)]
    [InlineData("3 in type M", 253)]
    public void APipeIsAllowedItsPublishedPressure(string stock, double psi)
    {
        var folder = Examples.Read("workshop");
        var option = Size("vessel").Options.Single(o => o.Stock == stock);
        Assert.Equal(psi, (option.Figure("allowed_Pa") - folder.Machine!.Room.PressurePa) / PsiPa, 1.5);
    }

    /// <summary>Walls and ends by ASME VIII-1 UG-27, UG-32, UG-34 with 6000 psi: of a bore of 50 mm at 20 bar hemisphere 0.607, ellipsoid 1.215, wall 1.245, flat 6.32 mm; they go in proportion to the bore.</summary>
    [Fact]
    public void EndsGoWithTheBoreAsTheCodeSays()
    {
        var folder = Examples.Read("workshop");
        double room = folder.Machine!.Room.PressurePa;
        var machine = With<ReliefPart>(r => r with { SetPressurePa = room + 20e5 });
        var option = Size("vessel", null, machine).Options.Single(o => o.Stock == "2-1/8 in ACR");
        double ratio = (2.125 - 2 * 0.070) * 25.4 / 50;
        Assert.Equal(0.607e-3 * ratio, option.Figure("hemisphere_m"), 1e-6);
        Assert.Equal(1.215e-3 * ratio, option.Figure("ellipsoid_m"), 1e-6);
        Assert.Equal(1.245e-3 * ratio, option.Figure("wall_needed_m"), 1e-6);
        Assert.Equal(6.32e-3 * ratio, option.Figure("flat_cap_m"), 1e-5);
    }

    [Fact]
    public void AVesselHoldsItsVolumeAndItsPressure()
    {
        var result = Size("vessel", new("volume_m3", 0.8e-3));
        Assert.All(result.Options.Where(o => o.Fits), o =>
        {
            double bore = Bore(o.Stock);
            Assert.Equal(0.8e-3, Math.PI / 4 * bore * bore * o.Figure("length_m"), 1e-9);
            Assert.True(o.Figure("allowed_Pa") >= result.Options[0].Figure("water_test_Pa") / 1.43 - 1e5);
        });
        static double Bore(string stock) => Materials.Tubes.TubeTable.Sizes.Where(s => s.Text == stock).Select(s => s.OutsideDiameterM - 2 * s.WallM).Single();
    }

    /// <summary>Common practice: a receiver of 38 L in a room of 25 °C gives 260 to 270 g of nitrogen while it falls from 9.3 to 3.1 bar absolute.</summary>
    [Fact]
    public void AReceiverGivesWhatBuildersWeigh()
    {
        var machine = With<FeedPart>(f => f with { Receiver = new ReceiverDescription { VolumeM3 = 0.038, PressurePa = 9.3e5, LowestPressurePa = 3.1e5 } });
        machine = machine with { Room = machine.Room with { TemperatureK = 298.15 } };
        var result = Size("bottle", new("content_kg", 0.265), machine);
        Assert.InRange(result.Options.Single(o => o.Stock == "38 L").Figure("gives_kg"), 0.260, 0.270);
    }

    /// <summary>A device is sized by the rule that a finished machine is held against.</summary>
    [Theory]
    [InlineData("vessel-relief")]
    [InlineData("loop-relief")]
    public void ARelievingBoreIsThatOfTheSafetyRule(string name)
    {
        var result = Size(name);
        var machine = With<ReliefPart>(r => r with { BoreM = 0.9 * result.Target.Value!.Value });
        machine = machine with { Lines = [.. machine.Lines.Select(l => l.To == name ? l with { Tube = new Tube("wide", 0.03, 0.001) } : l)] };
        var context = new SizeContext(machine, Layout(machine), null, _cubic, null, TestContext.Current.CancellationToken);
        var findings = SafetyReview.Of(machine, CautionInputs.Of(machine, null, context.Loop), TestContext.Current.CancellationToken).Findings;
        Assert.Contains(findings, f => f.Part == name && f.Id is "relief-too-small" or "relief-small-in-fire");
    }

    [Fact]
    public void ABufferBringsTheLoopToRestWhereAsked()
    {
        var result = Size("buffer", new("standstill_Pa", 16e5));
        var best = result.Best!;
        Assert.True(best.Figure("standstill_Pa") <= 16e5);
        Assert.True(result.Options.Where(o => !o.Fits).All(o => o.Figure("standstill_Pa") > 16e5));
    }

    [Fact]
    public void PricesMakeTheCheapestFirstAndAddUp()
    {
        var result = Size("aftercooler");
        var fits = result.Options.Where(o => o.Fits).ToArray();
        Assert.Equal(fits.OrderBy(o => o.Cost).Select(o => o.Stock), fits.Select(o => o.Stock));
        Assert.Equal(2.90 * fits.Single(o => o.Stock == "1/4 in ACR").Figure("length_m"), fits.Single(o => o.Stock == "1/4 in ACR").Cost!.Value, 1e-9);
    }

    /// <summary>Every part of the example that can be sized is: with a method, a source, and something that fits.</summary>
    [Fact]
    public void EveryPartThatCanBeSizedIs()
    {
        foreach (var part in PartSizer.Sizeable(Examples.Read("workshop").Machine!).Except(["fill-valve", "recuperator", "precooler", "drain-valve"]))
        {
            var result = Size(part);
            Assert.True(result.Best is not null && result.Sources.Count > 0 && result.Method.Length > 0, part);
            Assert.All(result.Options.SelectMany(o => o.Figures), f => Assert.True(f.Value is not { } v || double.IsFinite(v), $"{part}: {f.Id}"));
        }
    }

    [Fact]
    public void NonsenseIsRefused()
    {
        Assert.Contains("no part", Assert.Throws<ArgumentException>(() => Size("fridge")).Message, StringComparison.Ordinal);
        Assert.Contains("not sized", Assert.Throws<ArgumentException>(() => Size("warm-exchanger")).Message, StringComparison.Ordinal);
        Assert.Contains("drain valve", Assert.Throws<ArgumentException>(() => Size("fill-valve")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Size("vessel", new("leak_W", 3)));
    }
}
