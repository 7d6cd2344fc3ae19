using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Recuperation;
using Coldwright.Numerics;
using static Coldwright.Machine.Tests.Recuperation.RecuperatorSamples;

namespace Coldwright.Machine.Tests.Recuperation;

/// <summary>A wide-boiling blend at 18 and 4.5 bar absolute: condensing, boiling, two liquids.</summary>
public class BlendRecuperatorTests
{
    private static readonly RoomLeak Room = new(0.05, 298);

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.03)]
    [InlineData(0.1)]
    [InlineData(0.2)]
    public void EnergyClosesAndHeatRunsDownhill(double flow)
    {
        var r = new DistributedRecuperator(Coiled(), null, Room, new RecuperatorOptions { Band = false }).SolveBlend(flow);
        Assert.True(Math.Abs(r.EnergyError) < 1e-8, $"{r.EnergyError}");
        Assert.InRange(r.Effectiveness, 0.5, 1);
        Assert.True(Math.Abs(r.GridErrorW!.Value) < 2e-3 * r.DutyW);
        foreach (var s in r.Profile) Assert.True(s.HeatPerLength > 0 == s.HotK > s.WallK && s.HotK - s.ColdK > -0.5, $"{s}");
        Assert.True(r.Hot.PressureDropPa > 0 && r.Cold.PressureDropPa > 0);
        Assert.True(r.Report.Solved);
    }

    [Fact]
    public void ALongExchangerPinchesInside()
    {
        // precooled to 270 K the isothermal enthalpy difference is least (829 J/mol) near 123 K, where the high stream has little vapour left
        var r = new DistributedRecuperator(Coiled(40), null, null, new RecuperatorOptions { PressureDrop = false, AxialConduction = false, Band = false, Cells = 200 }).SolveBlend(0.02, 105, 1, 270);
        Assert.InRange(r.Effectiveness, 0.99, 1.0);
        Assert.InRange(r.Pinch.DifferenceK, 0, 1);
        Assert.InRange(r.Pinch.HotK, 119, 127);
        Assert.InRange(r.Pinch.PositionM, 0.01, 39.99);
        foreach (var s in r.Profile) Assert.True(s.HotK > s.ColdK);
    }

    [Fact]
    public void ColdAndWarmStartsAgree()
    {
        var recuperator = new DistributedRecuperator(Coiled(), null, Room, new RecuperatorOptions { Band = false, GridError = false });
        var cold = recuperator.SolveBlend(0.05);
        var other = recuperator.SolveBlend(0.08, 112);
        var warm = recuperator.Solve(RecuperatorInlet(true), RecuperatorInlet(false), other, TestContext.Current.CancellationToken);
        Assert.Equal(cold.DutyW, warm.DutyW, 1e-6 * cold.DutyW);
        Assert.Equal(cold.Hot.OutletK, warm.Hot.OutletK, 1e-6);
        Assert.Equal(cold.Cold.OutletPressurePa, warm.Cold.OutletPressurePa, 1e-3);
    }

    private static StreamInlet RecuperatorInlet(bool hot) => hot ? StreamInlet.AtTemperature(High, 0.05, 298, HighPa) : StreamInlet.AtTemperature(Low, 0.05, 105, LowPa);

    [Fact]
    public void FilmsAreThoseOfTheCommonCorrelations()
    {
        var geometry = Coiled();
        var r = new DistributedRecuperator(geometry, null, null, new RecuperatorOptions { PressureDrop = false, Band = false, GridError = false }).SolveBlend(0.05);
        var station = r.Profile.First(s => s.HotPhases == "vapour");
        var point = High.At(High.Enthalpy(station.HotK, HighPa), HighPa);
        double g = 0.05 * High.MolarMass / geometry.Hot.AreaM2;
        double film = InTube.OnePhase(g, geometry.Hot.HydraulicDiameterM, point.Vapour.Viscosity, point.Vapour.Conductivity, point.Vapour.HeatCapacity, geometry.Hot.DiameterOverCoil, geometry.Hot.RelativeRoughness);
        Assert.Equal(film, station.HotFilm, 1e-4 * film);
        var condensing = r.Profile.First(s => s.HotPhases == "vapour+liquid" && s.HotQuality < 0.6);
        point = High.At(High.Enthalpy(condensing.HotK, HighPa), HighPa);
        var flow = new TwoPhaseFlow
        {
            MassFlux = g, Quality = point.Quality, DiameterM = geometry.Hot.HydraulicDiameterM, LiquidDensity = point.Liquid.Density, VapourDensity = point.Vapour.Density,
            LiquidViscosity = point.Liquid.Viscosity, VapourViscosity = point.Vapour.Viscosity, LiquidConductivity = point.Liquid.Conductivity, VapourConductivity = point.Vapour.Conductivity,
            LiquidHeatCapacity = point.Liquid.HeatCapacity, VapourHeatCapacity = point.Vapour.HeatCapacity, ReducedPressure = HighPa / High.PseudoCriticalPressurePa,
        };
        double expected = InTube.Condensing(flow, MixtureCorrection.SensibleShare(point.Quality, point.Vapour.HeatCapacity, point.MassTemperatureSlope), geometry.Hot.DiameterOverCoil);
        Assert.Equal(expected, condensing.HotFilm, 5e-3 * expected);
    }

    [Fact]
    public void RefiningTheGridConverges()
    {
        // changes of phases disturb the order of single steps; over three halvings the error falls by more than 4^2
        double Duty(int cells) => new DistributedRecuperator(Coiled(), null, Room, new RecuperatorOptions { Cells = cells, Band = false, GridError = false }).SolveBlend(0.05).DutyW;
        double finest = Duty(768), coarse = Math.Abs(Duty(48) - finest), fine = Math.Abs(Duty(384) - finest);
        Assert.True(coarse > 16 * fine, $"{coarse} W and {fine} W");
        Assert.True(coarse < 2e-4 * finest);
    }

    [Fact]
    public void TheCorrelationsUncertaintyReachesTheResult()
    {
        var r = new DistributedRecuperator(Coiled(), null, Room).SolveBlend(0.1);
        Assert.InRange(r.Band!.DutyW, 1e-4 * r.DutyW, 0.1 * r.DutyW);
        Assert.InRange(r.Band.HotOutletK, 0.01, 20);
        Assert.InRange(r.Band.ColdOutletK, 0.01, 20);
        // friction is known to about a third where two phases flow
        Assert.InRange(r.Band.ColdDropPa / r.Cold.PressureDropPa, 0.03, 0.4);
        var exact = new DistributedRecuperator(Coiled(), null, Room, new RecuperatorOptions { PressureDrop = false, Hot = new SideOptions(500), Cold = new SideOptions(400) }).SolveBlend(0.1);
        Assert.Equal(0, exact.Band!.DutyW);
    }

    [Fact]
    public void TooNarrowATubeIsRefusedInWords()
    {
        var e = Assert.Throws<SolveException>(() => new DistributedRecuperator(Coiled(60), null, Room, new RecuperatorOptions { Band = false }).SolveBlend(1.5));
        Assert.Contains("pressure", e.Message);
    }

    [Fact]
    public void TheStudyMakesItsOwnTables()
    {
        var model = ReferenceModel.Create(Names);
        var r = RecuperatorStudy.Solve(new DistributedRecuperator(Coiled(), null, Room, new RecuperatorOptions { Band = false }), new Flash(model), new TransportModel(model),
            StreamCondition.AtTemperature(Blend, 0.05, HighPa, 298), StreamCondition.AtTemperature(Blend, 0.05, LowPa, 105), TestContext.Current.CancellationToken);
        var direct = new DistributedRecuperator(Coiled(), null, Room, new RecuperatorOptions { Band = false }).SolveBlend(0.05);
        Assert.Equal(direct.DutyW, r.DutyW, 1e-3 * direct.DutyW);
        Assert.Equal(943.66, r.DutyW, 1.0); // regression
    }

    [Fact]
    public void RandomCasesAreSolved()
    {
        var random = new Random(5);
        for (int k = 0; k < 40; k++)
        {
            double flow = 0.005 * Math.Pow(10, random.NextDouble()), ratio = Math.Pow(3, 2 * random.NextDouble() - 1), length = 2 * Math.Pow(12, random.NextDouble());
            double coldK = 100 + 150 * random.NextDouble(), hotK = coldK + 5 + (293 - coldK) * random.NextDouble();
            RecuperatorGeometry geometry = k % 2 == 0 ? new SideBySideGeometry(0.00635, 0.00076, 0.00953, 0.0008, 0.003, 0.0002, length, 0.2) : Coiled(length);
            var r = new DistributedRecuperator(geometry, null, new RoomLeak(0.03, 298), new RecuperatorOptions { Band = false }).SolveBlend(flow, coldK, ratio, hotK);
            Assert.True(Math.Abs(r.EnergyError) < 1e-8);
            Assert.True(Math.Abs(r.GridErrorW!.Value) < 0.01 * Math.Abs(r.DutyW) + 0.01);
        }
    }
}
