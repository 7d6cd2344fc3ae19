using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Freezing;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Freezing;

/// <summary>How far the circulating mixture is from freezing on its way down the high side and back along the low side of a rated cooler.</summary>
/// <param name="High">Along the high-pressure stream, warm end first.</param>
/// <param name="Low">Along the low-pressure stream, from the throttle to the warm end.</param>
public sealed record StreamFreezing(PathFreezing High, PathFreezing Low)
{
    private const int Places = 16;

    /// <summary>The smaller margin of the two; null when no component is below its triple point anywhere.</summary>
    public PathPoint? Least => new[] { High.Least, Low.Least }.OfType<PathPoint>().MinBy(p => p.Margin);

    /// <summary>True when <see cref="Least"/> is on the low side.</summary>
    public bool IsLow => Low.Least is { } low && ReferenceEquals(low, Least);

    /// <summary>Margins along both streams of the rating's operating point.</summary>
    /// <param name="rating">The rating; its model is asked for the fugacities.</param>
    /// <exception cref="Numerics.SolveException">A flash on the way has no answer.</exception>
    public static StreamFreezing Of(ModelRating rating)
    {
        var mixture = rating.Loop.Composition;
        HelmholtzModel model = rating.Model == "cubic" ? CubicModel.Create(mixture.Names) : ReferenceModel.Create(mixture.Names);
        var every = Math.Max(1, rating.Recuperator.Count / Places);
        var stations = rating.Recuperator.Where((_, i) => i % every == 0 || i == rating.Recuperator.Count - 1).ToArray();
        double high = rating.Loop.HighPressurePa, low = rating.Loop.LowPressurePa;
        return new(
            new FreezingModel(model).AlongPath(stations.Select(s => (s.HighStreamK, high)), mixture.MoleFractions),
            new FreezingModel(model).AlongPath(stations.Reverse().Select(s => (s.LowStreamK, low)).Prepend((rating.ThrottleOutletK, low)), mixture.MoleFractions));
    }
}
