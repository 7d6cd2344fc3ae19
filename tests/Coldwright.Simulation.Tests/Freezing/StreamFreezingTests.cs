using Xunit;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Freezing;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;
using Coldwright.Simulation.Freezing;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Tests.Freezing;

/// <summary>Freezing margins along both streams of a rated cooler.</summary>
public class StreamFreezingTests
{
    private static ModelRating Rate(Composition? mixture = null)
    {
        var machine = Coolers.Folder("workshop").Machine!;
        return Coolers.Rate(mixture is null ? machine : machine with { Charge = machine.Charge with { Mixture = mixture } }, RatingModel.Cubic, options: new RatingOptions { CurveStepK = 10 }).Main;
    }

    /// <summary>The margin told for the coldest place is that of a plain flash there.</summary>
    [Fact]
    public void TheLeastMarginIsThatOfTheStateItself()
    {
        var rating = Rate();
        var freezing = StreamFreezing.Of(rating);
        var least = freezing.Least!;
        Assert.True(freezing.IsLow);
        Assert.Equal("isobutane", least.Component);
        Assert.Equal(rating.ThrottleOutletK, least.TemperatureK, 1e-9);
        Assert.Null(freezing.Low.First);

        var model = CubicModel.Create(rating.Loop.Composition.Names);
        var flash = new Flash(model);
        Assert.True(flash.TrySolve(least.TemperatureK, least.PressurePa, [.. rating.Loop.Composition.MoleFractions], false));
        var there = new FreezingModel(model).At(flash.State(), searchTemperatures: false);
        Assert.Equal(there.Where(m => m.Margin is not null).Min(m => m.Margin!.Value), least.Margin, 1e-6);
    }

    /// <summary>A tenth of the charge as a gas that melts far above the cold end is nearer to freezing than isobutane was; when its margin is below 1 the place is told.</summary>
    [Fact]
    public void TooMuchOfAHeavyGasFreezes()
    {
        var freezing = StreamFreezing.Of(Rate(new Composition(["nitrogen", "methane", "ethane", "propane", "pentane"], [0.27, 0.38, 0.20, 0.05, 0.10])));
        Assert.Equal("pentane", freezing.Least!.Component);
        Assert.True(freezing.Least.Margin < StreamFreezing.Of(Rate()).Least!.Margin);
        Assert.Equal(freezing.Low.First is not null || freezing.High.First is not null, freezing.Least.Margin < 1);
    }
}
