using Coldwright.Materials.Solids;
using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Insulation;

/// <summary>A tube, wire or support that crosses the wall from the room to the cold inside.</summary>
/// <remarks>
/// Without exchange with the wall around it. A gas that flows in or out inside the tube is left out unless <see cref="OutflowWPerK"/> is given: then
/// a gas leaving the cold space is taken to be at the tube's own temperature all along, so k A dT/dx = Q + C (T - Tc), the lowest heat that can arrive;
/// 0 gives the highest. A gas that flows inwards brings its own enthalpy, which belongs to the stream and not here.
/// </remarks>
/// <param name="Name">For reports.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="AreaM2">Cross section of the solid, m2, 0 to 0.1.</param>
/// <param name="LengthM">Way through the wall, m, above 0 to 10.</param>
/// <param name="InnerK">Temperature of its inner end, K; null for the inside temperature.</param>
/// <param name="OutflowWPerK">Mass flow times heat capacity of gas that flows out through it, W/K, 0 or more.</param>
public sealed record WallPenetration(string Name, SolidMaterial Material, double AreaM2, double LengthM, double? InnerK = null, double OutflowWPerK = 0)
{
    /// <summary>Heat that arrives at the inner end, W.</summary>
    /// <param name="coldK">Temperature of the inner end, K.</param>
    /// <param name="warmK">Temperature of the outer end, K.</param>
    public double PowerW(double coldK, double warmK)
    {
        Validate();
        var still = AreaM2 / LengthM * Material.Integral(coldK, warmK).Value;
        if (OutflowWPerK == 0 || still <= 0) return still;
        // L = A/C times the integral of k over u = ln(Q + C (T - Tc)); smooth in u however small Q is
        var rise = OutflowWPerK * (warmK - coldK);
        double Way(double lnQ)
        {
            const int panels = 64;
            var q = Math.Exp(lnQ);
            var step = double.LogP1(rise / q) / panels;
            double sum = 0;
            for (var i = 0; i <= panels; i++)
            {
                var t = coldK + q * (Math.Exp(i * step) - 1) / OutflowWPerK;
                sum += (i == 0 || i == panels ? 1 : i % 2 == 1 ? 4 : 2) * Material.Conductivity(t).Value;
            }
            return Math.Log(AreaM2 / OutflowWPerK * sum * step / 3 / LengthM);
        }

        var high = Math.Log(still);
        var low = high;
        while (Way(low) < 0 && low > -600) low -= 10;
        // below 1e-260 W nothing arrives
        return Way(low) < 0 ? 0 : low == high ? still : Math.Exp(Brent.Solve(Way, low, high, 1e-13));
    }

    internal void Validate()
    {
        if (!(AreaM2 is >= 0 and <= 0.1)) throw new ArgumentException(FormattableString.Invariant($"the cross section of {Name} must be 0 to 0.1 m2, got {AreaM2} m2"));
        if (!(LengthM is > 0 and <= 10)) throw new ArgumentException(FormattableString.Invariant($"the length of {Name} must be above 0 and not above 10 m, got {LengthM} m"));
        if (!(OutflowWPerK >= 0 && double.IsFinite(OutflowWPerK))) throw new ArgumentException(FormattableString.Invariant($"the outflow through {Name} must be 0 W/K or more, got {OutflowWPerK} W/K"));
        if (InnerK is { } t && !(t > 0 && double.IsFinite(t))) throw new ArgumentException(FormattableString.Invariant($"the inner end of {Name} must be above 0 K, got {t} K"));
    }
}
