using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.EquationsOfState.PengRobinson;

/// <summary>Builds the cubic model from the catalogues.</summary>
public static class CubicModel
{
    /// <summary>
    /// The second-opinion model: Peng-Robinson with <see cref="AlphaKind.BostonMathias"/>, pair parameters of Knapp et
    /// al. (DECHEMA VI, 1982), and a volume translation that gives the reference equation's saturated liquid volume at
    /// 0.7 of the critical temperature (the temperature at which Peneloux et al. anchor theirs). Pairs without a published
    /// parameter take the rule of Chueh and Prausnitz (AIChE J. 13 (1967) 1099),
    /// k_ij = 1 - 8 sqrt(v_i v_j)/(v_i^(1/3) + v_j^(1/3))^3 with critical volumes, and are named in the warnings.
    /// </summary>
    public static PengRobinsonModel Create(IReadOnlyList<string> names)
    {
        var substances = names.Select(SubstanceCatalog.Get).ToArray();
        int n = names.Count;
        var kij = new double[n * n];
        var estimated = new List<string>();
        for (int i = 0; i < n; i++)
            for (int j = i + 1; j < n; j++)
            {
                var pair = PairCatalog.Cubic(names[i], names[j]);
                if (pair is null) estimated.Add($"{names[i]}+{names[j]}");
                kij[i * n + j] = kij[j * n + i] = pair?.Kij ?? FromCriticalVolumes(1 / substances[i].CriticalDensity, 1 / substances[j].CriticalDensity);
            }
        string[] warnings = estimated.Count == 0 ? [] :
            [$"cubic model: no published interaction parameter for {string.Join(", ", estimated)}; estimated from critical volumes"];
        var components = substances.Select(Component).ToArray();
        return new PengRobinsonModel(substances, components, kij, AlphaKind.BostonMathias, warnings);
    }

    /// <summary>
    /// The cubic constants of a substance. Helium takes the classical constants of Gunn, Chueh and Prausnitz (AIChE J. 12
    /// (1966) 937): 10.47 K, 0.676 MPa, acentric factor 0 (values from memory); with its true ones (acentric factor
    /// -0.38) alpha would rise without limit above the critical temperature.
    /// </summary>
    private static CubicComponent Component(Substance s) => s.Name == "helium"
        ? new CubicComponent(10.47, 0.676e6, 0, 0)
        : new CubicComponent(s.CriticalTemperatureK, s.CriticalPressurePa, s.AcentricFactor, VolumeTranslation.Of(s));

    /// <summary>Chueh and Prausnitz's estimate from critical molar volumes (m3/mol).</summary>
    public static double FromCriticalVolumes(double vi, double vj) =>
        1 - 8 * Math.Sqrt(vi * vj) / Math.Pow(Math.Cbrt(vi) + Math.Cbrt(vj), 3);
}
