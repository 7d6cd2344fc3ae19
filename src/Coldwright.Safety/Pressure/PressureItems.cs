using Coldwright.Machine.Description;
using Coldwright.Materials.Tubes;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Rules;

namespace Coldwright.Safety.Pressure;

/// <summary>Lists everything in a machine that holds pressure and can be rated.</summary>
internal static class PressureItems
{
    /// <summary>Domed ends of unknown form count as dished with a 6 % knuckle, the weakest of the three.</summary>
    public const DomeForm AssumedDome = DomeForm.Torispherical;

    public static IEnumerable<PressureItem> Of(MachineLayout layout, CautionInputs inputs)
    {
        var machine = layout.Machine;
        var (roomK, roomPa) = (machine.Room.TemperatureK, machine.Room.PressurePa);
        foreach (var line in machine.Lines)
            if (line.Tube is { } tube)
            {
                var t = TemperatureK(line, layout, inputs);
                yield return new($"{line.From} to {line.To}", layout.ZoneOf(line), layout.PressurePa(line), TubeLimits.OfTube(tube, t, roomPa), PressureBasis.Tube, t, tube);
            }
        foreach (var part in machine.Parts)
        {
            if (part.MaximumPressurePa is { } stamp)
                yield return new(part.Name, layout.ZoneOf(part), layout.PressurePa(part), stamp, PressureBasis.Stamp, roomK);
            foreach (var (name, tube, zone) in TubeLimits.Of(part))
                yield return new(name, zone, layout.PressurePa(zone), TubeLimits.OfTube(tube, roomK, roomPa), PressureBasis.Tube, roomK, tube, part.MaximumPressurePa is not null);
            if (part is VesselPart { CapThicknessM: { } thickness } vessel && IsCopper(vessel))
                yield return new($"{vessel.Name} ends", Zone.Feed, layout.PressurePa(Zone.Feed), roomPa + CapGaugePa(vessel, thickness, roomK), PressureBasis.Cap, roomK, null, part.MaximumPressurePa is not null);
        }
    }

    /// <summary>True when the allowable stress of annealed copper applies to a vessel.</summary>
    public static bool IsCopper(VesselPart vessel) => vessel.WallMaterial?.StartsWith("copper", StringComparison.Ordinal) ?? true;

    /// <summary>Pressure above the room that the ends of a copper vessel carry, Pa; ends of unknown shape count as flat.</summary>
    public static double CapGaugePa(VesselPart vessel, double thicknessM, double temperatureK)
    {
        var (bore, stress) = (vessel.Tube.InsideDiameterM, TubeRating.AnnealedStressPa(temperatureK));
        return vessel.Caps == CapShape.Domed
            ? DomedCap.GaugePressurePa(AssumedDome, thicknessM, bore, stress)
            : FlatCap.GaugePressurePa(thicknessM, bore, stress);
    }

    /// <summary>Thickness that flat and domed ends of a copper vessel need, m; the domed one is null above the pressures of its formula.</summary>
    public static (double FlatM, double? DomedM) CapThicknessM(VesselPart vessel, double gaugePa, double temperatureK)
    {
        var (bore, stress) = (vessel.Tube.InsideDiameterM, TubeRating.AnnealedStressPa(temperatureK));
        return (FlatCap.ThicknessM(gaugePa, bore, stress), gaugePa <= DomedCap.HighestOverStress * stress ? DomedCap.ThicknessM(AssumedDome, gaugePa, bore, stress) : null);
    }

    /// <summary>The line out of the compressor runs at discharge temperature, every other at that of the room at most.</summary>
    private static double TemperatureK(Line line, MachineLayout layout, CautionInputs inputs) => layout.PartAt(line.From) is CompressorPart compressor
        ? Math.Max(inputs.DischargeTemperatureK ?? compressor.MaximumDischargeTemperatureK, layout.Machine.Room.TemperatureK)
        : layout.Machine.Room.TemperatureK;
}
