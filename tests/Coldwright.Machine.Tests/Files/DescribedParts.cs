using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Recuperation;
using Coldwright.Numerics;

namespace Coldwright.Machine.Tests.Files;

/// <summary>What a part is, read in SI; and what is asked for by name when it was left out.</summary>
public sealed class DescribedParts
{
    private const string Swept = "    displacement: 10.8 cm3\n    speed: 2850 rpm\n";
    private const string Efficiencies = "    isentropic-efficiency: {2: 0.60, 4: 0.58, 6: 0.54, 10: 0.45}\n    motor-efficiency: 0.82\n";
    private const string Arrangement = "    arrangement: tube-in-tube\n    high-side: inner\n    coil-diameter: 160 mm                     # two layers of turns\n";

    private static LoopLayout Workshop { get; } = Layout(Examples.Workshop);

    [Fact]
    public void TheWorkshopsCompressor()
    {
        var c = Workshop.Compressor;
        Assert.Equal(new NameplateDescription { Rating = NameplateRating.Appliance, CapacityW = 2700, PowerW = 790, Refrigerant = "R410A" }, c.Nameplate);
        Assert.Equal((50.0, 2, ShellCoolingWord.Fan), (c.SupplyFrequencyHz, c.Poles, c.ShellCooling));
        Assert.Equal(0.015, c.Oil!.Circulation!.Value, 1e-12);
        Assert.Equal(0.96, c.Oil.SeparatorEfficiency!.Value, 1e-12);
        Assert.Equal(120e-6, c.Oil.SumpVolumeM3, 1e-12);
        Assert.Equal(0.0012, c.Oil.ReturnBoreM, 1e-12);
        Assert.Null(c.Oil.DensityKgPerM3);
        Assert.True(c.HasEfficiencies);
    }

    [Fact]
    public void TheWorkshopsOtherParts()
    {
        var loop = Workshop.Precooler!.Loop!;
        Assert.Equal(("propane", CompressorType.Reciprocating, 65.0, 30.0, 6.0, 4.0), (loop.Refrigerant, loop.Type, loop.CondenserConductanceWPerK, loop.EvaporatorConductanceWPerK, loop.SuperheatK, loop.SubcoolingK));
        Assert.Equal(550.0 / 3600, loop.CondenserAirFlowM3PerS!.Value, 1e-12);
        Assert.Equal(3.8e-6, loop.DisplacementM3!.Value, 1e-12);
        var r = Workshop.Recuperator;
        Assert.Equal((RecuperatorArrangement.TubeInTube, HighSide.Inner, 1), (r.Arrangement, r.HighSide, r.Tubes));
        Assert.Equal(0.16, r.CoilDiameterM!.Value, 1e-12);
        Assert.IsType<TubeInTubeGeometry>(PartGeometry.Of(r));
        Assert.Equal((0.0009, 1.7, 0.05), (Math.Round(Workshop.Throttle.Capillary!.BoreM, 12), Workshop.Throttle.Capillary.LengthM, Workshop.Throttle.Capillary.CoilDiameterM!.Value));
        Assert.Equal((27.0, CoilPlace.Inside), (Workshop.Coil.Turns, Workshop.Coil.Place));
        Assert.Equal((CapShape.Domed, "copper-dhp"), (Workshop.Vessel!.Caps, Workshop.Vessel.WallMaterial));
        var machine = MachineFolderReader.ReadTexts(Examples.Workshop).Machine!;
        Assert.Equal(15e5 + 100800, machine.Operation.StandstillPressurePa!.Value, 1e-6);
        Assert.Equal(0.45, machine.Room.RelativeHumidity!.Value, 1e-12);
    }

    [Fact]
    public void TheWorkshopsBufferHangsBesideTheLoop()
    {
        var b = Workshop.Buffer!;
        Assert.Equal((0.01, 1.2), (b.VolumeM3, b.BleedLengthM));
        Assert.Equal(19e5 + 100800, b.OpeningPressurePa, 1e-6);
        Assert.Equal(20.5e5 + 100800, b.FullyOpenPressurePa!.Value, 1e-6);
        Assert.Null(b.ClosingPressurePa);
        Assert.DoesNotContain(Workshop.LoopPath, s => s.Part is BufferPart);
    }

    [Fact]
    public void ANameplateStandsForDisplacementSpeedAndEfficiencies()
    {
        var c = Layout(Examples.With(Swept, "").Replace(Efficiencies, "", StringComparison.Ordinal)).Compressor;
        Assert.Null(c.DisplacementM3);
        Assert.False(c.HasEfficiencies);
        AssertAsks(() => c.SweptM3PerS, "'compressor'", "'displacement'");
        AssertAsks(() => c.MotorEfficiency, "'compressor'", "'motor-efficiency'");
        AssertAsks(() => c.IsentropicEfficiency, "'compressor'", "'isentropic-efficiency'");
        // Printing a part must not ask for what it lacks.
        Assert.Equal("compressor (CompressorPart)", c.ToString());
    }

    [Fact]
    public void ARatingSheet()
    {
        const string sheet = """
                units: ip
                refrigerant: R22
                mass-flow: [1, 2.5, -3e-2, 4, 5, 6, 7, 8, 9, 10]
                power: [10, 9, 8, 7, 6, 5, 4, 3, 2, 1]
                lowest-evaporating: -10 °F
                highest-evaporating: 55 °F
                lowest-condensing: 80 °F
                highest-condensing: 150 °F
                superheat: 11 K

            """;
        var read = Layout(Examples.With("    nameplate: {rating: appliance, capacity: 2.7 kW, power: 790 W, refrigerant: R410A}", "    rating-sheet:\n" + string.Concat(sheet.Split('\n').Select(l => l.Length == 0 ? "" : "      " + l.Trim() + "\n")))).Compressor.RatingSheet!;
        Assert.True(read.Imperial);
        Assert.Equal([1, 2.5, -0.03, 4, 5, 6, 7, 8, 9, 10], read.MassFlow);
        Assert.Equal(1, read.Power[9]);
        Assert.Equal((-10 + 459.67) / 1.8, read.Evaporating.LowK, 1e-9);
        Assert.Equal((150 + 459.67) / 1.8, read.Condensing.HighK, 1e-9);
        Assert.Equal(11, read.SuperheatK!.Value, 1e-12);
        Assert.Null(read.ReturnGasK);
    }

    [Fact]
    public void TubesStandForAConductance()
    {
        var r = Layout(Examples.With("    conductance: 100 W/K\n", "")).Recuperator;
        Assert.Null(r.GivenConductanceWPerK);
        AssertAsks(() => r.ConductanceWPerK, "'recuperator' (line", "'conductance'");
        Assert.Equal(100, (r with { ConductanceWPerK = 100 }).ConductanceWPerK);
    }

    [Fact]
    public void TubesSideBySideAndSeveralInOne()
    {
        var side = Layout(Examples.With(Arrangement, "    arrangement: side-by-side\n    bond-width: 4 mm\n    bond-thickness: 0.2 mm\n    roughness: 2 µm\n    insulation-conductance: 0.12 W/(m K)\n")).Recuperator;
        var shape = Assert.IsType<SideBySideGeometry>(PartGeometry.Of(side));
        Assert.Equal((0.004, 0.0002, 2e-6), (shape.BondWidthM, Math.Round(shape.BondThicknessM, 12), shape.RoughnessM));
        Assert.Equal(0.12, side.InsulationConductanceWPerMK!.Value, 1e-12);

        var several = Layout(Examples.With(Arrangement, "    arrangement: tubes-in-tube\n    tubes: 3\n").Replace("high-tube: 3/8 in ACR", "high-tube: 1/4 in ACR", StringComparison.Ordinal)).Recuperator;
        Assert.Equal(3, Assert.IsType<TubeInTubeGeometry>(PartGeometry.Of(several)).TubeCount);

        var outer = Layout(Examples.With(Arrangement, "    arrangement: tube-in-tube\n    high-side: outer\n").Replace("high-tube: 3/8 in ACR", "high-tube: 7/8 in ACR", StringComparison.Ordinal)).Recuperator;
        Assert.False(Assert.IsType<TubeInTubeGeometry>(PartGeometry.Of(outer)).HotInside);
        Assert.Null(PartGeometry.Of(outer with { Arrangement = null }));
    }

    [Fact]
    public void ATubeStandsForACoilsDifference()
    {
        var coil = Layout(Examples.With("    difference: 2.5 K\n", "")).Coil;
        Assert.Null(coil.GivenDifferenceK);
        AssertAsks(() => coil.DifferenceK, "'coil'", "'difference'");
    }

    [Theory]
    [InlineData("{cv: 1}", 0.865, 1)]
    [InlineData("{kv: 0.012, opening: 60 %}", 0.012, 0.6)]
    public void AValveByItsFlowCoefficient(string valve, double kv, double opening)
    {
        var throttle = Layout(Examples.With("capillary: {bore: 0.9 mm, length: 1.7 m, coil-diameter: 50 mm}", $"valve: {valve}")).Throttle;
        Assert.Null(throttle.Capillary);
        Assert.Equal((kv, opening), (throttle.Valve!.FlowCoefficientKv, throttle.Valve.Opening));
    }

    [Fact]
    public void LayersFromInsideToOutside()
    {
        const string wall = "    wall: 180 mm\n    insulation: polyurethane-foam\n";
        var box = Layout(Examples.With(wall, "    layers:\n      - {material: aerogel, thickness: 20 mm}\n      - {material: polyurethane-foam, thickness: 120 mm, moisture: 1 %, cell-gas: air}\n")).ColdBox!;
        Assert.Equal(0.14, box.WallM, 1e-12);
        Assert.Equal(("aerogel-blanket", 0.0, null), (box.Layers[0].Material, box.Layers[0].MoistureShare, box.Layers[0].CellGas));
        Assert.Equal(("polyurethane-foam", 0.01, "air"), (box.Layers[1].Material, Math.Round(box.Layers[1].MoistureShare, 12), box.Layers[1].CellGas));
        AssertAsks(() => box.Insulation, "'cold-box'", "'insulation'");

        // One plain layer is the same as a wall of that material.
        Assert.Equal("perlite", Layout(Examples.With(wall, "    layers: [{material: perlite, thickness: 100 mm}]\n")).ColdBox!.Insulation);
    }

    private static void AssertAsks(Func<object> value, params string[] expected)
    {
        var report = Assert.Throws<SolveException>(() => value()).Report;
        Assert.Equal(SolveStatus.Outside, report.Status);
        Assert.All(expected, e => Assert.Contains(e, report.Advice, StringComparison.Ordinal));
    }

    private static LoopLayout Layout(string text)
    {
        var read = MachineFolderReader.ReadTexts(text);
        Assert.Empty(read.Problems);
        return read.Layout!;
    }
}
