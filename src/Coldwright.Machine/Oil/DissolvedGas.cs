using Coldwright.Fluids.Substances;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Machine.Oil;

/// <summary>
/// Gas dissolved in a compressor's oil by Raoult's law in mole fractions: X_i = p_i / p_sat,i(T). The vapour pressure is Wilson's, which goes on
/// above a substance's critical temperature: p_sat = p_c exp(5.37 (1 + omega)(1 - T_c/T)) (A modified Redlich-Kwong equation of state, AIChE 65th
/// meeting, 1968). The gas is taken as perfect, the oil as one substance that does not evaporate. Valid up to half of the mixture as gas; right
/// within a fifth for ethane and heavier, a factor of 1.7 for methane, judged by values from memory (docs/theory/oil.md).
/// </summary>
public static class DissolvedGas
{
    private const double MostShare = 0.9;

    /// <summary>Vapour pressure, Pa; above the critical temperature continued.</summary>
    /// <param name="substance">Substance.</param>
    /// <param name="temperatureK">K.</param>
    public static double VapourPressurePa(Substance substance, double temperatureK) =>
        substance.CriticalPressurePa * Math.Exp(5.37 * (1 + substance.AcentricFactor) * (1 - substance.CriticalTemperatureK / temperatureK));

    /// <summary>Adds the dissolved moles of every substance to a sum.</summary>
    /// <param name="substances">Substances of the gas.</param>
    /// <param name="y">Mole fractions of the gas above the oil.</param>
    /// <param name="pressurePa">Pa absolute.</param>
    /// <param name="temperatureK">Of the oil, K.</param>
    /// <param name="oilMol">Oil, mol.</param>
    /// <param name="moles">Sum, mol.</param>
    /// <exception cref="SolveException">The gas would condense into the oil without end.</exception>
    public static void Add(IReadOnlyList<Substance> substances, ReadOnlySpan<double> y, double pressurePa, double temperatureK, double oilMol, Span<double> moles)
    {
        double share = 0;
        for (int i = 0; i < y.Length; i++) share += y[i] * pressurePa / VapourPressurePa(substances[i], temperatureK);
        if (!(share < MostShare)) throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, share,
            $"at {SpokenAmount.Pressure(pressurePa, "0.##")} and {SpokenAmount.Temperature(temperatureK, "0.#")} the gas would condense into the compressor's oil: a warmer shell, less of the heaviest gas, or no molar mass of the oil in the file"));
        double perFraction = oilMol / (1 - share);
        for (int i = 0; i < y.Length; i++) moles[i] += perFraction * y[i] * pressurePa / VapourPressurePa(substances[i], temperatureK);
    }
}
