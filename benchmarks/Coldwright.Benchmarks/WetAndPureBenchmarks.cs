using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Throttling;

namespace Coldwright.Benchmarks;

/// <summary>Rows of parts at their dearest: phases that come and go inside, or a fluid that boils at one temperature.</summary>
internal static class WetAndPureBenchmarks
{
    private static readonly double[] Charge = [0.30, 0.25, 0.18, 0.15, 0.12];

    public static IEnumerable<Row> Rows()
    {
        var model = ReferenceModel.Create(["nitrogen", "methane", "ethane", "propane", "isobutane"]);
        var (flash, transport) = (new Flash(model), new TransportModel(model));
        var capillary = new CapillaryModel(flash, transport);
        var tube = new CapillaryTube { BoreM = 0.8e-3, LengthM = 1.5 };
        var inlet = ThrottleInlet.Of(flash.TemperaturePressure(120.5, 18.5e5, Charge));
        if (flash.PhaseCount != 3) throw new InvalidOperationException($"the inlet should be vapour and two liquids, it is {flash.PhaseNames()}");
        yield return Row.Of("part/capillary/three-phases", () => capillary.Flow(tube, inlet, 4.6e5));

        var compressor = new HermeticCompressor(new CompressorMachine { Traits = CompressorTraits.For(CompressorKind.Rotary), DisplacementM3 = 10.8e-6 }, model, Charge);
        int i = 0;
        yield return Row.Of("part/compressor/wet", () =>
        {
            // 231 to 239 K, each 4 K from the one before: nothing is learnt by heart
            i = (i + 2) % 5;
            compressor.Run(new CompressorDuty { SuctionTemperatureK = 231 + 2 * i, SuctionPressurePa = 4.6e5, DischargePressurePa = 19e5 });
        });

        var pure = ReferenceModel.Create(["nitrogen"]);
        var (pureFlash, pureTransport) = (new Flash(pure), new TransportModel(pure));
        var recuperator = new DistributedRecuperator(new TubeInTubeGeometry(0.00476, 0.00076, 3, 0.0159, 0.00102, 12, 0.25), null, new RoomLeak(0.05, 298));
        foreach (var (name, flow, hotK, coldK) in ((string, double, double, double)[])[("part/recuperator/nitrogen", 0.05, 120, 85), ("part/recuperator/nitrogen/slow", 0.01, 298, 82)])
            yield return Row.Of(name, () => RecuperatorStudy.Solve(recuperator, pureFlash, pureTransport,
                StreamCondition.AtTemperature([1], flow, 12e5, hotK), StreamCondition.AtTemperature([1], flow, 3e5, coldK)));
    }
}
