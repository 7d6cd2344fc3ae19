using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;

namespace Coldwright.Benchmarks;

/// <summary>The recuperator's rows: property tables made, the exchanger solved with its grid error and band, and both together.</summary>
internal static class RecuperatorBenchmarks
{
    public static IEnumerable<Row> Rows()
    {
        var model = ReferenceModel.Create(["nitrogen", "methane", "ethane", "propane", "isobutane"]);
        double[] z = [0.30, 0.25, 0.18, 0.15, 0.12];
        var (flash, transport) = (new Flash(model), new TransportModel(model));
        StreamTable Table(double pressurePa) => StreamTable.Create(flash, transport, z, [pressurePa], 95, 302);
        yield return Row.Of("part/recuperator/tables", () =>
        {
            Table(18e5);
            Table(4.5e5);
        });
        var recuperator = new DistributedRecuperator(new TubeInTubeGeometry(0.00476, 0.00076, 3, 0.0159, 0.00102, 12, 0.25), null, new RoomLeak(0.05, 298));
        var (hot, cold) = (StreamInlet.AtTemperature(Table(18e5), 0.05, 298, 18e5), StreamInlet.AtTemperature(Table(4.5e5), 0.05, 105, 4.5e5));
        yield return Row.Of("part/recuperator/solve", () => recuperator.Solve(hot, cold));
        yield return Row.Of("part/recuperator", () => RecuperatorStudy.Solve(recuperator, flash, transport,
            StreamCondition.AtTemperature(z, 0.05, 18e5, 298), StreamCondition.AtTemperature(z, 0.05, 4.5e5, 105)));
    }
}
