using Coldwright.Machine.Description;

namespace Coldwright.Safety.Layout;

/// <summary>Inside volume and outside surface of what is described; compressor, aftercooler and precooler are not described by size.</summary>
internal static class ZoneVolume
{
    /// <summary>Volume of a zone, m3. The low side of a tube-in-tube exchanger counts the whole outer bore, which is cautious.</summary>
    public static double M3(Zone zone, MachineDescription machine)
    {
        var layout = new MachineLayout(machine);
        return machine.Lines.Where(l => layout.ZoneOf(l) == zone).Sum(l => (l.Tube?.BoreAreaM2 ?? 0) * l.LengthM)
            + machine.Parts.Sum(p => Tubes(p).Where(t => t.Zone == zone).Sum(t => t.Tube.BoreAreaM2 * t.LengthM))
            + (zone == Zone.High ? machine.PartsOf<BufferPart>().Sum(b => b.VolumeM3) : 0);
    }

    /// <summary>Outside surface of the tubes of a closed volume, m2, ends of vessels with it.</summary>
    public static double SurfaceM2(ClosedVolume volume, MachineLayout layout)
    {
        var zones = volume.Lines.Select(layout.ZoneOf).Append(volume.Zone).ToHashSet();
        return volume.Lines.Sum(l => Math.PI * (l.Tube?.OutsideDiameterM ?? 0) * l.LengthM)
            + volume.Parts.Sum(p => Tubes(p).Where(t => zones.Contains(t.Zone)).Sum(t => Math.PI * t.Tube.OutsideDiameterM * t.LengthM))
            // Domed ends have up to twice the face of a flat one.
            + volume.Parts.OfType<VesselPart>().Sum(v => Math.PI / 2 * v.Tube.OutsideDiameterM * v.Tube.OutsideDiameterM * (v.Caps == CapShape.Domed ? 2 : 1));
    }

    private static IEnumerable<(Tube Tube, double LengthM, Zone Zone)> Tubes(Part part) => part switch
    {
        RecuperatorPart { LengthM: { } length } r => Both(r, length),
        CoilPart { Tube: { } tube, LengthM: { } length } => [(tube, length, Zone.Low)],
        VesselPart v => [(v.Tube, v.LengthM, Zone.Feed)],
        _ => [],
    };

    private static IEnumerable<(Tube, double, Zone)> Both(RecuperatorPart r, double length)
    {
        if (r.HighTube is { } high) yield return (high, length * (r.HighSide == HighSide.Inner ? r.Tubes : 1), Zone.High);
        if (r.LowTube is { } low) yield return (low, length * (r.HighSide == HighSide.Outer ? r.Tubes : 1), Zone.Low);
    }
}
