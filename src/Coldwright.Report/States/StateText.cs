using System.Text;
using Coldwright.Fluids.IdealGas;
using Coldwright.Fluids.States;
using Coldwright.Report.Terminal;

namespace Coldwright.Report.States;

/// <summary>A state as a table in the terminal: one column for the whole, one for each phase when there are several, and a block per model.</summary>
public static class StateText
{
    private const int Columns = 88;

    /// <summary>The text, ending with a line end.</summary>
    /// <param name="report">The state.</param>
    /// <param name="colour">True to use ANSI colours.</param>
    public static string Write(StateReport report, bool colour)
    {
        var (style, text) = (new TerminalStyle(colour), new StringBuilder());
        var readout = new Readout(report.Units, report.RoomPressurePa, typographic: false);
        var several = report.States.Count > 1;
        foreach (var answer in report.States)
        {
            var state = answer.State;
            text.Append(style.Bold(Heading(state, readout, answer.Model))).Append('\n');
            foreach (var row in Table(report.Names, answer, style)) text.Append(row).Append('\n');
            foreach (var warning in answer.Warnings)
                foreach (var (line, i) in Wrapping.Wrap(warning, Columns - 6).Select((l, i) => (l, i)))
                    text.Append(i == 0 ? style.Warm("note") + "  " : "      ").Append(line).Append('\n');
            foreach (var method in answer.TransportMethods)
                foreach (var line in Wrapping.Wrap($"{method}.", Columns - 6))
                    text.Append("      ").Append(style.Quiet(line)).Append('\n');
            text.Append('\n');
        }
        if (several) text.Append(style.Quiet(Spread(report.States[0], report.States[1], readout))).Append('\n');
        return text.Append(style.Quiet($"Caloric zero: {CaloricZero.Text}.")).Append('\n').ToString();
    }

    // A state is asked for at exact figures, so they are shown exactly, unlike in a report.
    private static string Heading(FluidState state, Readout readout, string model) =>
        $"{F(readout.TemperatureValue(state.TemperatureK), "0.0####")} {readout.TemperatureSymbol} ({readout.TemperatureBeside(state.TemperatureK)}), " +
        $"{F(state.PressurePa, "0.###")} Pa ({readout.Pressure(state.PressurePa)}, {readout.PressureBeside(state.PressurePa)}), {model} model";

    private static IEnumerable<string> Table(IReadOnlyList<string> names, ModelState answer, TerminalStyle style)
    {
        var state = answer.State;
        var rows = Rows(names, answer).ToArray();
        var (name, unit) = (rows.Max(r => r.Name.Length), rows.Max(r => r.Unit.Length));
        string[] heads = state.Phases.Count > 1 ? ["whole", .. state.Phases.Select(p => Word(p.Kind))] : [Word(state.Phases[0].Kind)];
        var widths = heads.Select((h, i) => Math.Max(h.Length, rows.Max(r => i < r.Cells.Length ? r.Cells[i].Length : 0))).ToArray();
        yield return style.Quiet($"  {"".PadRight(name)}  {"".PadRight(unit)}{string.Concat(heads.Select((h, i) => "   " + h.PadLeft(widths[i])))}");
        foreach (var row in rows)
            yield return $"  {row.Name.PadRight(name)}  {style.Quiet(row.Unit.PadRight(unit))}{string.Concat(row.Cells.Select((c, i) => "   " + c.PadLeft(widths[i])))}".TrimEnd();
    }

    private static IEnumerable<(string Name, string Unit, string[] Cells)> Rows(IReadOnlyList<string> names, ModelState answer)
    {
        var s = answer.State;
        (string, string, string[]) Row(string name, string unit, string whole, Func<PhaseState, string> each) =>
            (name, unit, s.Phases.Count > 1 ? [whole, .. s.Phases.Select(each)] : [each(s.Phases[0])]);

        yield return Row("amount", "mol/mol", "1", p => F(p.Fraction, "0.0000"));
        yield return Row("molar mass", "g/mol", F(s.MolarMass * 1e3, "0.000"), p => F(p.MolarMass * 1e3, "0.000"));
        yield return Row("density", "mol/m3", F(s.MolarDensity, "0.00"), p => F(p.MolarDensity, "0.00"));
        yield return Row("density", "kg/m3", F(s.MolarDensity * s.MolarMass, "0.000"), p => F(p.MolarDensity * p.MolarMass, "0.000"));
        yield return Row("enthalpy", "J/mol", F(s.MolarEnthalpy, "0.00"), p => F(p.MolarEnthalpy, "0.00"));
        yield return Row("entropy", "J/(mol K)", F(s.MolarEntropy, "0.000"), p => F(p.MolarEntropy, "0.000"));
        yield return Row("heat capacity cp", "J/(mol K)", "", p => F(p.MolarHeatCapacity, "0.000"));
        yield return Row("speed of sound", "m/s", "", p => F(p.SpeedOfSound, "0.00"));
        if (s.Phases.Any(p => p.ViscosityPaS is not null)) yield return Row("viscosity", "µPa s", "", p => F(p.ViscosityPaS * 1e6, "0.00"));
        if (s.Phases.Any(p => p.ConductivityWPerMK is not null)) yield return Row("conductivity", "mW/(m K)", "", p => F(p.ConductivityWPerMK * 1e3, "0.00"));
        if (answer.SurfaceTensionNPerM is { } tension) yield return Row("surface tension", "mN/m", F(tension * 1e3, "0.000"), _ => "");
        if (names.Count == 1) yield break;
        for (var i = 0; i < names.Count; i++)
        {
            var k = i;
            yield return Row(names[k], "mol/mol", Fraction(s.Composition[k]), p => Fraction(p.Composition[k]));
        }
    }

    private static string Spread(ModelState a, ModelState b, Readout readout) =>
        $"{b.Model} against {a.Model}: density {Relative(b.State.MolarDensity, a.State.MolarDensity, readout)}, enthalpy {readout.Fixed(b.State.MolarEnthalpy - a.State.MolarEnthalpy, 1)} J/mol.";

    private static string Relative(double value, double to, Readout readout) => $"{readout.Fixed(100 * (value / to - 1), 2)} %";

    private static string Word(PhaseKind kind) => FluidState.Name(kind).Replace('_', ' ');

    private static string Fraction(double x) => x is > 0 and < 1e-4 ? F(x, "0.0E+0") : F(x, "0.00000");

    private static string F(double? value, string format) => value is { } number ? F(number, format) : "";

    private static string F(double value, string format) => value.ToString(format, System.Globalization.CultureInfo.InvariantCulture);
}
