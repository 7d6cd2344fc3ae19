using Coldwright.Machine.Precooling;

namespace Coldwright.Machine.Tests.Precooling;

/// <summary>Exchangers against the exact effectiveness-NTU solutions (W. M. Kays, A. L. London, Compact Heat Exchangers; from memory).</summary>
public class EffectivenessTests
{
    // boiling pure refrigerant without superheat: e = 1 - exp(-NTU) of the mixture
    [Theory]
    [InlineData(5, 0.3)]
    [InlineData(20, 0.6)]
    [InlineData(60, 0.9)]
    public void EvaporatorOfAPureRefrigerant(double conductance, double flow)
    {
        var machine = PrecoolerCases.Small with { Evaporator = new MixtureEvaporator { ConductanceWPerK = conductance }, Expansion = new ThermostaticExpansion(0) };
        var load = MixtureLoad.Constant(40, 295, flow, 150);
        var r = PrecoolerLoop.Create(machine, "R290", PrecoolerCases.Stop).Solve(load, PrecoolerCases.Room, false, PrecoolerCases.Stop);
        double capacity = 40 * flow, expected = capacity * (1 - Math.Exp(-conductance / capacity)) * (295 - r.EvaporatingK);
        Assert.Equal(1, r.RunShare);
        Assert.Equal(1, r.CoolingW / expected, 1e-9);
        Assert.Equal(295 - r.CoolingW / capacity, r.MixtureOutletK, 1e-9);
    }

    // gas, condensing and liquid conduct alike, superheat of the gas and subcooling taken away by hand: Q of the condensing part against
    // cross-flow with one stream at constant temperature, e = 1 - exp(-NTU)
    [Fact]
    public void CondenserShares()
    {
        var condenser = new AirCondenser { ConductanceWPerK = 60, AirFlowM3PerS = 0.15, GasShare = 1, LiquidShare = 1, SubcoolingK = 0 };
        var r = PrecoolerLoop.Create(PrecoolerCases.Small with { Condenser = condenser }, "R290", PrecoolerCases.Stop)
            .Solve(MixtureLoad.Constant(40, 295, 0.6, 150), PrecoolerCases.Room, false, PrecoolerCases.Stop);
        double c = condenser.AirCapacityWPerK(PrecoolerCases.Room)!.Value, whole = c * (1 - Math.Exp(-60 / c));
        // liquid to dew: one temperature; two straight pieces from there on
        double area = 0;
        for (int i = 1; i < r.CondenserProfile.Count; i++)
        {
            var (a, b) = (r.CondenserProfile[i - 1], r.CondenserProfile[i]);
            double da = a.RefrigerantK - PrecoolerCases.Room, db = b.RefrigerantK - PrecoolerCases.Room;
            area += (b.HeatW - a.HeatW) / (whole * (Math.Abs(da - db) < 1e-9 ? da : (da - db) / Math.Log(da / db)));
        }
        Assert.Equal(1, area, 1e-8);
        Assert.InRange(r.CondenserErrorK, 0, 1e-8);
        Assert.All(r.CondenserProfile, p => Assert.InRange(p.AirK, PrecoolerCases.Room, p.RefrigerantK));
    }

    // endless conductances: the mixture leaves at the temperature of the boiling refrigerant, the liquid condenses at the room's
    [Fact]
    public void EndlessConductances()
    {
        var machine = PrecoolerCases.Small with
        {
            Evaporator = new MixtureEvaporator { ConductanceWPerK = 1e5 }, Expansion = new ThermostaticExpansion(0),
            Condenser = new AirCondenser { ConductanceWPerK = 1e5, SubcoolingK = 0 },
        };
        var r = PrecoolerLoop.Create(machine, "R290", PrecoolerCases.Stop).Solve(MixtureLoad.Constant(40, 295, 0.4, 150), PrecoolerCases.Room, false, PrecoolerCases.Stop);
        Assert.Equal(r.EvaporatingK, r.MixtureOutletK, 1e-6);
        Assert.Equal(PrecoolerCases.Room, r.CondensingK, 0.05);
    }

    // little air: all heat leaves with the air, which then leaves at the refrigerant's temperature
    [Fact]
    public void LittleAirCarriesWhatItCan()
    {
        var condenser = new AirCondenser { ConductanceWPerK = 1e5, AirFlowM3PerS = 0.03, SubcoolingK = 0 };
        var r = PrecoolerLoop.Create(PrecoolerCases.Small with { Condenser = condenser }, "R290", PrecoolerCases.Stop)
            .Solve(MixtureLoad.Constant(40, 295, 0.4, 150), PrecoolerCases.Room, false, PrecoolerCases.Stop);
        double c = condenser.AirCapacityWPerK(PrecoolerCases.Room)!.Value;
        Assert.InRange(r.CondenserHeatW / c, 0.999 * (r.CondensingK - PrecoolerCases.Room), r.DischargeK - PrecoolerCases.Room);
    }
}
