using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Machine.ColdVessel;

/// <summary>
/// The temperature that the liquid keeps: the heat that the coil takes from it equals condensed flow x (enthalpy of the drip - enthalpy of the liquid). It
/// holds for liquid drawn off at the rate it condenses as well as for a slowly rising level.
/// </summary>
internal static class SteadyLiquid
{
    /// <summary>K.</summary>
    /// <param name="input">The question; where it gives the liquid's temperature that is the answer.</param>
    /// <param name="march">March along its coil.</param>
    /// <param name="guessK">Near the answer, or not a number.</param>
    /// <param name="runs">Marches made, added to.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">The liquid would freeze.</exception>
    public static double Temperature(ColdVesselInput input, CoilMarch march, double guessK, ref int runs, CancellationToken cancel)
    {
        if (input.LiquidK is { } given) return given;
        var product = input.Product;
        double bubble = product.BubbleK!.Value, inlet = input.Mixture.TemperatureK, feed = ColdVesselModel.FeedEnthalpy(input);
        int count = 0;
        double Excess(double t)
        {
            count++;
            var sums = march.Run(t, null, cancel);
            return sums.HeatW - (feed - product.Liquid(t).MassEnthalpy) * sums.CondensedKgPerS;
        }
        if (input.Coil.SubmergedShare(input.LevelM) <= 0)
        {
            // no coil in the liquid: it is what drips, whatever its temperature
            var sums = march.Run(bubble, null, cancel);
            runs++;
            double Drip(double t) => sums.HeatW - (feed - product.Liquid(t).MassEnthalpy) * sums.CondensedKgPerS;
            return Drip(bubble) <= 0 || Drip(product.ColdestK) >= 0 ? bubble : Brent.Solve(Drip, product.ColdestK, bubble, 1e-12 * bubble);
        }
        // The excess rises with the liquid's temperature; at the bubble point it is not below 0. Walk from the start until its sign changes. The answer
        // may lie a little below the mixture's inlet, since the mixture's pressure falls along the coil and cools it.
        bool guessed = guessK > product.ColdestK && guessK < bubble;
        double from = guessed ? guessK : bubble, atFrom = Excess(from), step = (bubble - inlet) * (guessed ? 0.05 : 1);
        double to = from, atTo = atFrom;
        while (atTo > 0 == atFrom > 0)
        {
            (from, atFrom) = (to, atTo);
            to = atFrom > 0 ? Math.Max(from - step, product.ColdestK) : Math.Min(from + step, bubble);
            if (to == from) break;
            atTo = Excess(to);
            step *= guessed ? 4 : 0.5;
        }
        runs += count;
        if (to == bubble && atTo <= 0) return bubble;
        if (to == from)
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, count, atTo,
                $"the liquid would be cooled below {SpokenAmount.Temperature(to, "0.##")}, the end of its table; it freezes at {SpokenAmount.Temperature(product.FreezingK, "0.##")} and the mixture enters at {SpokenAmount.Temperature(inlet, "0.##")}: a lower level, a warmer mixture or a higher vessel pressure is needed"));
        count = 0;
        // a guess comes from the solves of the band, where a microkelvin is plenty
        double root = Brent.Solve(Excess, to, atTo, from, atFrom, (guessed ? 1e-8 : 1e-12) * bubble);
        runs += count;
        return root;
    }
}
