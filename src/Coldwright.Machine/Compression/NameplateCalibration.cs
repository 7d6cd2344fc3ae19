using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Machine.Compression;

/// <summary>A machine fitted to a rated capacity and a rated power.</summary>
/// <param name="Machine">The machine, with its displacement and <see cref="CompressorTraits.LossScale"/> found.</param>
/// <param name="LossScale">Friction and motor losses over those of the usual machine of its kind.</param>
/// <param name="CoolingCapacityW">As given back, W.</param>
/// <param name="ElectricalPowerW">As given back, W.</param>
/// <param name="Performance">At the rating conditions.</param>
/// <param name="Warnings">What a person must be told.</param>
public sealed record CalibratedCompressor(CompressorMachine Machine, double LossScale, double CoolingCapacityW, double ElectricalPowerW,
    CompressorPerformance Performance, IReadOnlyList<Spoken> Warnings);

/// <summary>
/// Fits the two numbers that a nameplate can settle: the displacement to the capacity, and the scale of friction and
/// motor losses to the power. With both known the flow and power at other duties are trusted more.
/// </summary>
public static class NameplateCalibration
{
    /// <summary>Flow uncertainty after the fit, one standard deviation; our assumption.</summary>
    public const double FlowUncertainty = 0.05;
    /// <summary>Power uncertainty after the fit, one standard deviation; our assumption.</summary>
    public const double PowerUncertainty = 0.07;
    private const double LeastScale = 0.1, MostScale = 5, UsualLow = 0.5, UsualHigh = 2, CapacityMet = 1e-10, PowerMet = 2e-11;
    private const int MostTrials = 20;

    /// <summary>The fit.</summary>
    /// <param name="capacityW">Rated cooling capacity, W.</param>
    /// <param name="powerW">Rated electrical power of the compressor alone (not of fans), W.</param>
    /// <param name="refrigerant">Rated refrigerant or blend.</param>
    /// <param name="machine">The machine to start from.</param>
    /// <param name="conditions">State points of the rating.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">The power cannot be met with losses from a tenth to five times the usual ones.</exception>
    public static CalibratedCompressor Fit(double capacityW, double powerW, string refrigerant, CompressorMachine machine, RatingConditions conditions, CancellationToken cancel = default) =>
        Fit(capacityW, powerW, new RatingCycle(refrigerant), machine, conditions, cancel);

    /// <summary>The fit, on a refrigerant whose saturation was asked for already.</summary>
    /// <param name="capacityW">Rated cooling capacity, W.</param>
    /// <param name="powerW">Rated electrical power of the compressor alone (not of fans), W.</param>
    /// <param name="cycle">Rated refrigerant.</param>
    /// <param name="machine">The machine to start from.</param>
    /// <param name="conditions">State points of the rating.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">The power cannot be met with losses from a tenth to five times the usual ones.</exception>
    public static CalibratedCompressor Fit(double capacityW, double powerW, RatingCycle cycle, CompressorMachine machine, RatingConditions conditions, CancellationToken cancel = default)
    {
        InputCheck.Within(powerW, 5, 1e6, "W", nameof(powerW));
        string refrigerant = cycle.Refrigerant;
        NameplateDisplacement.Check(capacityW, machine, conditions);
        (CompressorMachine Machine, CompressorPerformance Performance, double CapacityW) best = (machine, null!, 0);
        double perMole = NameplateDisplacement.Cooling(cycle, conditions), wanted = powerW / capacityW;
        var duty = cycle.Duty(conditions);
        // power over capacity hardly hangs on the displacement, which follows in proportion from run to run
        double Off(double logScale)
        {
            var tried = best.Machine with { Traits = machine.Traits with { LossScale = Math.Exp(logScale) } };
            var performance = cycle.Compressor(tried).Run(duty, cancel);
            double capacity = performance.MolarFlow * perMole;
            best = (tried with { DisplacementM3 = tried.DisplacementM3 * capacityW / capacity }, performance, capacity);
            return performance.ElectricalPowerW / capacity - wanted;
        }

        double low = Off(Math.Log(LeastScale)), high = Off(Math.Log(MostScale));
        if (low > 0 || high < 0)
            throw new ArgumentException(FormattableString.Invariant(
                $"{nameof(powerW)} is {powerW:0.#} W; with {capacityW:0.#} W of cooling on {refrigerant} a {machine.Traits.Kind.ToString().ToLowerInvariant()} machine takes from {(low + wanted) * capacityW:0.#} to {(high + wanted) * capacityW:0.#} W. Is the power that of the compressor alone, and are the rating conditions those of the sheet?"), nameof(powerW));
        double found = Brent.Solve(Off, Math.Log(LeastScale), low, Math.Log(MostScale), high, 1e-3);
        // the last digits of both at once: capacity goes with the displacement, power over capacity with the losses, and what is left over corrects that
        double slope = (high - low) / Math.Log(MostScale / LeastScale), before = double.NaN, ratioBefore = double.NaN;
        for (int i = 0; ; i++)
        {
            double ratio = Off(found);
            // the displacement has just been matched to the run before it
            if (i > 0 && Math.Abs(best.CapacityW / capacityW - 1) < CapacityMet && Math.Abs(best.Performance.ElectricalPowerW / powerW - 1) < PowerMet) break;
            if (i == MostTrials) break;
            if (i > 0 && found != before && ratio != ratioBefore) slope = (ratio - ratioBefore) / (found - before);
            (before, ratioBefore) = (found, ratio);
            found -= ratio / slope;
        }
        double scale = Math.Exp(found);
        List<Spoken> warnings = [.. best.Performance.Warnings];
        if (scale is < UsualLow or > UsualHigh)
            warnings.Add(FormattableString.Invariant($"the rated power asks for friction and motor losses {scale:0.##} times the usual ones: the nameplate may mean other conditions or another kind of machine"));
        var fitted = best.Machine with
        {
            Traits = best.Machine.Traits with
            {
                FlowUncertainty = Math.Min(FlowUncertainty, machine.Traits.FlowUncertainty),
                PowerUncertainty = Math.Min(PowerUncertainty, machine.Traits.PowerUncertainty),
                Provenance = FormattableString.Invariant($"{machine.Traits.Provenance}; displacement and losses fitted to a nameplate of {capacityW:0.#} W cooling and {powerW:0.#} W on {refrigerant}"),
            },
        };
        return new CalibratedCompressor(fitted, scale, best.CapacityW, best.Performance.ElectricalPowerW, best.Performance, warnings);
    }
}
