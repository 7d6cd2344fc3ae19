using System.Globalization;

namespace Coldwright.Materials.Tubes;

/// <summary>Allowable internal pressure of annealed copper tube.</summary>
/// <remarks>
/// <para>P = 2 S t_min / (D_max - 0.8 t_min): P the allowable internal gauge pressure, S the allowable stress of annealed
/// copper, t_min the smallest wall, D_max the largest outside diameter. Source: Copper Development Association, Copper Tube
/// Handbook, section on pressure ratings (after ASME B31). Brazing anneals a drawn tube, so the annealed stress is always used.</para>
/// <para>The tolerances are not taken from the standards' text. Smallest wall = nominal less a tenth, the tenth rounded to
/// 0.001 in (halves to the even digit), largest diameter = nominal + 0.002 in: this one rule was inferred from the published
/// ratings. It reproduces all of those in the tests (ASTM B280 at 150 °F, types K and M) within 1 psi and agrees with the wall
/// tolerances of ASTM B88 as reprinted at engineeringtoolbox.com within half a thousandth of an inch. Confirm it against the standard before relying on the last percent.</para>
/// </remarks>
public static class TubeRating
{
    /// <summary>Where the formula and the stresses come from.</summary>
    public const string Source = "Copper Development Association, Copper Tube Handbook: P = 2 S tmin / (Dmax - 0.8 tmin), annealed stresses; wall tolerance inferred from the published ratings";

    private const double PsiPa = 6894.757293168;
    private const double InchM = 0.0254;
    private const double LargestDiameterExtraM = 0.002 * InchM;

    // Annealed copper, Copper Tube Handbook: psi at °F.
    private static readonly (double Fahrenheit, double Psi)[] AnnealedStress =
        [(100, 6000), (150, 5100), (200, 4900), (250, 4800), (300, 4700), (350, 4000), (400, 3000)];

    /// <summary>Highest temperature with an allowable stress, K (400 °F).</summary>
    public static double MaximumTemperatureK => Kelvin(AnnealedStress[^1].Fahrenheit);

    /// <summary>Allowable stress of annealed copper, Pa: the 100 °F value below that, straight lines between the published temperatures.</summary>
    /// <param name="temperatureK">Metal temperature, K, above 0 and at most 477.6 K (400 °F).</param>
    public static double AnnealedStressPa(double temperatureK)
    {
        if (!(temperatureK > 0 && temperatureK <= MaximumTemperatureK))
            throw new ArgumentOutOfRangeException(nameof(temperatureK), temperatureK,
                string.Create(CultureInfo.InvariantCulture, $"copper tube has an allowable stress between 0 K and {MaximumTemperatureK:0.0} K"));
        if (temperatureK <= Kelvin(AnnealedStress[0].Fahrenheit)) return AnnealedStress[0].Psi * PsiPa;
        var i = 1;
        while (i < AnnealedStress.Length - 1 && temperatureK > Kelvin(AnnealedStress[i].Fahrenheit)) i++;
        var (f0, s0) = AnnealedStress[i - 1];
        var (f1, s1) = AnnealedStress[i];
        var share = (temperatureK - Kelvin(f0)) / (Kelvin(f1) - Kelvin(f0));
        return (s0 + share * (s1 - s0)) * PsiPa;
    }

    /// <summary>Smallest wall to reckon with, m: the nominal wall less a tenth, that tenth rounded to 0.001 in, halves to the even digit.</summary>
    /// <param name="wallM">Nominal wall, m.</param>
    public static double SmallestWallM(double wallM)
    {
        // Decimal, because 0.065 in must round as exactly six and a half thousandths.
        var thousandths = Math.Round((decimal)(wallM / InchM * 1000), 6);
        var tolerance = Math.Round(thousandths / 10m, 0, MidpointRounding.ToEven);
        // A wall under 5 thousandths (fine capillary) would get no tolerance by rounding: a plain tenth then.
        return tolerance > 0 ? (double)(thousandths - tolerance) / 1000 * InchM : 0.9 * wallM;
    }

    /// <summary>Allowable internal pressure above the surroundings (gauge), Pa.</summary>
    /// <param name="outsideDiameterM">Nominal outside diameter, m.</param>
    /// <param name="wallM">Nominal wall, m, below half the diameter.</param>
    /// <param name="temperatureK">Metal temperature, K, at most 477.6 K (400 °F).</param>
    public static double AllowableGaugePressurePa(double outsideDiameterM, double wallM, double temperatureK)
    {
        if (!(wallM > 0 && 2 * wallM < outsideDiameterM))
            throw new ArgumentOutOfRangeException(nameof(wallM), wallM,
                string.Create(CultureInfo.InvariantCulture, $"the wall must lie between 0 and half the outside diameter of {outsideDiameterM} m"));
        var smallest = SmallestWallM(wallM);
        return 2 * AnnealedStressPa(temperatureK) * smallest / (outsideDiameterM + LargestDiameterExtraM - 0.8 * smallest);
    }

    private static double Kelvin(double fahrenheit) => (fahrenheit + 459.67) / 1.8;
}
