namespace Coldwright.Cli.Tables;

/// <summary>The columns of a table of states.</summary>
internal static class TableColumns
{
    public const string Mixture = "mixture";
    public const string Temperature = "T_K";
    public const string Pressure = "p_Pa";
    public const string Enthalpy = "h_J_mol";
    public const string Entropy = "s_J_molK";
    public const string VapourFraction = "vapour_fraction";

    /// <summary>The columns two of which are known in each row.</summary>
    public static IReadOnlyList<string> Known { get; } = [Temperature, Pressure, Enthalpy, Entropy, VapourFraction];

    /// <summary>The columns that are always computed.</summary>
    public static IReadOnlyList<string> Computed { get; } =
        ["status", "phases", "rho_mol_m3", "cp_J_molK", "w_m_s", "mu_Pa_s", "k_W_mK", "x", "y", "rho_liquid_mol_m3", "rho_vapour_mol_m3"];
}
