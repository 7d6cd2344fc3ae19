using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Substances;

namespace Coldwright.Blind.Physics;

/// <summary>
/// Peng-Robinson of 1976 without volume translation and with a set of pair parameters of its own: those of nitrogen with hydrocarbons from memory, of hydrocarbons
/// among themselves by the rule of Chueh and Prausnitz (AIChE J. 13 (1967) 1099). Neither of the program's two models uses these.
/// </summary>
internal static class ThirdPairs
{
    private static readonly Dictionary<string, double> _withNitrogen = new()
    {
        ["methane"] = 0.036, ["ethane"] = 0.05, ["propane"] = 0.08, ["isobutane"] = 0.095, ["ethylene"] = 0.075, ["butane"] = 0.085, ["isopentane"] = 0.09, ["pentane"] = 0.1,
    };

    public static PengRobinsonModel Create(IReadOnlyList<string> names)
    {
        Substance[] all = [.. names.Select(SubstanceCatalog.Get)];
        int n = all.Length;
        var kij = new double[n * n];
        for (int i = 0; i < n; i++)
            for (int j = i + 1; j < n; j++)
            {
                double k = names[i] == "nitrogen" && _withNitrogen.TryGetValue(names[j], out var a) ? a : names[j] == "nitrogen" && _withNitrogen.TryGetValue(names[i], out var b) ? b
                    : CubicModel.FromCriticalVolumes(1 / all[i].CriticalDensity, 1 / all[j].CriticalDensity);
                kij[i * n + j] = kij[j * n + i] = k;
            }
        return new PengRobinsonModel(all, [.. all.Select(s => new CubicComponent(s.CriticalTemperatureK, s.CriticalPressurePa, s.AcentricFactor, 0))], kij, AlphaKind.BostonMathias, []);
    }
}
