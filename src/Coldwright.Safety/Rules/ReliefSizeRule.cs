using System.Globalization;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Relief;

namespace Coldwright.Safety.Rules;

/// <summary>Bore of the relief devices on closed cold volumes and on the compressor's high side, against what the heat or the pump asks for.</summary>
internal static class ReliefSizeRule
{
    // Ten percent above the set pressure while it blows, as API 520 allows a single device.
    private const double Accumulation = 1.1;

    // Kdr when the device was not tested: a plain opening 0.62 times 0.9, from memory; burst discs have the same figure in API 520.
    private const double PlainOpening = 0.62 * 0.9;
    private const double GasConstant = 8.314462618;

    /// <summary>What some reliefs have to pass together.</summary>
    /// <param name="Reliefs">The devices.</param>
    /// <param name="NeedM">Bore for the heat of the standard, or for the pump, m.</param>
    /// <param name="FireM">Bore for a fire on the bare metal, m; that for the pump again where it is the pump that fills.</param>
    /// <param name="Words">Where the figures come from, in words.</param>
    /// <param name="Source">Publications.</param>
    internal sealed record Need(IReadOnlyList<ReliefPart> Reliefs, double NeedM, double FireM, string Words, string Source);

    public static IEnumerable<Finding> Apply(MachineLayout layout, CautionInputs inputs, ICollection<string> warnings, CancellationToken cancellation) =>
        Needs(layout, inputs, warnings, cancellation).SelectMany(n => Judge(n, layout, inputs));

    /// <summary>What the reliefs of every closed volume must pass.</summary>
    internal static IEnumerable<Need> Needs(MachineLayout layout, CautionInputs inputs, ICollection<string> warnings, CancellationToken cancellation)
    {
        foreach (var volume in layout.ClosedVolumes())
        {
            cancellation.ThrowIfCancellationRequested();
            var reliefs = volume.Reliefs.ToArray();
            if (reliefs.Length == 0) continue;
            if (volume.HoldsLiquid && !volume.HasRoom && Cold(volume, reliefs, layout, warnings) is { } cold) yield return cold;
            if (volume.TakesDischarge && volume.Borders.OfType<CompressorPart>().FirstOrDefault() is { } compressor
                && Pumped(compressor, reliefs.Where(r => layout.ZoneOf(r) == Zone.High).ToArray(), layout, inputs) is { } pumped) yield return pumped;
        }
    }

    private static Need? Cold(ClosedVolume volume, ReliefPart[] reliefs, MachineLayout layout, ICollection<string> warnings)
    {
        var room = layout.Machine.Room;
        var surface = ZoneVolume.SurfaceM2(volume, layout);
        var pressure = RelievingPa(reliefs, room.PressurePa);
        if (surface <= 0 || pressure <= room.PressurePa || Condition(volume, pressure, layout.Machine, warnings) is not { } condition) return null;
        var flow = HeatedVessel.FlowKgPerS(surface, condition.HeatPerMassJPerKg);
        var heat = GasReliefArea.BoreM(HeatedVessel.AreaM2(flow, condition.SpecificVolumeM3PerKg, pressure, condition.Gas.HeatCapacityRatio, PlainOpening));
        var air = CryogenicContainerFlow.FireFreeAirM3PerS(CryogenicContainerFlow.BareGasFactor(condition.Gas, condition.HeatPerMassJPerKg), surface);
        var fire = GasReliefArea.BoreM(CryogenicContainerFlow.AreaM2(air, pressure, room.PressurePa, PlainOpening));
        var needs = string.Create(CultureInfo.InvariantCulture, $"bore for {HeatedVessel.StandardHeatFluxWPerM2 / 1000:0} kW/m2 on {surface:0.000} m2 {heat * 1e3:0.0} mm; in a fire on the bare metal {fire * 1e3:0.0} mm");
        return new(reliefs, heat, fire, needs, HeatedVessel.Source + "; fire: " + CryogenicContainerFlow.Source);
    }

    private static Need? Pumped(CompressorPart compressor, ReliefPart[] reliefs, MachineLayout layout, CautionInputs inputs)
    {
        var machine = layout.Machine;
        var room = machine.Room;
        if (reliefs.Length == 0 || compressor.DisplacementM3 is null || compressor.SpeedRevPerS is null) return null;
        var pressure = RelievingPa(reliefs, room.PressurePa);
        if (pressure <= room.PressurePa) return null;
        var mixture = machine.Charge.Mixture;
        var molarMass = mixture.Names.Zip(mixture.MoleFractions).Sum(p => p.Second * inputs.MolarMassKgPerMol(p.First));
        // Whole swept volume of ideal gas at room temperature: more than the compressor delivers.
        var flow = compressor.SweptM3PerS * machine.Operation.LowPressurePa * molarMass / (GasConstant * room.TemperatureK);
        var hot = inputs.DischargeTemperatureK ?? compressor.MaximumDischargeTemperatureK;
        var bore = GasReliefArea.BoreM(GasReliefArea.AreaM2(new(hot, 1, molarMass, 1.2), flow, pressure, room.PressurePa, PlainOpening));
        var needs = string.Create(CultureInfo.InvariantCulture, $"bore that passes all the compressor sweeps, {flow * 1e3:0.0} g/s, is {bore * 1e3:0.0} mm");
        return new(reliefs, bore, bore, needs, GasReliefArea.Source + "; flow of a compressor against a shut valve: EN 13136, from memory");
    }

    private static IEnumerable<Finding> Judge(Need need, MachineLayout layout, CautionInputs inputs)
    {
        var (reliefs, needM, fireM, needs, source) = need;
        var names = string.Join(" and ", reliefs.Select(r => r.Name));
        var bores = reliefs.Select(r => Bore(r, layout, inputs)).ToArray();
        if (bores.Any(b => b is null))
        {
            yield return new("relief-bore-unknown", Grade.Note, names, null, needM, "m", needs + "; no bore is given", source,
                "a device too small lets the pressure run on past its set pressure", "choose a device and a line at least this wide, as short as can be")
            { AtLeast = true };
            yield break;
        }
        var have = Math.Sqrt(bores.Sum(b => b!.Value * b.Value));
        if (have < needM)
            yield return new("relief-too-small", Grade.Serious, names, have, needM, "m", needs + "; the least bore of device and line counts", source,
                "the pressure runs on past the set pressure", "fit a wider device and a wider, short line to it")
            { AtLeast = true };
        else if (have < fireM)
            yield return new("relief-small-in-fire", Grade.Caution, names, have, fireM, "m", needs, source,
                "in a fire the vessel bursts although its relief is open", "fit a wider device, or keep the cooler away from anything that burns")
            { AtLeast = true };
        else
            yield return new("relief-size", Grade.Note, names, have, needM, "m", needs, source, "none while line and device stay open", "check every year that it is free") { AtLeast = true };
    }

    /// <summary>The narrower of the device and its line, m; null when neither is known.</summary>
    private static double? Bore(ReliefPart relief, MachineLayout layout, CautionInputs inputs)
    {
        var line = layout.Machine.Lines.Where(l => layout.PartAt(l.To) == relief || layout.PartAt(l.From) == relief).Select(l => l.Tube?.InsideDiameterM).Min();
        return relief.BoreM is { } bore ? Math.Min(bore, line ?? bore) : line;
    }

    private static double RelievingPa(ReliefPart[] reliefs, double roomPa) => roomPa + Accumulation * (reliefs.Max(r => r.SetPressurePa) - roomPa);

    private static ReliefCondition? Condition(ClosedVolume volume, double pressurePa, MachineDescription machine, ICollection<string> warnings)
    {
        string[] names;
        double[] z;
        if (volume.Zone == Zone.Feed)
        {
            if (machine.PartsOf<FeedPart>().FirstOrDefault()?.Gas is not { } gas) return null;
            (names, z) = ([gas], [1]);
        }
        else
        {
            var present = machine.Charge.Mixture.Names.Zip(machine.Charge.Mixture.MoleFractions).Where(p => p.Second > 0).ToArray();
            (names, z) = (present.Select(p => p.First).ToArray(), present.Select(p => p.Second).ToArray());
        }
        try
        {
            var model = ReferenceModel.Create(names);
            var cold = Math.Max(model.Substances.Max(s => s.TripleTemperatureK) * (names.Length == 1 ? 1.02 : 0.8), 60);
            return ReliefCondition.Worst(model, z, pressurePa, cold, machine.Room.TemperatureK);
        }
        catch (SolveException e)
        {
            // The size is then unknown, and the reader is told so.
            warnings.Add($"relief of {volume.Name} could not be sized: {e.Message}");
            return null;
        }
    }
}
