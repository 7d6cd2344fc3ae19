using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>What slopes cost, and tables against the direct model.</summary>
public sealed class SlopeTests
{
    private readonly Plant _plant;
    private readonly LoopMapMaker _maker;

    public SlopeTests()
    {
        var folder = Coolers.Folder("stops-pinch");
        var model = CubicModel.Create(folder.Machine!.Charge.Mixture.Names);
        var hardware = HardwareReader.Read(folder.Machine, folder.Layout!, model, default);
        _plant = new Plant(hardware, 24, 10, 0);
        _maker = new LoopMapMaker(hardware, model, StreamTableOptions.Default, default);
    }

    private CooldownRun Run(double[] factors, bool sensitivity, double tolerance, SlopeRecorder? recorder, double endS)
    {
        var run = new CooldownRun(_plant, _maker, new CooldownOptions { Sensitivity = sensitivity, Tolerance = tolerance }, factors, null, default) { SlopesAt = recorder };
        run.Start(null);
        run.To(endS, null, null);
        Assert.Null(run.Stopped);
        return run;
    }

    [Fact]
    public void Less_light_gas_is_another_composition_and_less_of_it()
    {
        double[] f = PlantParameters.Nominal();
        f[PlantParameters.LightGas] = 0.8;
        var run = new CooldownRun(_plant, _maker, new CooldownOptions(), f, null, default);
        double[] z = [.. _plant.Hardware.Machine.Charge.Mixture.MoleFractions];
        int light = _plant.Hardware.Machine.Charge.Mixture.Names.ToList().IndexOf("nitrogen");
        Assert.Equal(_plant.Hardware.ChargeMol * (1 - 0.2 * z[light]), run.TotalMol, 1e-9);
        Assert.Equal(0.8 * z[light] / (1 - 0.2 * z[light]), run.Charged[light], 1e-12);
    }

    [Fact]
    public void Slopes_cost_less_than_two_runs_more()
    {
        var with = Run(PlantParameters.Nominal(), true, 1e-4, null, 3600);
        Assert.True(with.SlopeEvaluations < 2 * (with.Evaluations - with.SlopeEvaluations + 8 * with.Steps), $"{with.SlopeEvaluations} of {with.Evaluations} evaluations, {with.Steps} steps");
    }

    [Fact]
    public void Tables_on_the_way_agree_with_flashes_of_the_model()
    {
        var run = new CooldownRun(_plant, _maker, new CooldownOptions(), PlantParameters.Nominal(), null, default);
        run.Start(null);
        run.To(2 * 3600, null, null);
        var at = run.Point(run.State);
        Correlations(run, at);
        var (f, flash, z) = (run.Equations, new Fluids.PhaseEquilibrium.Flash(_maker.Model), run.Z);
        for (int i = 0; i <= _plant.Layout.Cells; i += 3)
        {
            double hot = flash.PressureEnthalpy(f.Hot.PressurePa[i], f.Hot.Enthalpy[i], z).TemperatureK, cold = flash.PressureEnthalpy(f.Cold.PressurePa[i], f.Cold.Enthalpy[i], z).TemperatureK;
            Assert.Equal(hot, f.Streams.High.Temperature(f.Hot.Enthalpy[i], f.Hot.PressurePa[i], out _), 0.4);
            Assert.Equal(cold, f.Streams.Low.Temperature(f.Cold.Enthalpy[i], f.Cold.PressurePa[i], out _), 0.4);
        }
        // what the streams carry off, with both ends' enthalpies from the model at the table's temperatures
        double inlet = flash.TemperaturePressure(at.RecuperatorInletK, at.HighPa, z).MolarEnthalpy;
        double outlet = flash.TemperaturePressure(f.Streams.Low.Temperature(f.Cold.OutletEnthalpy, f.Cold.OutletPressurePa, out _), f.Cold.OutletPressurePa, z).MolarEnthalpy;
        Assert.Equal(at.CoolingW, at.Flow * (outlet - inlet), 0.01 * at.CoolingW);
    }

    /// <summary>The composition is part of the solution and tables take over from one another without a jump: a moment never stands far off the line between its neighbours.</summary>
    [Fact]
    public void Pressures_and_flow_run_smoothly_and_every_amount_is_what_was_charged()
    {
        var kept = new List<(double S, double High, double Low, double Flow)>();
        var run = new CooldownRun(_plant, _maker, new CooldownOptions(), PlantParameters.Nominal(), s =>
        {
            var p = s.Run.Point(s.State);
            kept.Add((s.TimeS, Math.Log(p.HighPa), Math.Log(p.SuctionPa), Math.Log(p.Flow)));
        }, default);
        run.Start(null);
        run.To(4 * 3600, null, null);
        var later = kept.Where(k => k.S > 120).ToArray();
        Assert.True(later.Length > 50);
        double Off(Func<(double S, double High, double Low, double Flow), double> of) => Enumerable.Range(1, later.Length - 2).Max(i =>
        {
            double w = (later[i].S - later[i - 1].S) / (later[i + 1].S - later[i - 1].S);
            return Math.Abs(of(later[i]) - (1 - w) * of(later[i - 1]) - w * of(later[i + 1]));
        });
        Assert.True(Off(k => k.High) < 2e-3 && Off(k => k.Low) < 0.01 && Off(k => k.Flow) < 0.01, $"{Off(k => k.High)} {Off(k => k.Low)} {Off(k => k.Flow)}");
        Assert.True(run.WorstDrift < 0.01, $"{run.WorstDrift}");
    }

    // films, friction and hold-up tabulated, against every correlation at every place
    private void Correlations(CooldownRun run, PlantPoint at)
    {
        var (h, f, n) = (_plant.Hardware, run.Equations, _plant.Layout.Cells);
        foreach (var (march, geometryHot, table, enthalpy, pressure, passage) in new[] { (f.Hot, true, f.Streams.High, at.RecuperatorInlet, at.HighPa, f.Loop.Passages.High), (f.Cold, false, f.Streams.Low, at.CoilOutEnthalpy, at.CoilOutPa, f.Loop.Passages.Low) })
        {
            double[] wall = f.WallK.ToArray();
            var exact = new WallMarch(h.Recuperator, geometryHot, n, _plant.Conductivity);
            exact.Run(new StreamInlet(table, at.Flow, enthalpy, pressure), wall, 0, h.RoomK, new MarchScales(1, 1, 1), false);
            march.Run(new StreamInlet(table, at.Flow, enthalpy, pressure), wall, 0, h.RoomK, new MarchScales(1, 1, 1), false, passage);
            for (int i = 0; i < n; i++)
            {
                Assert.Equal(1, march.Conductance[i] / exact.Conductance[i], 0.02);
                Assert.Equal(1, march.Moles[i] / exact.Moles[i], 0.02);
            }
            Assert.Equal(1, march.Conductance.Sum() / exact.Conductance.Sum(), 4e-3);
            Assert.Equal(1, march.Moles.Sum() / exact.Moles.Sum(), 4e-3);
            Assert.Equal(exact.OutletPressurePa, march.OutletPressurePa, 0.002 * Math.Abs(pressure - exact.OutletPressurePa) + 5);
        }
    }
}
