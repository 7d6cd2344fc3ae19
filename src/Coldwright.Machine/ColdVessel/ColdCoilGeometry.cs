using Coldwright.Machine.Recuperation;
using Coldwright.Materials.Solids;

namespace Coldwright.Machine.ColdVessel;

/// <summary>Where the coil sits.</summary>
public enum CoilPosition
{
    /// <summary>In the vessel, washed by its content on all sides.</summary>
    Inside,
    /// <summary>Soldered around the vessel: the content meets the vessel's wall.</summary>
    Around,
}

/// <summary>Which end of the coil the mixture enters.</summary>
public enum CoilInletEnd
{
    /// <summary>The lowest turn: the coldest mixture subcools the liquid.</summary>
    Bottom,
    /// <summary>The highest turn: the coldest mixture condenses the gas.</summary>
    Top,
}

/// <summary>A helix of tube with upright axis. Heights are above the lowest point inside the vessel.</summary>
public sealed record ColdCoilGeometry
{
    /// <summary>Outside diameter of the tube, m, 0.5e-3 to 0.1.</summary>
    public required double OutsideDiameterM { get; init; }
    /// <summary>Wall of the tube, m, 0.05e-3 to less than half the outside diameter.</summary>
    public required double WallM { get; init; }
    /// <summary>Length of tube that is wound, m, 0.05 to 100.</summary>
    public required double LengthM { get; init; }
    /// <summary>Mean diameter of the coil, m, at least twice the tube's.</summary>
    public required double CoilDiameterM { get; init; }
    /// <summary>Height from turn to turn, m, at least the tube's outside diameter.</summary>
    public required double PitchM { get; init; }
    /// <summary>Height of the lowest end of the helix, m, 0 to 10.</summary>
    public double BottomM { get; init; }
    /// <summary>Where it sits.</summary>
    public CoilPosition Position { get; init; } = CoilPosition.Inside;
    /// <summary>Which end the mixture enters.</summary>
    public CoilInletEnd InletEnd { get; init; } = CoilInletEnd.Bottom;
    /// <summary>Tube material, a name of the materials library.</summary>
    public string Material { get; init; } = "copper-dhp";
    /// <summary>Roughness of the bore, m, 0 to 1e-4.</summary>
    public double RoughnessM { get; init; } = RecuperatorGeometry.DrawnTubeRoughnessM;
    /// <summary>Width of the solder between tube and vessel, m, above 0 to half the tube's circumference; used for a coil around the vessel. Default 2 mm (our assumption).</summary>
    public double BondWidthM { get; init; } = 2e-3;
    /// <summary>Mean thickness of the solder, m, 0 to 5e-3. Default 0.2 mm (our assumption).</summary>
    public double BondThicknessM { get; init; } = 0.2e-3;
    /// <summary>Conductivity of the solder, W/(m K), 1 to 500.</summary>
    public double BondConductivity { get; init; } = SideBySideGeometry.SoftSolderConductivity;

    /// <summary>Bore, m.</summary>
    public double BoreM => OutsideDiameterM - 2 * WallM;
    /// <summary>Tube in one turn, m.</summary>
    public double TurnLengthM => Math.Sqrt(Math.PI * CoilDiameterM * Math.PI * CoilDiameterM + PitchM * PitchM);
    /// <summary>Number of turns.</summary>
    public double Turns => LengthM / TurnLengthM;
    /// <summary>Height of the helix, m.</summary>
    public double HeightM => Turns * PitchM;
    /// <summary>Height of its highest end, m.</summary>
    public double TopM => BottomM + HeightM;
    /// <summary>Outside of the tube, m2.</summary>
    public double OutsideAreaM2 => Math.PI * OutsideDiameterM * LengthM;
    /// <summary>Bore area, m2.</summary>
    public double InsideAreaM2 => Math.PI * BoreM * LengthM;

    /// <summary>Share of the coil that lies below a level, 0 to 1, by the height of the tube's axis.</summary>
    /// <param name="levelM">m.</param>
    public double SubmergedShare(double levelM) => Math.Clamp((levelM - BottomM) / HeightM, 0, 1);

    /// <summary>Volume of tube below a level, m3; 0 for a coil around the vessel.</summary>
    /// <param name="levelM">m.</param>
    public double DisplacedBelow(double levelM) => Position == CoilPosition.Around ? 0 : Math.PI / 4 * OutsideDiameterM * OutsideDiameterM * LengthM * SubmergedShare(levelM);

    /// <summary>Pitch that winds a length of tube into a number of turns, m.</summary>
    /// <param name="lengthM">Tube, m.</param>
    /// <param name="coilDiameterM">Mean diameter, m.</param>
    /// <param name="turns">Turns, above 0.</param>
    /// <exception cref="ArgumentException">So many turns need more tube than there is.</exception>
    public static double PitchFromTurns(double lengthM, double coilDiameterM, double turns)
    {
        double flat = Math.PI * coilDiameterM, turn = lengthM / turns;
        return turn > flat ? Math.Sqrt(turn * turn - flat * flat)
            : throw new ArgumentException(FormattableString.Invariant($"{turns:0.##} turns of {coilDiameterM:R} m mean diameter need more than {turns * flat:0.####} m of tube; the length is {lengthM:R} m"), nameof(turns));
    }

    /// <summary>Pitch that spreads a length of tube over a height, m.</summary>
    /// <param name="lengthM">Tube, m.</param>
    /// <param name="coilDiameterM">Mean diameter, m.</param>
    /// <param name="heightM">Height, m, below the length.</param>
    public static double PitchFromHeight(double lengthM, double coilDiameterM, double heightM)
    {
        VesselGuard.Within(heightM, 1e-4, 0.999 * lengthM, "m", nameof(heightM));
        double sine = heightM / lengthM;
        return Math.PI * coilDiameterM * sine / Math.Sqrt(1 - sine * sine);
    }

    /// <summary>Refuses dimensions outside their ranges.</summary>
    /// <exception cref="ArgumentException">With name, value, limit and unit.</exception>
    public void Check()
    {
        VesselGuard.Within(OutsideDiameterM, 0.5e-3, 0.1, "m", nameof(OutsideDiameterM));
        VesselGuard.Within(WallM, 0.05e-3, 0.49 * OutsideDiameterM, "m", nameof(WallM));
        VesselGuard.Within(LengthM, 0.05, 100, "m", nameof(LengthM));
        VesselGuard.Within(CoilDiameterM, 2 * OutsideDiameterM, 2, "m", nameof(CoilDiameterM));
        VesselGuard.Within(PitchM, OutsideDiameterM * (1 - 1e-9), 1, "m", nameof(PitchM));
        VesselGuard.Within(BottomM, 0, 10, "m", nameof(BottomM));
        VesselGuard.Within(RoughnessM, 0, 1e-4, "m", nameof(RoughnessM));
        VesselGuard.Within(BondWidthM, 1e-4, 0.5 * Math.PI * OutsideDiameterM, "m", nameof(BondWidthM));
        VesselGuard.Within(BondThicknessM, 0, 5e-3, "m", nameof(BondThicknessM));
        VesselGuard.Within(BondConductivity, 1, 500, "W/(m K)", nameof(BondConductivity));
        SolidLibrary.Default.Find(Material);
    }

    /// <summary>Refuses a coil that does not fit the vessel.</summary>
    /// <param name="vessel">The vessel.</param>
    /// <exception cref="ArgumentException">With name, value, limit and unit.</exception>
    public void CheckFit(VesselGeometry vessel)
    {
        VesselGuard.Within(TopM, 0, vessel.HeightM * (1 + 1e-9), "m", nameof(TopM));
        if (Position == CoilPosition.Inside)
            VesselGuard.Within(CoilDiameterM + OutsideDiameterM, 0, vessel.BoreM * (1 + 1e-9), "m", nameof(CoilDiameterM) + " plus " + nameof(OutsideDiameterM));
        else
            VesselGuard.Within(CoilDiameterM - OutsideDiameterM, vessel.OutsideDiameterM * (1 - 1e-3), 2, "m", nameof(CoilDiameterM) + " less " + nameof(OutsideDiameterM));
    }

    internal FlowChannel Channel() => new(Math.PI / 4 * BoreM * BoreM, BoreM, Math.PI * BoreM, 0, BoreM / CoilDiameterM, RoughnessM / BoreM);
}
