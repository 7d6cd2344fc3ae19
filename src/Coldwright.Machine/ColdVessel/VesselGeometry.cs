using Coldwright.Materials.Solids;
using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.ColdVessel;

/// <summary>Ends of an upright vessel.</summary>
public enum CapForm
{
    /// <summary>Flat discs.</summary>
    Flat,
    /// <summary>Half ellipsoids as deep as a quarter of the inside diameter (2:1).</summary>
    Ellipsoidal,
    /// <summary>Half spheres.</summary>
    Hemispherical,
}

/// <summary>An upright vessel made of a length of tube and two equal caps. Levels are heights above the lowest point inside.</summary>
public sealed record VesselGeometry
{
    /// <summary>Outside diameter of the body, m, 0.005 to 2.</summary>
    public required double OutsideDiameterM { get; init; }
    /// <summary>Wall of the body, m, 1e-4 to less than half the outside diameter.</summary>
    public required double WallM { get; init; }
    /// <summary>Inside length of the cylindrical body, m, 0.01 to 10; domed caps come on top of it.</summary>
    public required double LengthM { get; init; }
    /// <summary>The ends.</summary>
    public CapForm Caps { get; init; } = CapForm.Flat;
    /// <summary>Wall of the caps, m, 1e-4 to 0.1; null: as the body.</summary>
    public double? CapWallM { get; init; }
    /// <summary>Wall material, a name of the materials library.</summary>
    public string Material { get; init; } = "copper-dhp";

    /// <summary>Inside diameter, m.</summary>
    public double BoreM => OutsideDiameterM - 2 * WallM;
    /// <summary>Inside depth of one cap, m.</summary>
    public double CapDepthM => Caps switch { CapForm.Ellipsoidal => BoreM / 4, CapForm.Hemispherical => BoreM / 2, _ => 0 };
    /// <summary>Inside height from lowest to highest point, m.</summary>
    public double HeightM => LengthM + 2 * CapDepthM;
    /// <summary>Inside volume, m3, coil not subtracted.</summary>
    public double VolumeM3 => VolumeBelow(HeightM);
    /// <summary>Volume of the metal, m3, both caps with it.</summary>
    public double WallVolumeM3
    {
        get
        {
            double outer = OutsideDiameterM / 2, inner = BoreM / 2, cap = CapWallM ?? WallM, depth = CapDepthM;
            double one = depth == 0 ? Math.PI * outer * outer * cap : 2.0 / 3 * Math.PI * (outer * outer * (depth + cap) - inner * inner * depth);
            return Math.PI * (outer * outer - inner * inner) * LengthM + 2 * one;
        }
    }

    /// <summary>Refuses dimensions outside their ranges.</summary>
    /// <exception cref="ArgumentException">With name, value, limit and unit.</exception>
    public void Check()
    {
        VesselGuard.Within(OutsideDiameterM, 0.005, 2, "m", nameof(OutsideDiameterM));
        VesselGuard.Within(WallM, 1e-4, 0.49 * OutsideDiameterM, "m", nameof(WallM));
        VesselGuard.Within(LengthM, 0.01, 10, "m", nameof(LengthM));
        if (CapWallM is { } cap) VesselGuard.Within(cap, 1e-4, 0.1, "m", nameof(CapWallM));
        SolidLibrary.Default.Find(Material);
    }

    /// <summary>Volume below a level, m3; what the coil displaces is subtracted when it is given and inside.</summary>
    /// <param name="levelM">Height above the lowest point inside, m; held to the vessel.</param>
    /// <param name="coil">Coil in the vessel, or null.</param>
    public double VolumeBelow(double levelM, ColdCoilGeometry? coil = null)
    {
        double level = Math.Clamp(levelM, 0, HeightM), r2 = BoreM * BoreM / 4, depth = CapDepthM;
        double inBottom = Math.Min(level, depth), inBody = Math.Clamp(level - depth, 0, LengthM), inTop = Math.Clamp(level - depth - LengthM, 0, depth);
        double volume = Math.PI * r2 * inBody;
        if (depth > 0)
        {
            // half an ellipsoid filled from its pole to y: pi r^2 (y^2/d - y^3/(3 d^2)); from its equator likewise, turned round
            double FromPole(double y) => Math.PI * r2 * (y * y / depth - y * y * y / (3 * depth * depth));
            volume += FromPole(inBottom) + FromPole(depth) - FromPole(depth - inTop);
        }
        return volume - (coil is null ? 0 : coil.DisplacedBelow(level));
    }

    /// <summary>Level at which a volume of liquid stands, m.</summary>
    /// <param name="volumeM3">Liquid, m3, 0 to what the vessel holds.</param>
    /// <param name="coil">Coil in the vessel, or null.</param>
    public double LevelOf(double volumeM3, ColdCoilGeometry? coil = null)
    {
        double full = VolumeBelow(HeightM, coil);
        VesselGuard.Within(volumeM3, 0, full * (1 + 1e-12), "m3", nameof(volumeM3));
        if (volumeM3 >= full) return HeightM;
        return volumeM3 == 0 ? 0 : Brent.Solve(y => VolumeBelow(y, coil) - volumeM3, 0, HeightM, 1e-13 * HeightM);
    }

    /// <summary>Mass of the metal, kg.</summary>
    /// <exception cref="InvalidOperationException">The materials library has no density of the wall material.</exception>
    public double WallMassKg()
    {
        var material = SolidLibrary.Default.Find(Material);
        return WallVolumeM3 * (material.Density ?? throw new InvalidOperationException($"the materials library has no density of {Material}")).KgPerM3;
    }

    /// <summary>Heat that the metal gives up on cooling, J: mass times the enthalpy rise of the material.</summary>
    /// <param name="warmK">Start, K, for example 300.</param>
    /// <param name="coldK">End, K, for example 77.</param>
    public double WallHeatJ(double warmK, double coldK) => WallMassKg() * SolidLibrary.Default.Find(Material).EnthalpyRise(coldK, warmK).Value;

    /// <summary>Heat capacity of the metal at a temperature, J/K.</summary>
    /// <param name="temperatureK">K.</param>
    public double WallHeatCapacity(double temperatureK) => WallMassKg() * SolidLibrary.Default.Find(Material).SpecificHeat(temperatureK).Value;
}
