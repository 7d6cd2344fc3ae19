using Coldwright.Machine.Precooling;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;

namespace Coldwright.Machine.Tests.Precooling;

/// <summary>The loop as a whole: balances, directions, limits.</summary>
public class PrecoolerLoopTests
{
    private static void Closes(PrecoolerResult r)
    {
        Assert.InRange(Math.Abs(r.EnergyBalanceError), 0, 1e-9);
        Assert.InRange(Math.Abs(r.EvaporatorErrorK), 0, 1e-8);
        Assert.InRange(Math.Abs(r.CondenserErrorK), 0, 1e-8);
        Assert.InRange(Math.Abs(r.ExpansionFlowError), 0, 1.1e-3);
        Assert.InRange(r.RunShare, 0, 1);
        Assert.Equal(r.CoolingW, r.EvaporatorProfile[^1].HeatW, 1e-9 * r.CoolingW);
        Assert.All(r.EvaporatorProfile, p => Assert.True(p.MixtureK > p.RefrigerantK - 1e-9));
        for (int i = 1; i < r.EvaporatorProfile.Count; i++) Assert.True(r.EvaporatorProfile[i].MixtureK >= r.EvaporatorProfile[i - 1].MixtureK);
    }

    [Theory]
    [InlineData("R290")]
    [InlineData("R134a")]
    [InlineData("R600a")]
    [InlineData("R407C")]
    [InlineData("propane 0.6, isobutane 0.4")]
    public void BalancesCloseAndMoreLoadIsWarmer(string refrigerant)
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small, refrigerant, PrecoolerCases.Stop);
        var load = PrecoolerCases.Mixture(0.02);
        double evaporating = 0, cooling = 0, outlet = 0;
        foreach (double flow in (double[])[0.003, 0.02, 0.05, 0.1, 0.2, 0.4])
        {
            var r = loop.Solve(load.WithFlow(flow), PrecoolerCases.Room, false, PrecoolerCases.Stop);
            Closes(r);
            Assert.True(r.EvaporatingK >= evaporating - 1e-9 && r.CoolingW > cooling && r.MixtureOutletK > outlet - 1e-9, $"{flow} mol/s: {r.EvaporatingK} K, {r.CoolingW} W, {r.MixtureOutletK} K");
            (evaporating, cooling, outlet) = (r.EvaporatingK, r.CoolingW, r.MixtureOutletK);
        }
    }

    // the same sensible stream with and without heavy components that condense: condensing loads the loop more
    [Fact]
    public void CondensingComponentsLoadTheLoop()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small, "R290", PrecoolerCases.Stop);
        var r = loop.Solve(PrecoolerCases.Mixture(0.06), PrecoolerCases.Room, false, PrecoolerCases.Stop);
        Assert.Equal("vapour+liquid", r.MixtureOutletPhases);
        var dry = loop.Solve(MixtureLoad.Constant(45, 300, 0.06, 150), PrecoolerCases.Room, false, PrecoolerCases.Stop);
        Assert.True(r.EvaporatingK > dry.EvaporatingK + 2, $"{r.EvaporatingK} {dry.EvaporatingK}");
    }

    [Fact]
    public void AnswerDoesNotDependOnWhatWasSolvedBefore()
    {
        var used = PrecoolerLoop.Create(PrecoolerCases.Small, "R134a", PrecoolerCases.Stop);
        var load = PrecoolerCases.Mixture(0.05);
        foreach (double flow in (double[])[1e-4, 0.5, 0.001, 0.2]) used.Solve(load.WithFlow(flow), 310, true, PrecoolerCases.Stop);
        var a = used.Solve(load, PrecoolerCases.Room, false, PrecoolerCases.Stop);
        var b = PrecoolerLoop.Create(PrecoolerCases.Small, "R134a", PrecoolerCases.Stop).Solve(load, PrecoolerCases.Room, false, PrecoolerCases.Stop);
        Assert.Equal(a.EvaporatingK, b.EvaporatingK, 1e-7);
        Assert.Equal(1, a.CoolingW / b.CoolingW, 1e-8);
    }

    [Fact]
    public void NoLoadMeansNoRunning()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small with { CutOutK = 240 }, "R290", PrecoolerCases.Stop);
        var load = PrecoolerCases.Mixture(1);
        foreach (double flow in (double[])[1e-2, 1e-4, 1e-8])
        {
            var r = loop.Solve(load.WithFlow(flow), PrecoolerCases.Room, true, PrecoolerCases.Stop);
            Closes(r);
            Assert.Equal(240, r.EvaporatingK, 1e-6);
            Assert.True(r.RunShare < 1);
            Assert.Contains(r.Warnings, w => w.ToString().Contains("cut-out"));
            if (flow > 1e-6) continue;
            // nothing to do: the mixture leaves as cold as the refrigerant enters, and the power goes to nothing
            Assert.Equal(r.EvaporatorInletK, r.MixtureOutletK, 1e-6);
            Assert.InRange(r.CompressorPowerW, 0, 1e-3);
        }
        var free = PrecoolerLoop.Create(PrecoolerCases.Small, "R290", PrecoolerCases.Stop).Solve(load.WithFlow(1e-5), PrecoolerCases.Room, false, PrecoolerCases.Stop);
        Closes(free);
        Assert.Contains(free.Warnings, w => w.ToString().Contains("next to nothing"));
    }

    [Fact]
    public void WarmerRoomCondensesWarmerAndCoolsLess()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small, "R290", PrecoolerCases.Stop);
        var load = PrecoolerCases.Mixture(0.08);
        PrecoolerResult? before = null;
        foreach (double room in (double[])[283, 293, 303, 313])
        {
            var r = loop.Solve(load, room, false, PrecoolerCases.Stop);
            Closes(r);
            if (before is not null) Assert.True(r.CondensingK > before.CondensingK + 5 && r.CoolingW < before.CoolingW && r.CoefficientOfPerformance < before.CoefficientOfPerformance);
            before = r;
        }
    }

    [Fact]
    public void CapacityTableMeetsTheWorkingPoint()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small, "R290", PrecoolerCases.Stop);
        var r = loop.Solve(PrecoolerCases.Mixture(0.08), PrecoolerCases.Room, true, PrecoolerCases.Stop);
        var rows = loop.CapacityTable([r.EvaporatingK - 15, r.EvaporatingK, r.EvaporatingK + 10], PrecoolerCases.Room, cancel: PrecoolerCases.Stop);
        Assert.Equal(3, rows.Count);
        Assert.Equal(1, rows[1].CoolingW / r.CoolingW, 1e-7);
        Assert.Equal(1, rows[1].CompressorPowerW / r.CompressorPowerW, 1e-7);
        Assert.True(rows[0].CoolingW < rows[1].CoolingW && rows[1].CoolingW < rows[2].CoolingW);
        Assert.InRange(r.Band!.CoolingW / r.CoolingW, 0.02, 0.25);
        Assert.InRange(r.Band.EvaporatingK, 0.3, 15);
    }

    [Fact]
    public void LowSideBelowAtmosphereAndColdOilAreSaid()
    {
        var r = PrecoolerLoop.Create(PrecoolerCases.Small with { OilPourPointK = 250 }, "R600a", PrecoolerCases.Stop).Solve(PrecoolerCases.Mixture(0.01), PrecoolerCases.Room, false, PrecoolerCases.Stop);
        Assert.True(r.EvaporatingPa < 101325);
        Assert.Contains(r.Warnings, w => w.ToString().Contains("below atmospheric"));
        Assert.Contains(r.Warnings, w => w.ToString().Contains("pour point"));
    }

    [Fact]
    public void AColdRoomHoldsThePressureUp()
    {
        var machine = PrecoolerCases.Small with { Condenser = new AirCondenser { ConductanceWPerK = 400 }, Evaporator = new MixtureEvaporator { ConductanceWPerK = 200 } };
        var r = PrecoolerLoop.Create(machine, "R290", PrecoolerCases.Stop).Solve(PrecoolerCases.Mixture(2.6), 265, false, PrecoolerCases.Stop);
        Closes(r);
        Assert.True(r.CondensingPa > r.EvaporatingPa);
        Assert.Contains(r.Warnings, w => w.ToString().Contains("so cold"));
    }

    // a capillary so narrow that the gas leaves as warm as the mixture enters: the streams touch to rounding
    [Fact]
    public void AStarvedEvaporatorIsSolvedAndSaid()
    {
        var tube = new CapillaryTube { BoreM = 0.51e-3, LengthM = 1.34 };
        var r = PrecoolerLoop.Create(PrecoolerCases.Small with { Expansion = new CapillaryExpansion(tube) }, "R22", PrecoolerCases.Stop).Solve(PrecoolerCases.Mixture(0.6), 308, false, PrecoolerCases.Stop);
        Closes(r);
        Assert.Contains(r.Warnings, w => w.ToString().Contains("starves"));
    }

    [Fact]
    public void TooSmallACondenserIsRefusedWithReason()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small with { Condenser = new AirCondenser { ConductanceWPerK = 4 } }, "R290", PrecoolerCases.Stop);
        var e = Assert.Throws<SolveException>(() => loop.Solve(PrecoolerCases.Mixture(0.3), 320, false, PrecoolerCases.Stop));
        Assert.Contains("condenser", e.Message);
    }

    [Fact]
    public void ACapillaryFloatsTheSuperheatThenTheSubcooling()
    {
        var load = PrecoolerCases.Mixture(0.1);
        double superheat = double.PositiveInfinity, subcooling = 10;
        foreach (double length in (double[])[6, 3, 1.5, 0.8])
        {
            var tube = new CapillaryTube { BoreM = 1.0e-3, LengthM = length };
            var r = PrecoolerLoop.Create(PrecoolerCases.Small with { Expansion = new CapillaryExpansion(tube) }, "R290", PrecoolerCases.Stop).Solve(load, PrecoolerCases.Room, false, PrecoolerCases.Stop);
            Closes(r);
            TestContext.Current.TestOutputHelper?.WriteLine($"{length} m: superheat {r.SuperheatK:0.##}, subcooling {r.SubcoolingK:0.##}, vapour {r.VapourBeforeExpansion:0.###}, {r.EvaporatingK:0.#} K");
            Assert.True(r.SuperheatK <= superheat + 1e-9 && r.SubcoolingK <= subcooling + 1e-9);
            Assert.True(r.SuperheatK == 0 || r.SubcoolingK >= 5 - 1e-9);
            (superheat, subcooling) = (r.SuperheatK, r.SubcoolingK);
        }
        Assert.Equal(0, superheat);
    }

    [Fact]
    public void AFixedValveIsMatched()
    {
        var valve = new ControlValve { Kv = 0.012 };
        var r = PrecoolerLoop.Create(PrecoolerCases.Small with { Expansion = new FixedValveExpansion(valve) }, "R134a", PrecoolerCases.Stop).Solve(PrecoolerCases.Mixture(0.1), PrecoolerCases.Room, true, PrecoolerCases.Stop);
        Closes(r);
        Assert.True(r.SuperheatK > 0 || r.SubcoolingK < 5);
    }

    [Fact]
    public void ALoadCurveThatEndsTooWarmIsRefused()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small, "R290", PrecoolerCases.Stop);
        var e = Assert.Throws<SolveException>(() => loop.Solve(MixtureLoad.Constant(40, 295, 0.05, 285), PrecoolerCases.Room, false, PrecoolerCases.Stop));
        Assert.Contains("curve ends", e.Message);
        Assert.Contains("molarFlow", Assert.Throws<ArgumentException>(() => MixtureLoad.Constant(40, 295, 0, 150)).Message);
    }

    [Theory]
    [InlineData("AirFlowM3PerS")]
    [InlineData("CutOutK")]
    [InlineData("SuperheatK")]
    [InlineData("DryShare")]
    [InlineData("LengthM")]
    public void BadInputNamesItself(string what)
    {
        var small = PrecoolerCases.Small;
        var machine = what switch
        {
            "AirFlowM3PerS" => small with { Condenser = small.Condenser with { AirFlowM3PerS = -1 } },
            "CutOutK" => small with { CutOutK = 5 },
            "SuperheatK" => small with { Expansion = new ThermostaticExpansion(-2) },
            "DryShare" => small with { Evaporator = small.Evaporator with { DryShare = 0 } },
            _ => small with { Expansion = new CapillaryExpansion(new CapillaryTube { BoreM = 1e-3 }) },
        };
        Assert.Contains(what, Assert.Throws<ArgumentException>(() => PrecoolerLoop.Create(machine, "R290", PrecoolerCases.Stop)).Message);
    }

    /// <summary>From far too cold to warm: points at which the compressor delivers nothing are left out, the others rise.</summary>
    [Theory]
    [InlineData("R290")]
    [InlineData("R600a")]
    public void CapacityTableLeavesOutWhatDeliversNothing(string refrigerant)
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small, refrigerant, PrecoolerCases.Stop);
        var asked = Enumerable.Range(0, 24).Select(i => 190.0 + 4 * i).ToArray();
        var rows = loop.CapacityTable(asked, PrecoolerCases.Room, cancel: PrecoolerCases.Stop);
        Assert.InRange(rows.Count, 5, asked.Length - 1);
        for (int i = 1; i < rows.Count; i++) Assert.True(rows[i].CoolingW > rows[i - 1].CoolingW);
    }
}
