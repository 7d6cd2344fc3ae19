using System.Globalization;
using Coldwright.Fluids.States;

namespace Coldwright.Cli.Tables;

/// <summary>Writes a row's answer: the columns that were read, unchanged, then those that were not given and those that are computed.</summary>
/// <param name="header">The columns that were read.</param>
internal sealed class AnswerColumns(IReadOnlyList<string> header)
{
    /// <summary>The columns that are written.</summary>
    public IReadOnlyList<string> Header { get; } = [.. header, .. TableColumns.Known.Except(header), .. TableColumns.Computed];

    /// <summary>One record.</summary>
    /// <param name="row">What was read.</param>
    /// <param name="state">The answer; null when there is none.</param>
    /// <param name="status"><c>ok</c>, or the word that says why not.</param>
    public IEnumerable<string> Row(StateRow row, FluidState? state, string status) => Header.Select((column, i) =>
    {
        if (i < row.Cells.Count && row.Cells[i].Length > 0) return row.Cells[i];
        if (column == "status") return status;
        return state is null ? "" : Value(column, row.Mixture.Names, state);
    });

    private static string Value(string column, IReadOnlyList<string> names, FluidState state)
    {
        var single = state.Phases.Count == 1 ? state.Phases[0] : null;
        // Of two phases x is the liquid and y the vapour, or the second liquid where there is no vapour.
        var (y, x) = state.Phases.Count != 2 ? (null, null) : state.Phases[0].Kind == PhaseKind.Vapour ? (state.Phases[0], state.Phases[1]) : (state.Phases[1], state.Phases[0]);
        return column switch
        {
            TableColumns.Temperature => Number(state.TemperatureK),
            TableColumns.Pressure => Number(state.PressurePa),
            TableColumns.Enthalpy => Number(state.MolarEnthalpy),
            TableColumns.Entropy => Number(state.MolarEntropy),
            TableColumns.VapourFraction => Number(state.VapourFraction),
            "phases" => state.PhaseNames,
            "rho_mol_m3" => Number(state.MolarDensity),
            "cp_J_molK" => Number(single?.MolarHeatCapacity),
            "w_m_s" => Number(single?.SpeedOfSound),
            "mu_Pa_s" => Number(single?.ViscosityPaS),
            "k_W_mK" => Number(single?.ConductivityWPerMK),
            "x" => Fractions(names, x),
            "y" => Fractions(names, y),
            "rho_liquid_mol_m3" => Number(x?.MolarDensity),
            "rho_vapour_mol_m3" => Number(y is { Kind: PhaseKind.Vapour } ? y.MolarDensity : null),
            // Columns of the writer's own keep their empty cells.
            _ => "",
        };
    }

    // Shortest text that reads back as the same number.
    private static string Number(double? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Fractions(IReadOnlyList<string> names, PhaseState? phase) =>
        phase is null ? "" : string.Join(';', names.Select((name, i) => $"{name}={Number(phase.Composition[i])}"));
}
