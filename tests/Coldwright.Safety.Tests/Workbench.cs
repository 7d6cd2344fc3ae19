using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Materials.Tubes;

namespace Coldwright.Safety.Tests;

/// <summary>A machine with nothing wrong beyond cold itself, and ways to break it.</summary>
internal static class Workbench
{
    public const double Bar = 1e5;

    public static readonly CautionInputs Inputs = new() { MolarMassKgPerMol = MolarMass };

    public static MachineDescription Sound { get; } = new()
    {
        Name = "bench",
        Room = new() { TemperatureK = 295, PressurePa = 101325, FloorAreaM2 = 30, HeightM = 2.7 },
        Charge = new() { Mixture = new(["nitrogen", "methane", "ethane", "propane", "isobutane"], [0.3, 0.25, 0.2, 0.15, 0.1]), MassKg = 0.1, EvacuatedToPa = 50 },
        Operation = new() { HighPressurePa = 19 * Bar, LowPressurePa = 2.5 * Bar },
        Parts =
        [
            new CompressorPart { Name = "compressor", Type = CompressorType.Rotary, IsentropicEfficiency = [(1, 0.6)], MotorEfficiency = 0.8, MaximumDischargeTemperatureK = 383, MaximumPressurePa = 28 * Bar },
            new AftercoolerPart { Name = "aftercooler", ApproachK = 5, MaximumPressurePa = 28 * Bar },
            new PrecoolerPart { Name = "precooler", OutletTemperatureK = 250, EvaporatorDifferenceK = 8, CondenserDifferenceK = 12, CarnotShare = 0.4, MaximumPressurePa = 28 * Bar },
            new RecuperatorPart { Name = "recuperator", ConductanceWPerK = 40, HighTube = TubeOf("1/4 in ACR"), LowTube = TubeOf("1/2 in ACR") },
            new ThrottlePart { Name = "capillary", Capillary = new() { BoreM = 0.9e-3, LengthM = 2 } },
            new CoilPart { Name = "coil", DifferenceK = 3, Tube = TubeOf("1/4 in ACR") },
            new VesselPart { Name = "vessel", Tube = TubeOf("1-5/8 in ACR"), LengthM = 0.2, MaximumPressurePa = 25 * Bar },
            new ColdBoxPart { Name = "box", Inside = (0.3, 0.3, 0.4), WallM = 0.1, Insulation = "polyurethane-foam" },
            new FeedPart { Name = "bottle", Gas = "argon", PressurePa = 15 * Bar },
            new ReliefPart { Name = "burst-disc", SetPressurePa = 20 * Bar, BoreM = 0.012 },
            new ReliefPart { Name = "loop-relief", SetPressurePa = 24 * Bar, BoreM = 0.01 },
            new ValvePart { Name = "outlet", MaximumPressurePa = 40 * Bar },
            new FlaskPart { Name = "flask", VolumeM3 = 0.0005 },
        ],
        Lines =
        [
            Join("compressor", "aftercooler", "3/8 in ACR"), Join("aftercooler", "precooler.high", "3/8 in ACR"),
            Join("precooler.high", "recuperator.high", "1/4 in ACR"), Join("recuperator.high", "capillary"), Join("capillary", "coil"),
            Join("coil", "recuperator.low"), Join("recuperator.low", "compressor", "1/2 in ACR"),
            Join("bottle", "recuperator.feed", "1/8 in ACR"), Join("recuperator.feed", "vessel", "1/8 in ACR"),
            Join("aftercooler", "loop-relief", "3/8 in ACR"),
            Join("vessel", "burst-disc", "1/4 in ACR"), Join("vessel", "outlet", "1/4 in ACR"), Join("outlet", "flask", "1/4 in ACR"),
        ],
    };

    public static Tube TubeOf(string text) => TubeTable.TryFind(text, out var outside, out var wall)
        ? new(text, outside, wall)
        : throw new ArgumentException(text);

    public static Line Join(string from, string to, string? tube = null) =>
        new() { From = from, To = to, Tube = tube is null ? null : TubeOf(tube), LengthM = 0.5 };

    /// <summary>The machine with the part of that name changed.</summary>
    public static MachineDescription With<T>(this MachineDescription machine, Func<T, T> change) where T : Part =>
        machine with { Parts = machine.Parts.Select(p => p is T part ? change(part) : p).ToArray() };

    public static MachineDescription WithGas(this MachineDescription machine, string gas) => machine.With<FeedPart>(f => f with { Gas = gas });

    public static MachineDescription WithMixture(this MachineDescription machine, string[] names, double[] fractions) =>
        machine with { Charge = machine.Charge with { Mixture = new Composition(names, fractions) } };

    /// <summary>The machine without the named part and the lines that touch it.</summary>
    public static MachineDescription Without(this MachineDescription machine, string part) => machine with
    {
        Parts = machine.Parts.Where(p => p.Name != part).ToArray(),
        Lines = machine.Lines.Where(l => l.From.Split('.')[0] != part && l.To.Split('.')[0] != part).ToArray(),
    };

    /// <summary>The machine with a new part put into the line from one port to another.</summary>
    public static MachineDescription Insert(this MachineDescription machine, Part part, string from, string to) => machine with
    {
        Parts = [.. machine.Parts, part],
        Lines = machine.Lines.SelectMany(l => l.From == from && l.To == to ? [l with { To = part.Name }, l with { From = part.Name }] : new[] { l }).ToArray(),
    };

    // Molar masses, kg/mol: IUPAC standard atomic weights.
    private static double MolarMass(string name) => name switch
    {
        "nitrogen" => 0.0280134,
        "argon" => 0.039948,
        "oxygen" => 0.0319988,
        "methane" => 0.0160425,
        "ethane" => 0.030069,
        "propane" => 0.0440956,
        "isobutane" or "butane" => 0.0581222,
        _ => throw new ArgumentException(name),
    };
}
