using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files.Keys;
using Coldwright.Machine.Files.Tree;
using Coldwright.Machine.Layout;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>Turns the tree of <c>machine.yaml</c> into a description, reporting every problem on the way.</summary>
public static class MachineReader
{
    /// <summary>The description; null when the problems found make it useless.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="problems">Collects what is wrong.</param>
    /// <param name="notes">Collects what was done for the writer.</param>
    /// <param name="molarMassKgPerMol">Molar mass (kg/mol) of a canonical substance name.</param>
    /// <param name="layout">The layout; null when the solvers cannot handle it or it could not be looked at.</param>
    public static MachineDescription? Read(string text, ProblemList problems, List<string> notes, Func<string, double> molarMassKgPerMol, out LoopLayout? layout)
    {
        layout = null;
        if (FileTree.Read(text, problems) is not { } node) return null;
        if (node is not MapNode map)
        {
            problems.Add(node, $"the file must be a group of keys (name, room, charge, operation, parts, lines); here is {node.What}");
            return null;
        }
        var root = new SectionReader(new ReadingContext(problems, notes, molarMassKgPerMol), map, MachineKeys.Root, "the file");
        var room = Room(root);
        // From here on gauge pressures are counted from this room's barometer.
        if (!double.IsNaN(room.PressurePa)) root = root.With(root.Context with { RoomPressurePa = room.PressurePa });
        var charge = Charge(root);
        root = root.With(root.Context with { MixtureKgPerMol = MolarMass(charge.Mixture, molarMassKgPerMol) });
        var parts = Parts(root, out var names);
        var machine = new MachineDescription
        {
            Name = root.Text("name"),
            Room = room,
            Charge = charge,
            Operation = Operation(root),
            Parts = parts,
            Lines = LineReader.Read(root, parts, names, out var portsAreGood),
        };
        MachineChecks.Check(machine, problems);
        // The layout can be followed as soon as all parts and ports are known, whatever else is wrong.
        if (portsAreGood && parts.Count == names.Count && !LoopLayout.TryFind(machine, out layout, out var refusals))
        {
            foreach (var refusal in refusals) problems.Add(refusal.FileLine, refusal.FileLine > 0 ? 1 : 0, refusal.Message);
        }
        return problems.IsEmpty ? machine : null;
    }

    private static RoomDescription Room(SectionReader root)
    {
        var r = root.Section("room", "the room");
        return new RoomDescription
        {
            TemperatureK = r?.Quantity("temperature") ?? double.NaN,
            PressurePa = r?.Quantity("pressure") ?? double.NaN,
            FloorAreaM2 = r?.Quantity("floor-area") ?? double.NaN,
            HeightM = r?.Quantity("height") ?? double.NaN,
            RelativeHumidity = r?.OptionalQuantity("humidity"),
            AirChangesPerHour = (r?.Quantity("air-changes", 0) ?? double.NaN) * 3600,
        };
    }

    private static ChargeDescription Charge(SectionReader root)
    {
        var r = root.Section("charge", "the charge");
        return new ChargeDescription
        {
            Mixture = r?.Mixture("mixture", r.Choice("fractions") == "mass") ?? new Composition(["nitrogen"], [1]),
            MassKg = r?.OptionalQuantity("mass"),
            ReleaseHeightM = r?.Quantity("release-height", 0.6) ?? double.NaN,
            EvacuatedToPa = r?.OptionalQuantity("evacuated-to"),
        };
    }

    private static double MolarMass(Composition mixture, Func<string, double> molarMassKgPerMol) =>
        mixture.Names.Zip(mixture.MoleFractions, (name, x) => x * molarMassKgPerMol(name)).Sum();

    private static OperationDescription Operation(SectionReader root)
    {
        var r = root.Section("operation", "the operation");
        var high = r?.Quantity("high-pressure") ?? double.NaN;
        var low = r?.Quantity("low-pressure") ?? double.NaN;
        if (high <= low)
            r!.Complain("high-pressure", $"high-pressure: {QuantityText.Pressure(high)} is not above the low pressure, {QuantityText.Pressure(low)}");
        return new OperationDescription
        {
            HighPressurePa = high, LowPressurePa = low, StandstillPressurePa = r?.OptionalQuantity("standstill-pressure"), Hold = HeldWord(r?.Choice("hold")),
            SolveFor = r?.Choice("solve-for") == "throttle" ? HeldAnswer.Throttle : HeldAnswer.Charge,
        };
    }

    /// <summary>What a word holds; null for none or an unknown one.</summary>
    public static HeldPressure? HeldWord(string? word) => word switch
    {
        "neither" => HeldPressure.Neither,
        "high" => HeldPressure.High,
        "low" => HeldPressure.Low,
        "both" => HeldPressure.Both,
        _ => null,
    };

    /// <summary>The most parts a machine may have; ten times a large cooler's, few enough to search among.</summary>
    public const int MostParts = 300;

    /// <summary>The parts that could be made; <paramref name="names"/> holds the names of all, so that lines to a broken part are not called unknown.</summary>
    private static List<Part> Parts(SectionReader root, out HashSet<string> names)
    {
        names = new(StringComparer.Ordinal);
        var parts = new List<Part>();
        if (root.Map("parts") is not { } map) return parts;
        if (map.Entries.Count == 0) root.Complain("parts", "there are no parts; known kinds are " + string.Join(", ", PartKinds.Words));
        if (map.Entries.Count > MostParts) root.Complain("parts", $"there are {map.Entries.Count} parts; the limit is {MostParts}");
        foreach (var (name, node) in map.Entries.Take(MostParts))
        {
            names.Add(name.Text);
            if (PartReader.Read(root.Context, name, node) is { } part) parts.Add(part);
        }
        return parts;
    }
}
