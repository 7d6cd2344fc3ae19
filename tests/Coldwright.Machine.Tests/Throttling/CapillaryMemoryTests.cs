using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Throttling;

namespace Coldwright.Machine.Tests.Throttling;

/// <summary>A capillary asked again close by takes its phases from the first time: the flow is that of one asked for the first time.</summary>
public class CapillaryMemoryTests
{
    private static readonly string[] Five = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] FiveZ = [0.28, 0.31, 0.22, 0.09, 0.10];

    /// <summary>Where two liquids enter and where one does, boiling on the way and before it.</summary>
    [Theory]
    [InlineData(true, 112), InlineData(true, 121), InlineData(true, 150), InlineData(false, 112), InlineData(false, 150)]
    public void Asked_again_near_by_it_answers_as_if_asked_first(bool cubic, double inletK)
    {
        HelmholtzModel fluid = cubic ? CubicModel.Create(Five) : ReferenceModel.Create(Five);
        var (flash, transport) = (new Flash(fluid), new TransportModel(fluid));
        CapillaryModel New() => new(flash, transport);
        var tube = new CapillaryTube { BoreM = 0.8e-3, LengthM = 1.9 };
        var asked = New();
        double worst = 0;
        for (int k = 0; k < 7; k++)
        {
            double[] z = [.. FiveZ.Select((f, i) => f * (1 + 0.005 * k * Math.Sin(1 + 2 * i)))];
            double sum = z.Sum(), t = inletK + 0.27 * k, p = 17.5e5 * (1 - 0.004 * k);
            for (int i = 0; i < z.Length; i++) z[i] /= sum;
            var inlet = ThrottleInlet.Of(flash.TemperaturePressure(t, p, z));
            double again = asked.Flow(tube, inlet, 4.1e5, TestContext.Current.CancellationToken).MolarFlow, first = New().Flow(tube, inlet, 4.1e5, TestContext.Current.CancellationToken).MolarFlow;
            worst = Math.Max(worst, Math.Abs(again / first - 1));
        }
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{(cubic ? "cubic" : "reference")} from {inletK} K: {worst:0.0e+0} apart"));
        Assert.InRange(worst, 0, 1e-4);
    }
}
