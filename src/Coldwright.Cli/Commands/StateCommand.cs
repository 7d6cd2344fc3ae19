using System.CommandLine;
using Coldwright.Cli.States;
using Coldwright.Cli.Tables;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;
using Coldwright.Report.States;

namespace Coldwright.Cli.Commands;

/// <summary><c>state MIXTURE</c>: one state point, or a table of them.</summary>
internal static class StateCommand
{
    private static readonly Argument<string?> _mixture = new("MIXTURE") { Arity = ArgumentArity.ZeroOrOne, Description = "such as nitrogen, or \"nitrogen 0.35, methane 0.65\"" };
    private static readonly Option<string?> _temperature = Text("-T", "TEMPERATURE", "such as \"-150 °C\" or \"123.15 K\"", "--temperature");
    private static readonly Option<string?> _pressure = Text("-p", "PRESSURE", "such as \"17 barg\", \"260 psig\" or \"18 bara\"; Pa, kPa and MPa are absolute", "--pressure");
    private static readonly Option<string?> _enthalpy = Text("--enthalpy", "H", "such as \"-1200 J/mol\"");
    private static readonly Option<string?> _entropy = Text("--entropy", "S", "such as \"-35 J/(mol K)\"");
    private static readonly Option<string?> _vapourFraction = Text("--vapour-fraction", "SHARE", "moles of vapour per mole: 0 bubble point, 1 dew point", "--vapor-fraction");
    private static readonly Option<bool> _byMass = new("--mass") { Description = "the mixture's fractions are by mass" };
    private static readonly Option<string?> _table = Text("--table", "IN.csv", "many states: columns mixture and two of T_K, p_Pa, h_J_mol, s_J_molK, vapour_fraction");
    private static readonly Option<string?> _out = Text("--out", "OUT.csv", "where the table's answers go");

    public static Command Create(Terminal terminal)
    {
        var command = new Command("state", $"A state point from two values: {KnownPair.Pairs}.")
        {
            _mixture, _temperature, _pressure, _enthalpy, _entropy, _vapourFraction, _byMass, _table, _out,
        };
        command.SetAction(parsed => Run(parsed, Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(ParseResult parsed, Faces faces)
    {
        faces.SayUnused("state", report: false, model: true);
        if (parsed.GetValue(_table) is { } table) return Table(parsed, table, faces);
        if (parsed.GetValue(_out) is not null) throw new InputException("--out", "it goes with --table; one state is written to standard output");

        var text = parsed.GetValue(_mixture) ?? throw new InputException("state", "a mixture is missing", "for example: coldwright state nitrogen -T \"-150 °C\" -p \"17 barg\"");
        var mixture = MixtureReading.Read(text, parsed.GetValue(_byMass), out var problems, out var notes) ?? throw new InputException("MIXTURE", problems);
        var known = Known(parsed);

        var states = new List<ModelState>();
        foreach (var cubic in faces.Model switch { ModelChoice.Both => (bool[])[false, true], ModelChoice.Cubic => [true], _ => [false] })
        {
            var engine = new StateEngine(mixture, StateEngine.CreateFlash(mixture.Names, cubic));
            var state = engine.Solve(known, out var warnings, out var outside) ?? throw new InputException("", outside!, "choose a state inside the range");
            states.Add(new ModelState(engine.ModelName, state.State, [.. notes, .. warnings]) { SurfaceTensionNPerM = state.SurfaceTensionNPerM, TransportMethods = state.Methods });
        }
        var report = new StateReport { Names = mixture.Names, States = states, RoomPressurePa = StandardRoom.PressurePa, Units = faces.Units };
        faces.Terminal.Output.Write(faces.Json ? StateJson.Write(report) : StateText.Write(report, faces.Colour));
        if (!faces.Json) faces.Terminal.Output.WriteLine($"Gauge pressures are counted from {StandardRoom.Text}.");
        return ExitCode.Done;
    }

    private static int Table(ParseResult parsed, string input, Faces faces)
    {
        var target = parsed.GetValue(_out) ?? throw new InputException("--table", "where to write is missing", "add --out OUT.csv");
        if (parsed.GetValue(_mixture) is { } mixture) throw new InputException("--table", $"the mixture stands in the table's column 'mixture', and '{Faces.Shorten(mixture)}' is given too", "leave one of them out");
        var point = ((Option<string?>[])[_temperature, _pressure, _enthalpy, _entropy, _vapourFraction]).FirstOrDefault(o => parsed.GetValue(o) is not null);
        if (point is not null) throw new InputException("--table", $"the values stand in the table's columns, and {point.Name} is given too", "leave one of them out");
        if (faces.Model == ModelChoice.Both) throw new InputException("--model", "a table is made with one model, not with both", "write --model reference or --model cubic");
        return StateTable.Run(input, target, parsed.GetValue(_byMass), faces.Model == ModelChoice.Cubic, faces);
    }

    private static KnownPair Known(ParseResult parsed)
    {
        var problems = new List<string>();
        double? Read(Option<string?> option, QuantityKind kind)
        {
            if (parsed.GetValue(option) is not { } text) return null;
            if (Quantity.TryParse(text, kind, StandardRoom.PressurePa, out var value, out var problem, plainPascalIsAbsolute: true)) return value;
            problems.Add($"{option.Name}: {problem.Message}");
            return null;
        }

        var known = new KnownPair
        {
            TemperatureK = Read(_temperature, QuantityKind.Temperature),
            PressurePa = Read(_pressure, QuantityKind.Pressure),
            MolarEnthalpy = Read(_enthalpy, QuantityKind.MolarEnthalpy),
            MolarEntropy = Read(_entropy, QuantityKind.MolarEntropy),
            VapourFraction = Read(_vapourFraction, QuantityKind.Fraction),
        };
        if (problems.Count > 0) throw new InputException("", problems);
        if (known.IsSolvable) return known;
        throw new InputException("state", known.Count == 2 ? "these two values are no pair that is solved" : $"two values make a state, and {known.Count} {(known.Count == 1 ? "is" : "are")} given",
            $"give {KnownPair.Pairs}");
    }

    private static Option<string?> Text(string name, string help, string description, params string[] aliases) => new(name, aliases) { HelpName = help, Description = description };
}
