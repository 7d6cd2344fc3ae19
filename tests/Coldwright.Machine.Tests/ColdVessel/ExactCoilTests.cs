using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using static Coldwright.Machine.Tests.ColdVessel.ColdVesselSamples;

namespace Coldwright.Machine.Tests.ColdVessel;

/// <summary>Limits with an exact answer: a gas of constant properties in the tube, a content of one temperature outside.</summary>
public class ExactCoilTests
{
    private const double Flow = 0.03, InletK = 95, GasPa = 5e5;

    // 28 J/(mol K)
    private static readonly StreamTable Gas = StreamTable.Constant(new PhaseTransport(5, 1e-5, 0.02, 1000), 0.028, GasPa, 20, 400);

    private static ColdVesselInput Question(ColdVesselOptions options, double levelM = 0, double flow = Flow) =>
        Case(levelM) with { Mixture = StreamInlet.AtTemperature(Gas, flow, InletK, GasPa), Options = options };

    private static double Units(double inside, double outside, double atK, double lengthM, double flow = Flow) =>
        lengthM / (1 / (inside * Math.PI * Coil.BoreM) + WallResistance(atK) + 1 / (outside * Math.PI * Coil.OutsideDiameterM)) / (flow * 28);

    // content of one temperature: effectiveness 1 - exp(-NTU) (W. M. Kays, A. L. London, Compact Heat Exchangers, capacity ratio 0)
    [Theory]
    [InlineData(20, 30)]
    [InlineData(100, 200)]
    [InlineData(2000, 3000)]
    public void EffectivenessOfACoilInCondensingGas(double inside, double outside)
    {
        var r = Question(Plain(inside, outside, 100)).Solve();
        double t = Nitrogen.BubbleK!.Value, expected = 1 - Math.Exp(-Units(inside, outside, t, Coil.LengthM));
        Assert.Equal(expected, (r.OutletK - InletK) / (t - InletK), 1e-10);
        Assert.Equal(Units(inside, outside, t, Coil.LengthM) * Flow * 28, r.ConductanceWPerK, 1e-8 * r.ConductanceWPerK);
    }

    [Fact]
    public void EffectivenessOfACoilInLiquid()
    {
        var r = (Question(Plain(100, 200, 100), Vessel.HeightM) with { LiquidK = 104 }).Solve();
        double expected = 1 - Math.Exp(-Units(100, 200, 104, Coil.LengthM));
        Assert.Equal(expected, (r.OutletK - InletK) / (104 - InletK), 1e-10);
        Assert.Equal(0, r.CondensedKgPerS);
        // all that the mixture takes up the liquid loses
        Assert.Equal(-r.HeatW, r.LiquidGainW, 1e-9 * r.HeatW);
    }

    [Fact]
    public void EndlessConductanceBringsTheMixtureToSaturation()
    {
        var r = Question(Plain(1e5, 1e5)).Solve();
        Assert.Equal(r.SaturationK!.Value, r.OutletK, 1e-9);
        // with no coil in it the liquid is what drips, colder than its bubble point by 3/8 of the little that the film still needs
        Assert.InRange(r.SubcoolingK, 0, 0.1);
    }

    [Fact]
    public void EndlessConductanceSharesTheHeatByBalanceAlone()
    {
        // mixture leaves the liquid at its temperature and the coil at saturation: C (T_l - T_in) = m (h' - h_l), C (T_s - T_l) = m r
        var r = Question(Plain(1e5, 1e5), 0.12).Solve();
        double c = Flow * 28, ts = r.SaturationK!.Value, m = r.CondensedKgPerS;
        Assert.Equal(ts, r.OutletK, 1e-6);
        Assert.Equal(c * (ts - r.LiquidK), m * Nitrogen.HeatOfCondensation, 1e-3 * r.HeatW);
        Assert.Equal(c * (r.LiquidK - InletK), m * (Nitrogen.BubbleEnthalpy - Nitrogen.Liquid(r.LiquidK).MassEnthalpy), 1e-3 * r.HeatW);
    }

    [Fact]
    public void MuchMixtureSubcoolsTheLiquidToItsInlet()
    {
        var r = Question(Plain(1e5, 1e5) with { Condensing = new SideOptions(10) }, 0.12, 3).Solve();
        Assert.Equal(InletK, r.LiquidK, 0.01);
        Assert.Equal(r.SaturationK!.Value - InletK, r.SubcoolingK, 0.01);
    }
}
