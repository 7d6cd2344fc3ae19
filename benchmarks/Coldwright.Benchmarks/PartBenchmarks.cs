using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Insulation;
using Coldwright.Machine.Throttling;
using Coldwright.Materials.Solids;

namespace Coldwright.Benchmarks;

/// <summary>Rows of the other parts, each alone, reference model, five components, warmed up.</summary>
internal static class PartBenchmarks
{
    private static readonly double[] Charge = [0.30, 0.25, 0.18, 0.15, 0.12];

    public static IEnumerable<Row> Rows()
    {
        var model = ReferenceModel.Create(["nitrogen", "methane", "ethane", "propane", "isobutane"]);
        var (flash, transport) = (new Flash(model), new TransportModel(model));
        var compressor = new HermeticCompressor(new CompressorMachine { Traits = CompressorTraits.For(CompressorKind.Rotary), DisplacementM3 = 10.8e-6 }, model, Charge);
        var duty = new CompressorDuty { SuctionTemperatureK = 290, SuctionPressurePa = 4.6e5, DischargePressurePa = 19e5 };
        yield return Row.Of("part/compressor", () => compressor.Run(duty));

        var capillary = new CapillaryModel(flash, transport);
        var tube = new CapillaryTube { BoreM = 0.8e-3, LengthM = 1.5 };
        foreach (var (name, temperatureK) in ((string, double)[])[("part/capillary/one-liquid", 150), ("part/capillary/two-liquids", 108)])
        {
            var inlet = ThrottleInlet.Of(flash.TemperaturePressure(temperatureK, 18.5e5, Charge));
            yield return Row.Of(name, () => capillary.Flow(tube, inlet, 4.6e5));
        }

        var box = new InsulatedEnclosure(new BoxWall(0.26, 0.22, 0.34), [ConductingLayer.Of(SolidLibrary.Default.Find("polyurethane-foam")!, 0.18)], [], 293, 0.5, new FreeConvectionFilm(0.7));
        yield return Row.Of("part/insulation", () => EnclosureSolver.Solve(box, 100));
    }
}
