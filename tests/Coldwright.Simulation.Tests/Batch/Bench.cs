using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Machine.Feed;
using Coldwright.Numerics.Integration;
using Coldwright.Numerics.Interpolation;
using Coldwright.Simulation.Batch;
using static Coldwright.Simulation.Batch.BatchSlots;
using Xunit;

namespace Coldwright.Simulation.Tests.Batch;

/// <summary>Coolers for batches without a machine file around them, and a vessel full of liquid let out.</summary>
internal static class Bench
{
    public const double RoomK = 295, RoomPa = 101325;

    /// <summary>A vessel with a cold end of constant power below a cut-off, no metal anywhere unless it is given.</summary>
    public static BatchCooler Cooler(string gas = "nitrogen", double feedPa = 16e5, double volumeM3 = 0.4e-3, double coolingW = 30, double startK = 0, string[]? names = null, double[]? z = null)
    {
        var cancel = TestContext.Current.CancellationToken;
        var fluid = new ProductFluid(gas);
        var map = ProductMap.Create(names is null ? fluid.Model : ReferenceModel.Create(names), z ?? [1.0], cancel);
        double boiling = map.BubbleTemperature(RoomPa)!.Value;
        double[] t = [boiling - 8, boiling - 4, boiling, boiling + 6, boiling + 60, 320], w = [-12, -6, -0.1, coolingW * 0.5, coolingW, coolingW * 1.2];
        return new BatchCooler
        {
            Product = map, Fluid = fluid, Outlet = OutletFlow.Create(fluid, RoomPa, feedPa, cancel), Line = new DrainLine(4.8e-3, 6.35e-3, 0.3, 0.04, fluid, RoomPa),
            VesselM3 = volumeM3, FlaskM3 = 1e-3, NetCoolingW = new MonotoneCubic(t, w, new bool[t.Length]), LoopPowerW = 700, RoomK = RoomK, RoomPa = RoomPa, ArrivingK = 250,
            FillAreaM2 = 1e-7, DrainAreaM2 = 1e-7, FeedPa = feedPa, StartK = startK > 0 ? startK : boiling + 15, FreezingK = fluid.Model.Substances[0].TripleTemperatureK + 1, SupplyLineM3 = 25e-6, FillLineM3 = 20e-6,
        };
    }

    /// <summary>The same with metal of vessel, line and flask.</summary>
    public static BatchCooler WithMetal(this BatchCooler c) => c with
    {
        VesselMetal = new MetalStore("copper-dhp", 1.2), LineMetal = new MetalStore("copper-dhp", 0.06), FlaskMetal = new MetalStore("stainless-304", 0.2), FlaskConductanceWPerK = 0.003,
    };

    public static BatchPlan Plan(double feedPa = 16e5, double fill = 0.7, double openPa = 8e5) => new() { FeedPressurePa = feedPa, FillShare = fill, OpeningPressurePa = openPa };

    public static BatchRun Run(BatchCooler cooler, BatchPlan plan, BatchOptions? options = null) =>
        new BatchRunner(cooler, plan, options ?? new(), keepSeries: true, TestContext.Current.CancellationToken).Run();

    /// <summary>Vessel brimful of saturated liquid at a pressure, let out into a cold flask; no line, no cold end, no feed.</summary>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="volumeM3">m3.</param>
    /// <param name="copperKg">Wall of the vessel, kg; 0 for none.</param>
    /// <param name="shutShare">Liquid over the vessel's volume at which the drain is shut.</param>
    public static (double FullKg, double CollectedKg, double LeftKg, double LeftEnergy, double EndPa) Drained(double pressurePa, double volumeM3, double copperKg, double shutShare = 2e-3)
    {
        var cooler = Cooler(feedPa: pressurePa, volumeM3: volumeM3) with
        {
            NetCoolingW = new MonotoneCubic([60, 330], [0, 0], new bool[2]), FillLineM3 = 1e-9, VesselMetal = copperKg > 0 ? new MetalStore("copper-dhp", copperKg) : null,
        };
        var e = new BatchEquations(cooler, flaskCold: true) { DrainOpen = true };
        double t = cooler.Product.BubbleTemperature(pressurePa)!.Value;
        var liquid = cooler.Product.Bubble(t)!.Value;
        var y = e.Start();
        double full = y[VesselKg] = 0.9999 * liquid.LiquidDensity * volumeM3;
        y[VesselJ] = full * cooler.Product.At(t, full / volumeM3).InternalEnergy + (cooler.VesselMetal?.Energy(t) ?? 0);
        y[FillLineKg] *= pressurePa / RoomPa;
        var options = new IntegrationOptions { RelativeTolerance = 1e-7, AbsoluteTolerances = Enumerable.Range(0, Count).Select(i => Size(i) * 1e-7).ToArray(), InitialStep = 1e-4, MaximumStep = 10, RelativeNoise = 1e-12 };
        var gone = IntegrationEvent.WhenZero("gone", (_, s, _) => e.Vessel(s[VesselKg], s[VesselJ]) is var v ? s[VesselKg] * v.LiquidShare / v.LiquidDensity - shutShare * volumeM3 : 0) with { Effect = EventEffect.Stop };
        var r = StiffIntegrator.Integrate(e.Problem(), 0, y, 4000, options, [gone], null, TestContext.Current.CancellationToken).OrThrow();
        var end = e.Vessel(r.State[VesselKg], r.State[VesselJ]);
        return (full, r.State[FlaskKg], r.State[VesselKg] + r.State[Blown], end.InternalEnergy, end.PressurePa);
    }
}
