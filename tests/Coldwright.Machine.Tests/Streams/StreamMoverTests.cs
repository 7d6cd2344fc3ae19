using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Tests.Streams;

/// <summary>Tables moved along the composition: never out of order, and a change of phases moved past the next is told.</summary>
public class StreamMoverTests
{
    private static readonly string[] Five = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] Z = [0.30, 0.32, 0.20, 0.10, 0.08], Pressures = [18e5, 21e5];

    private static StreamMover Make()
    {
        var model = CubicModel.Create(Five);
        var (flash, transport) = (new Flash(model), new TransportModel(model));
        var table = StreamTable.Create(flash, transport, Z, Pressures, 95, 300, null, TestContext.Current.CancellationToken);
        return StreamMover.Create(StreamFamily.Create(table, flash, transport, TestContext.Current.CancellationToken)!)!;
    }

    [Fact]
    public void However_far_it_is_moved_temperature_rises_with_enthalpy_and_what_was_pushed_is_told()
    {
        var mover = Make();
        double last = 0;
        // more and more methane: the region of three phases vanishes between 0.2 and 0.4
        foreach (double step in new[] { 0.02, 0.04, 0.1, 0.2, 0.4, 0.8 })
        {
            var table = mover.At([step, 0, 0, 0]);
            foreach (double p in (double[])[18e5, 19.3e5, 21e5])
            {
                var (low, high) = table.Range(p);
                double before = double.NegativeInfinity;
                for (int i = 0; i <= 2000; i++)
                {
                    double k = table.Temperature(low + (high - low) * i / 2000, p, out double slope);
                    Assert.True(k >= before - 1e-9 && slope >= 0, $"{step}: {k} after {before}, slope {slope}");
                    before = k;
                }
            }
            if (step <= 0.1) Assert.Equal(0, mover.PushedK, 1e-3);
            Assert.True(mover.PushedK >= last, $"{step}: {mover.PushedK} after {last}");
            last = mover.PushedK;
        }
        Assert.True(last > 1, $"{last}");
        mover.At([0.0, 0, 0, 0]);
        Assert.Equal(0, mover.PushedK);
    }
}
