using Coldwright.Machine.Description;

namespace Coldwright.Design.Blending;

/// <summary>What each gas and each limit is worth at a mixture.</summary>
internal sealed class BlendWorth(string[] gases, double[] x, BlendOptions options, WorstCase worst, MachineDescription machine, double ownDischargeK, Func<MachineDescription, BlendOptions, BlendRater> rater, CancellationToken cancel)
{
    private const double PerCent = 0.01, LastStep = 0.005, Felt = 0.02, Relax = 0.1, RelaxK = 10, FeltK = 6;

    /// <summary>A per cent of the molecules more and less of each gas, and none of it.</summary>
    /// <param name="model">Rates.</param>
    /// <param name="without">Best merit without a gas.</param>
    public IEnumerable<GasSensitivity> Gases(BlendRater model, IReadOnlyList<(int Gas, double Merit)> without)
    {
        double here = model.Of(x).Merit;
        for (int i = 0; i < gases.Length; i++)
        {
            double? Change(double by) => Fractions.Off(x, i, by) is { } off && model.Of(off) is { IsGood: true } p ? p.Merit - here : null;
            // of a gas that is not in it: a per cent let in
            double? more = x[i] > 0 ? Change(PerCent) : model.Of(Fractions.Clean([.. x.Select((v, k) => k == i ? PerCent : v * (1 - PerCent))])) is { IsGood: true } p ? p.Merit - here : null;
            yield return new(gases[i], x[i], more, x[i] > 0 ? Change(-PerCent) : null, without.Where(w => w.Gas == i).Select(w => (double?)w.Merit).Max());
        }
    }

    /// <summary>Both pressures with a tenth more room, and each limit that is felt, because the mixture stands at it, with a little more: what that brings.</summary>
    /// <param name="choice">The mixture's figures.</param>
    public IEnumerable<LimitPrice> Limits(BlendChoice choice)
    {
        var limits = options.Limits;
        double here = worst.Cubic(x, double.NegativeInfinity);
        double Gain(BlendLimits relaxed, OperationDescription? pressures = null)
        {
            var with = new WorstCase(rater(pressures is null ? machine : machine with { Operation = pressures }, options with { Limits = relaxed }), null, options.FillingError);
            // a limit that may be passed need not be
            return Math.Max(0, new LinearSteps(with.Raters, with.CubicRater.Options, cancel).From(x, LastStep).Merit - here);
        }
        var at = machine.Operation;
        yield return new("high pressure", "Pa", at.HighPressurePa, (1 + Relax) * at.HighPressurePa, Gain(limits, at with { HighPressurePa = (1 + Relax) * at.HighPressurePa }));
        yield return new("low pressure", "Pa", at.LowPressurePa, (1 - Relax) * at.LowPressurePa, Gain(limits, at with { LowPressurePa = (1 - Relax) * at.LowPressurePa }));
        if (limits.Flammable is { } f && choice.Flammable > f - 0.03) yield return new("share of gases that burn", "1", f, Math.Min(1, f + Relax), Gain(limits with { Flammable = Math.Min(1, f + Relax) }));
        if (limits.PricePerKg is { } price && choice.PricePerKg > (1 - 2 * Felt) * price) yield return new("price of a kilogram", "", price, (1 + Relax) * price, Gain(limits with { PricePerKg = (1 + Relax) * price }));
        if (choice.Cubic.Freezing is { } ice && ice.Margin < 1.5 * limits.FreezingMargin) yield return new($"freezing margin of {ice.Gas}", "1", limits.FreezingMargin, 1 + 0.5 * (limits.FreezingMargin - 1), Gain(limits with { FreezingMargin = 1 + 0.5 * (limits.FreezingMargin - 1) }));
        if (limits.OneLiquid) yield return new("one liquid before the throttle", "1", 1, null, Gain(limits with { OneLiquid = false }));
        double hottest = limits.DischargeK ?? ownDischargeK;
        if (choice.Cubic.DischargeK > hottest - FeltK) yield return new("discharge temperature", "K", hottest, hottest + RelaxK, Gain(limits with { DischargeK = hottest + RelaxK }));
    }
}
