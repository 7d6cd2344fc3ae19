using Coldwright.Materials.Solids;

namespace Coldwright.Machine.ColdVessel;

/// <summary>
/// The metal between content and mixture, per metre of coil. A coil in the content: the tube's wall. A coil around the vessel: the vessel's wall works as a
/// fin on either side of the solder (half the distance to the next turn), then solder, then the coil's own wall as a fin round its bore.
/// </summary>
internal sealed class WallPath
{
    private readonly ColdCoilGeometry _coil;
    private readonly bool _around;
    private readonly double _tubeK, _vesselK, _wall, _under, _reach, _tubeReach, _vesselWallM;

    /// <param name="coil">The coil.</param>
    /// <param name="vessel">The vessel.</param>
    /// <param name="metalK">Temperature at which the metals' conductivity is taken, K.</param>
    public WallPath(ColdCoilGeometry coil, VesselGeometry vessel, double metalK)
    {
        (_coil, _around) = (coil, coil.Position == CoilPosition.Around);
        _tubeK = SolidLibrary.Default.Find(coil.Material).Conductivity(metalK).Value;
        _vesselK = SolidLibrary.Default.Find(vessel.Material).Conductivity(metalK).Value;
        _vesselWallM = vessel.WallM;
        _wall = Math.Log(coil.OutsideDiameterM / coil.BoreM) / (2 * Math.PI * _tubeK);
        double bond = coil.BondWidthM;
        _under = (0.5 * coil.WallM / _tubeK + coil.BondThicknessM / coil.BondConductivity + 0.5 * vessel.WallM / _vesselK) / bond;
        OutsideWidthM = _around ? Math.PI * vessel.BoreM * coil.PitchM / coil.TurnLengthM : Math.PI * coil.OutsideDiameterM;
        _reach = 0.5 * Math.Max(0, OutsideWidthM - bond);
        _tubeReach = 0.5 * Math.Max(0, Math.PI * (coil.OutsideDiameterM - coil.WallM) - bond);
    }

    /// <summary>Surface that meets the content, m2 per m of coil.</summary>
    public double OutsideWidthM { get; }

    /// <summary>From the content to the outer surface (or the vessel's wall at the solder), W/(m K).</summary>
    /// <param name="film">W/(m2 K).</param>
    public double Outer(double film) => _around ? Gathered(film, _vesselK, _vesselWallM, _reach) : film * OutsideWidthM;

    /// <summary>From there to the mixture, K m/W.</summary>
    /// <param name="film">In the tube, W/(m2 K).</param>
    public double Inner(double film) => _around
        ? 1 / Gathered(film * _coil.BoreM / (_coil.OutsideDiameterM - _coil.WallM), _tubeK, _coil.WallM, _tubeReach) + _under
        : 1 / (film * Math.PI * _coil.BoreM) + _wall;

    // (the tube's fin is as long as its middle, its film works on the bore)
    // straight fins with adiabatic tips on both sides of the bond: h w + 2 (h k t)^(1/2) tanh(L (h/(k t))^(1/2))
    private double Gathered(double film, double k, double wallM, double reachM) =>
        film * _coil.BondWidthM + 2 * Math.Sqrt(film * k * wallM) * Math.Tanh(reachM * Math.Sqrt(film / (k * wallM)));
}
