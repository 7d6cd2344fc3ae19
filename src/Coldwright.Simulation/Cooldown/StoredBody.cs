using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Description;
using Coldwright.Materials.Solids;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>A mass that has to be cooled with the load.</summary>
/// <param name="Name">In words.</param>
/// <param name="MassKg">kg.</param>
/// <param name="Capacity">Heat capacity at a temperature (K), J/K.</param>
internal sealed record StoredBody(string Name, double MassKg, Func<double, double> Capacity)
{
    private const string TubeMetal = "copper-dhp";

    /// <summary>Heat given up between two temperatures (K), J.</summary>
    public double HeatJ(double warmK, double coldK)
    {
        const int panels = 200;
        double sum = 0;
        for (int i = 0; i <= panels; i++) sum += (i is 0 or panels ? 1 : i % 2 == 1 ? 4 : 2) * Capacity(coldK + (warmK - coldK) * i / panels);
        return sum * (warmK - coldK) / panels / 3;
    }

    /// <summary>What is at the load's temperature: vessel, coil, cold lines, half of what crosses the wall, the gas in the vessel.</summary>
    public static IReadOnlyList<StoredBody> AtLoad(Hardware h, List<string> said)
    {
        var bodies = new List<StoredBody>();
        var copper = SolidLibrary.Default.Find(TubeMetal);
        if (h.Layout.Vessel is { } v)
        {
            var geometry = Parts.ColdEndRater.Vessel(v);
            if (v.CapThicknessM is { } cap) geometry = geometry with { CapWallM = cap };
            bodies.Add(Solid(v.Name, geometry.WallMassKg(), SolidLibrary.Default.Find(geometry.Material)));
            if (h.Layout.Feed is { } feed) bodies.Add(Gas(feed, geometry, h.RoomK));
        }
        else if (h.Layout.Block is { } block) said.Add($"the file says nothing of the mass of {block.Name}: only its coil and the cold lines are counted as stored heat");
        if (h.Layout.Coil is { Tube: { } tube, LengthM: { } length } coil) bodies.Add(Solid(coil.Name, copper.Density!.KgPerM3 * tube.MetalAreaM2 * length, copper));
        double lines = 0;
        foreach (var line in h.Machine.Lines)
            if (line.Place == Place.ColdBox && line.Tube is { } t) lines += copper.Density!.KgPerM3 * t.MetalAreaM2 * line.LengthM;
        if (lines > 0) bodies.Add(Solid("cold lines", lines, copper));
        if (h.Enclosure(h.RoomK) is { } box)
            foreach (var group in box.Penetrations.Where(p => !Parts.BoxEnclosure.EndsWarm(p)).GroupBy(p => p.Material))
                if (group.Key is { Density: { } density, SpecificHeatCurve: not null })
                    bodies.Add(Solid($"half of the {group.Key.Name} through the wall", 0.5 * group.Sum(p => p.AreaM2 * p.LengthM) * density.KgPerM3, group.Key));
        return bodies;
    }

    private static StoredBody Solid(string name, double massKg, SolidMaterial m) => new(name, massKg, k => massKg * m.SpecificHeat(k).Value);

    // the fill valve is shut: what the vessel held warm, at constant volume
    private static StoredBody Gas(FeedPart feed, VesselGeometry vessel, double roomK)
    {
        var model = Fluids.EquationsOfState.MultiFluid.ReferenceModel.Create([feed.Gas]);
        var flash = new Fluids.PhaseEquilibrium.Flash(model);
        var warm = flash.TemperaturePressure(roomK, feed.PressurePa, [1.0]);
        double thin = flash.TemperaturePressure(roomK, 1e4, [1.0]).MolarEnthalpy - flash.TemperaturePressure(roomK - 20, 1e4, [1.0]).MolarEnthalpy;
        double moles = warm.MolarDensity * vessel.VolumeM3, capacity = moles * (thin / 20 - model.GasConstant);
        return new($"{feed.Gas} in the vessel", moles * model.Substances[0].MolarMass, _ => capacity);
    }
}
