using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Parts.Compression;

/// <summary>What the machine file says about a compressor, turned into the input of the compressor's model.</summary>
internal sealed record DescribedCompressor
{
    // air speed of a fan that blows on a shell: our assumption
    private const double FanAirSpeed = 3;

    /// <summary>The compressor.</summary>
    public required CompressorMachine Machine { get; init; }
    /// <summary>Its rating sheet, to be used instead of the loss model; null when none is given.</summary>
    public TranslatedMap? Map { get; init; }
    /// <summary>What the nameplate says about the displacement; null without one. Worked out when first asked for, where nothing else hangs on it.</summary>
    public DisplacementEstimate? Estimate => Nameplate?.Value;
    /// <summary>The same before it is worked out; null without a nameplate.</summary>
    public Lazy<DisplacementEstimate>? Nameplate { private get; init; }
    /// <summary>Friction and motor losses over the usual ones by the nameplate's power; null without one.</summary>
    public double? LossScale { get; init; }
    /// <summary>True when the displacement itself is given.</summary>
    public required bool DisplacementGiven { get; init; }
    /// <summary>What was assumed, in words, but for the nameplate's own (<see cref="Estimate"/>).</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }

    /// <summary>True when displacement, nameplate or rating sheet is there.</summary>
    public static bool IsEnough(double? displacementM3, NameplateDescription? plate, RatingSheetDescription? sheet) => displacementM3 is not null || plate is not null || sheet is not null;

    /// <summary>The loop's own compressor.</summary>
    public static DescribedCompressor Of(CompressorPart part, CancellationToken cancel) => Build(Shell(part.Type, part.ClearanceFraction, part.DisplacementM3, part.SpeedRevPerS, part.SupplyFrequencyHz, part.Poles, part.ShellCooling,
        part.ShellConductanceWPerK, part.MaximumDischargeTemperatureK, part.MaximumPressurePa), part.DisplacementM3, part.Nameplate, part.RatingSheet, cancel);

    /// <summary>That of a precooling loop.</summary>
    public static DescribedCompressor Of(PrecoolerLoopDescription loop, CancellationToken cancel) => Build(Shell(loop.Type, 0, loop.DisplacementM3, loop.SpeedRevPerS, loop.SupplyFrequencyHz, loop.Poles, loop.ShellCooling,
        loop.ShellConductanceWPerK, loop.MaximumDischargeTemperatureK, null), loop.DisplacementM3, loop.Nameplate, loop.RatingSheet, cancel);

    private static CompressorMachine Shell(CompressorType type, double clearance, double? displacement, double? speed, double? frequency, int? poles, ShellCoolingWord? cooling,
        double? conductance, double? dischargeK, double? pressurePa)
    {
        var traits = CompressorTraits.For(type == CompressorType.Rotary ? CompressorKind.Rotary : CompressorKind.Reciprocating);
        var limits = new CompressorLimits { DischargePressurePa = pressurePa };
        return new CompressorMachine
        {
            Traits = clearance > 0 ? traits with { ClearanceFraction = clearance } : traits,
            DisplacementM3 = displacement ?? 1e-5,
            SupplyFrequencyHz = frequency ?? 50,
            Poles = poles ?? 2,
            ShaftSpeedRevPerS = speed,
            Cooling = new ShellCooling { ConductanceWPerK = conductance, FanAirSpeedMPerS = cooling == ShellCoolingWord.Fan ? FanAirSpeed : 0 },
            Limits = dischargeK is { } k ? limits with { DischargeLineK = k } : limits,
        };
    }

    private static DescribedCompressor Build(CompressorMachine machine, double? displacement, NameplateDescription? plate, RatingSheetDescription? sheet, CancellationToken cancel)
    {
        var assumptions = new List<string>();
        var warnings = new List<Spoken>();
        if (machine.Cooling is { ConductanceWPerK: null, FanAirSpeedMPerS: > 0 } fan) assumptions.Add(FormattableString.Invariant($"a fan that blows on the shell moves air at {fan.FanAirSpeedMPerS:0.#} m/s (our assumption)"));
        Lazy<DisplacementEstimate>? estimate = null;
        double? scale = null;
        if (plate is not null)
        {
            var start = machine;
            estimate = new(() => Plate.Displacement(plate, start, cancel));
            if (plate.PowerW is { } power)
            {
                var cycle = new RatingCycle(plate.Refrigerant);
                var fitted = NameplateCalibration.Fit(plate.CapacityW, power, cycle, machine, Plate.Conditions(plate, cycle), cancel);
                scale = fitted.LossScale;
                warnings.AddRange(fitted.Warnings.Where(w => w.StartsWith("the rated power", StringComparison.Ordinal)));
                machine = displacement is null ? fitted.Machine : machine with { Traits = fitted.Machine.Traits };
            }
            else if (displacement is null) machine = estimate.Value.Machine;
        }
        var map = sheet is null ? null : TranslatedMap.From(Plate.Map(sheet), cancel);
        if (map is not null) assumptions.Add("flow and power come from the rating sheet, translated to this gas at equal pressure ratio");
        assumptions.Add(machine.Traits.Provenance);
        return new DescribedCompressor
        {
            Machine = machine, Map = map, Nameplate = estimate, LossScale = scale, DisplacementGiven = displacement is not null, Assumptions = [.. assumptions.Distinct()], Warnings = warnings,
        };
    }
}
