using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>(T,p) flashes with their certificate allocate nothing in the steady state: one, two and three phases, cold and warm starts.</summary>
public sealed class AllocationTests
{
    [Theory]
    [InlineData("reference", false)]
    [InlineData("reference", true)]
    [InlineData("cubic", false)]
    [InlineData("cubic", true)]
    public void Flashes_allocate_nothing(string kind, bool warm)
    {
        string[] names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
        double[] z = [0.30, 0.25, 0.18, 0.15, 0.12];
        HelmholtzModel model = kind == "reference" ? ReferenceModel.Create(names) : CubicModel.Create(names);
        var flash = new Flash(model);
        double sum = 0;
        int most = 0;
        void Walk()
        {
            for (double t = 100; t < 320; t += 5)
            {
                if (!flash.TrySolve(t, 18e5, z, warm)) throw new InvalidOperationException($"no answer at {t} K");
                sum += flash.Enthalpy() + flash.Entropy() + flash.VapourFraction() + flash.Density();
                most = Math.Max(most, flash.PhaseCount);
            }
        }
        // twice: static fields are set up, and the compiler may still be replacing code
        Walk();
        Walk();
        long before = GC.GetAllocatedBytesForCurrentThread();
        Walk();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(double.IsFinite(sum) && most >= 2);
    }
}
