using Coldwright.Machine.Recuperation;
using static Coldwright.Machine.Tests.Recuperation.RecuperatorSamples;

namespace Coldwright.Machine.Tests.Recuperation;

/// <summary>Constant properties against closed forms.</summary>
public class ExactSolutionTests
{
    // Kays and London, Compact Heat Exchangers: counterflow, eps = (1 - e)/(1 - Cr e), e = exp(-NTU (1 - Cr)); NTU/(1 + NTU) when balanced
    private static double Effectiveness(double ntu, double cr) =>
        cr == 1 ? ntu / (1 + ntu) : (1 - Math.Exp(-ntu * (1 - cr))) / (1 - cr * Math.Exp(-ntu * (1 - cr)));

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 0.7)]
    [InlineData(0.5, 1)]
    [InlineData(0.3, 0.29)]
    public void CounterflowEffectiveness(double hotFlow, double coldFlow)
    {
        var r = new DistributedRecuperator(Simple(), null, null, Plain(200)).Solve(hotFlow, 300, coldFlow, 100);
        double ntu = r.ConductanceWPerK / (28 * Math.Min(hotFlow, coldFlow)), cr = Math.Min(hotFlow, coldFlow) / Math.Max(hotFlow, coldFlow);
        Assert.Equal(ntu, r.TransferUnits, 1e-9 * ntu);
        Assert.Equal(Effectiveness(ntu, cr), r.Effectiveness, 2e-6);
        Assert.True(Math.Abs(r.EnergyError) < 1e-8);
    }

    [Fact]
    public void GridErrorIsOfSecondOrderAndWellEstimated()
    {
        double exact = 0, before = 0;
        foreach (int cells in (int[])[20, 40, 80, 160])
        {
            var r = new DistributedRecuperator(Simple(), null, null, Plain(cells) with { GridError = true }).Solve(1, 300, 0.7, 100);
            exact = Effectiveness(r.TransferUnits, 0.7) * r.LargestDutyW;
            double error = r.DutyW - exact;
            if (before != 0) Assert.Equal(4, before / error, 0.1);
            Assert.Equal(-error, r.GridErrorW!.Value, 0.05 * Math.Abs(error));
            before = error;
        }
    }

    // Kroeger, Adv. Cryog. Eng. 12 (1967) 363, balanced flow and equal films (formula from memory; its exactness is what the test shows):
    // 1 - eps = 1/(1 + NTU (1 + lambda Phi)/(1 + lambda NTU)), Phi = s tanh(NTU/s), s = (lambda NTU/(1 + lambda NTU))^(1/2)
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    [InlineData(1)]
    public void ConductionAlongTheWallCostsWhatKroegerSays(double lambda)
    {
        const double flow = 1.0, length = 10;
        var geometry = Simple(length);
        // equal conductances on both sides: the outer perimeter is larger than the inner; the wall's resistance is made negligible on both
        double ratio = geometry.Hot.HeatedPerimeterM / geometry.Cold.HeatedPerimeterM, metal = lambda * 28 * flow * length / geometry.MetalAreaM2;
        var options = Plain(800, 3000, 3000 * ratio) with { AxialConduction = true };
        var r = new DistributedRecuperator(geometry, Metal(metal), null, options).Solve(flow, 300, flow, 100);
        double ntu = r.TransferUnits, s = Math.Sqrt(lambda * ntu / (1 + lambda * ntu)), phi = s * Math.Tanh(ntu / s);
        double kroeger = 1 - 1 / (1 + ntu * (1 + lambda * phi) / (1 + lambda * ntu));
        double gained = r.Cold.OutletK - r.Cold.InletK;
        Assert.Equal(kroeger, gained / 200, 1e-4);
        Assert.True(r.LargestAxialConductionW > 0);
    }

    [Fact]
    public void WithoutExchangeTheLeakAloneWarmsTheOuterStream()
    {
        // T_out = T_room - (T_room - T_in) exp(-g L/C)
        var options = Plain(400, 1e-9, 1e-9);
        var r = new DistributedRecuperator(Simple(20), null, new RoomLeak(0.5, 300), options).Solve(0.5, 250, 0.5, 100);
        Assert.Equal(300 - 200 * Math.Exp(-0.5 * 20 / 14), r.Cold.OutletK, 1e-3);
        Assert.Equal(250, r.Hot.OutletK, 1e-3);
        Assert.Equal(14 * (r.Cold.OutletK - 100), r.LeakW, 1e-6 * r.LeakW);
    }

    [Fact]
    public void MirroredTemperaturesGiveTheMirroredProfile()
    {
        // equal flows and conductances: turning the exchanger round and mirroring temperatures about the mean changes nothing
        var geometry = Simple();
        var options = Plain(60, 2000, 2000 * geometry.Hot.HeatedPerimeterM / geometry.Cold.HeatedPerimeterM) with { AxialConduction = true };
        var profile = new DistributedRecuperator(geometry, Metal(200), null, options).Solve(0.8, 300, 0.8, 100).Profile;
        for (int i = 0; i < profile.Count; i++)
            Assert.Equal(400, profile[i].HotK + profile[^(i + 1)].ColdK, 1e-7);
    }

    [Fact]
    public void StreamsThatTradePlacesTradeTheDuty()
    {
        var recuperator = new DistributedRecuperator(Simple(), Metal(200), null, Plain(60) with { AxialConduction = true });
        Assert.Equal(recuperator.Solve(0.8, 300, 0.6, 100).DutyW, -recuperator.Solve(0.8, 100, 0.6, 300).DutyW, 1e-6);
    }

    [Fact]
    public void FrictionAndHeadOfAStreamOfConstantDensity()
    {
        var geometry = Simple();
        var options = Plain(40) with { PressureDrop = true, ColdEndRiseM = 2 };
        var r = new DistributedRecuperator(geometry, null, null, options).Solve(0.01, 300, 0.01, 100);
        double g = 0.01 * 0.028 / geometry.Hot.AreaM2, d = geometry.Hot.HydraulicDiameterM;
        double friction = Machine.Flow.Friction.Churchill(g * d / 1e-5, geometry.Hot.RelativeRoughness) * g * g / (2 * 5 * d) * 10;
        Assert.Equal(friction + 5 * 9.80665 * 2, r.Hot.PressureDropPa, 1e-6 * friction);
        Assert.Equal(geometry.Hot.AreaM2 * 10 * 5, r.Hot.ContentKg, 1e-9);
    }
}
