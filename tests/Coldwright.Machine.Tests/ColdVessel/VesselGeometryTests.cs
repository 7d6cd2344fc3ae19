using Coldwright.Machine.ColdVessel;
using Coldwright.Materials.Solids;
using static Coldwright.Machine.Tests.ColdVessel.ColdVesselSamples;

namespace Coldwright.Machine.Tests.ColdVessel;

/// <summary>Volumes, levels, masses, metal.</summary>
public class VesselGeometryTests
{
    private static VesselGeometry With(CapForm caps) => Vessel with { Caps = caps };

    [Fact]
    public void VolumesAreThoseOfTheBodies()
    {
        double d = Vessel.BoreM, body = Math.PI / 4 * d * d * Vessel.LengthM;
        Assert.Equal(body, With(CapForm.Flat).VolumeM3, 1e-14);
        Assert.Equal(body + Math.PI * d * d * d / 6, With(CapForm.Hemispherical).VolumeM3, 1e-14);
        // two half ellipsoids 2:1 hold pi D^3/24 each
        Assert.Equal(body + Math.PI * d * d * d / 12, With(CapForm.Ellipsoidal).VolumeM3, 1e-14);
        Assert.Equal(Math.PI / 4 * Coil.OutsideDiameterM * Coil.OutsideDiameterM * Coil.LengthM, Vessel.VolumeM3 - Vessel.VolumeBelow(1, Coil), 1e-14);
    }

    [Theory]
    [InlineData(CapForm.Flat)]
    [InlineData(CapForm.Ellipsoidal)]
    [InlineData(CapForm.Hemispherical)]
    public void LevelAndVolumeGoBothWays(CapForm caps)
    {
        var v = With(caps);
        double last = -1;
        for (int i = 0; i <= 40; i++)
        {
            double level = v.HeightM * i / 40, volume = v.VolumeBelow(level, Coil);
            Assert.True(volume > last);
            last = volume;
            Assert.Equal(level, v.LevelOf(volume, Coil), 1e-8);
        }
        Assert.Throws<ArgumentException>(() => v.LevelOf(1.01 * v.VolumeM3));
    }

    [Fact]
    public void HalfTheHeightIsHalfTheVolume() => Assert.Equal(Vessel.VolumeM3 / 2, Vessel.VolumeBelow(Vessel.HeightM / 2), 1e-14);

    [Fact]
    public void MetalWeighsAndHoldsHeat()
    {
        var flat = With(CapForm.Flat) with { CapWallM = 0.003, Material = "copper-ofhc-100" };
        double d = flat.OutsideDiameterM, volume = Math.PI / 4 * ((d * d - flat.BoreM * flat.BoreM) * flat.LengthM + 2 * d * d * 0.003);
        Assert.Equal(volume, flat.WallVolumeM3, 1e-14);
        double mass = volume * SolidLibrary.Default.Find("copper-ofhc-100").Density!.KgPerM3;
        Assert.Equal(mass, flat.WallMassKg(), 1e-12);
        // copper 77 to 300 K: 74.96 kJ/kg, from the NIST fit of the specific heat of OFHC copper (trc.nist.gov cryogenic materials)
        Assert.Equal(74.96e3, flat.WallHeatJ(300, 77) / mass, 0.005 * 74.96e3);
        Assert.Equal(195.9, flat.WallHeatCapacity(77) / mass, 0.005 * 195.9);
        var shell = With(CapForm.Hemispherical);
        double outer = shell.OutsideDiameterM / 2, inner = shell.BoreM / 2;
        Assert.Equal(Math.PI * (outer * outer - inner * inner) * shell.LengthM + 4.0 / 3 * Math.PI * (Math.Pow(outer, 3) - Math.Pow(inner, 3)), shell.WallVolumeM3, 1e-12);
    }

    [Fact]
    public void ContentGoesBothWays()
    {
        foreach (double level in new[] { 0, 0.03, 0.12, 0.2, Vessel.HeightM })
        {
            var at = VesselContent.AtLevel(Vessel, Coil, Nitrogen, level, 100);
            var of = VesselContent.OfMass(Vessel, Coil, Nitrogen, at.MassKg, 100);
            Assert.Equal(level, of.LevelM, 1e-8);
            Assert.Equal(at.LiquidKg, of.LiquidKg, 1e-9);
        }
        Assert.Throws<ArgumentException>(() => VesselContent.OfMass(Vessel, Coil, Nitrogen, 5));
        Assert.Throws<ArgumentException>(() => VesselContent.AtLevel(Vessel, Coil, Nitrogen, 0.1, 120));
    }

    // nitrogen at 1 atm: 77.355 K, 806.08 kg/m3; at 10 bar 103.747 K and 373.6 kJ/kg from 300 K gas to liquid, of the equation of Span et al.,
    // J. Phys. Chem. Ref. Data 29 (2000) 1361
    [Fact]
    public void ContentIsThatOfTheReferenceEquation()
    {
        var boiling = Pure("nitrogen", 101325, 70);
        Assert.Equal(77.355, boiling.BubbleK!.Value, 0.001);
        var full = VesselContent.AtLevel(Vessel, null, boiling, Vessel.HeightM);
        Assert.Equal(806.08, full.LiquidKg / Vessel.VolumeM3, 0.02);
        var ten = Pure("nitrogen", 10e5);
        Assert.Equal(103.747, ten.BubbleK!.Value, 0.001);
        Assert.Equal(373.6e3, ten.Gas(300).MassEnthalpy - ten.BubbleEnthalpy, 60.0);
        Assert.Equal(0, ten.GlideK, 1e-6);
    }

    [Fact]
    public void PitchFromTurnsOrHeight()
    {
        double pitch = ColdCoilGeometry.PitchFromTurns(1.8, 0.037, 15);
        Assert.Equal(15, (Coil with { PitchM = pitch }).Turns, 1e-9);
        Assert.Equal(0.2, Coil.HeightM, 1e-12);
        var e = Assert.Throws<ArgumentException>(() => ColdCoilGeometry.PitchFromTurns(1.8, 0.037, 16));
        Assert.Contains("1.8", e.Message);
        Assert.Throws<ArgumentException>(() => ColdCoilGeometry.PitchFromHeight(1.8, 0.037, 2));
    }
}
