using Coldwright.Machine.Description;
using Coldwright.Materials.Tubes;

namespace Coldwright.Safety.Rules;

/// <summary>Allowed absolute pressures of tubes and parts.</summary>
internal static class TubeLimits
{
    /// <summary>Allowed pressure of a tube, Pa absolute; null above the highest temperature with an allowable stress.</summary>
    public static double? OfTube(Tube tube, double temperatureK, double roomPressurePa) =>
        temperatureK > TubeRating.MaximumTemperatureK
            ? null
            : roomPressurePa + TubeRating.AllowableGaugePressurePa(tube.OutsideDiameterM, tube.WallM, temperatureK);

    /// <summary>The tubes of a part that hold pressure.</summary>
    public static IEnumerable<(string Name, Tube Tube, Layout.Zone Zone)> Of(Part part) => part switch
    {
        RecuperatorPart r => Both(r),
        CoilPart { Tube: { } tube } c => [(c.Name, tube, Layout.Zone.Low)],
        VesselPart v => [(v.Name, v.Tube, Layout.Zone.Feed)],
        _ => [],
    };

    private static IEnumerable<(string, Tube, Layout.Zone)> Both(RecuperatorPart recuperator)
    {
        if (recuperator.HighTube is { } high) yield return ($"{recuperator.Name}.high", high, Layout.Zone.High);
        if (recuperator.LowTube is { } low) yield return ($"{recuperator.Name}.low", low, Layout.Zone.Low);
    }
}
