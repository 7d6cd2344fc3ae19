using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>Phases moved without a certificate against certified answers at the same place.</summary>
public class FollowTests
{
    private static readonly string[] Five = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] Z = [0.30, 0.32, 0.20, 0.10, 0.08], Near = [0.303, 0.318, 0.201, 0.0985, 0.0795];

    public static TheoryData<bool, double, double, string> States => new()
    {
        { true, 200, 18e5, "vapour+liquid" }, { false, 200, 18e5, "vapour+liquid" },
        { true, 110, 5e5, "vapour+liquid" }, { false, 150, 5e5, "vapour+liquid" },
        { true, 290, 5e5, "vapour" }, { false, 290, 5e5, "vapour" },
    };

    /// <summary>A degree, three hundredths of pressure and a hundredth of composition away: where the phases stay the same the answer is the certified one.</summary>
    [Theory, MemberData(nameof(States))]
    public void A_followed_answer_is_the_certified_one(bool cubic, double t, double p, string phases)
    {
        HelmholtzModel model = cubic ? CubicModel.Create(Five) : ReferenceModel.Create(Five);
        Flash followed = new(model), certified = new(model);
        Assert.True(followed.TrySolve(t, p, Z));
        Assert.Equal(phases, followed.PhaseNames());
        Assert.True(followed.TryFollow(t + 1, 1.03 * p, Near));
        var there = certified.TemperaturePressure(t + 1, 1.03 * p, Near);
        Assert.Equal(there.PhaseNames, followed.PhaseNames());
        Assert.Equal(there.MolarEnthalpy, followed.Enthalpy(), 1e-6 * Math.Abs(there.MolarEnthalpy));
        Assert.Equal(there.MolarDensity, followed.Density(), 1e-7 * there.MolarDensity);
    }

    [Theory, InlineData(true), InlineData(false)]
    public void Along_an_enthalpy_as_well(bool cubic)
    {
        HelmholtzModel model = cubic ? CubicModel.Create(Five) : ReferenceModel.Create(Five);
        Flash followed = new(model), certified = new(model);
        var here = followed.TemperaturePressure(150, 12e5, Z);
        Assert.True(followed.TryFollowPressureEnthalpy(10e5, here.MolarEnthalpy - 40, Z, 148));
        var there = certified.PressureEnthalpy(10e5, here.MolarEnthalpy - 40, Z);
        Assert.Equal(there.PhaseNames, followed.PhaseNames());
        Assert.Equal(there.TemperatureK, followed.TemperatureK, 1e-6);
        Assert.Equal(here.MolarEnthalpy - 40, followed.Enthalpy(), 1e-6);
    }

    /// <summary>A phase that is lost on the way is not passed over in silence.</summary>
    [Fact]
    public void It_says_when_a_phase_is_lost()
    {
        var flash = new Flash(CubicModel.Create(Five));
        Assert.True(flash.TrySolve(200, 18e5, Z));
        Assert.False(flash.TryFollow(300, 5e5, Z));
        // and the flash is none the worse for it
        Assert.True(flash.TrySolve(300, 5e5, Z));
        Assert.Equal("vapour", flash.PhaseNames());
        Assert.False(flash.TryFollowPressureEnthalpy(5e5, 0, Near, 300));
    }
}
