using Coldwright.Quantities;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tightness;

/// <summary>
/// A leak from the fall of pressure of a shut-in gas: amount n = V rho(T, p) with the real gas, its slope by weighted least squares.
/// Three causes of uncertainty: the readings' scatter and steps, a drift of the gas away from its thermometer, and the calibration of both sensors.
/// </summary>
public static class LeakTest
{
    private const double YearS = 365.25 * 86400;
    private const double ReferenceK = 293.15;
    // one-sided 95 % of a normal distribution
    private const double OneSided = 1.645;

    /// <summary>Evaluates the test in a record; null with a complaint when it cannot be evaluated.</summary>
    /// <param name="record">The record; its test describes volume and gas.</param>
    /// <param name="complaint">What is missing.</param>
    public static LeakTestResult? Evaluate(RunRecord record, out string complaint)
    {
        var test = record.Test ?? throw new ArgumentException("the record holds no test", nameof(record));
        var warnings = new List<Spoken>();
        if (test.Gas is not { } mixture || test.VolumeM3 is not { } volume)
        {
            complaint = "a leak test needs a gas and the volume it was shut in";
            return null;
        }
        if (ShutInSeries.From(record, test, warnings, out complaint) is not { } series) return null;
        var gas = new GasDensity(mixture);
        if (Fit(series, gas, volume, 0, 0) is not { } fit || Fit(series, gas, volume, series.CommonPa, 0) is not { } movedP || Fit(series, gas, volume, 0, series.CommonK) is not { } movedT)
        {
            complaint = $"the gas has no single state at the readings of the test ({mixture})";
            return null;
        }
        if (gas.HasCondensed)
        {
            complaint = $"part of the gas is liquid at the readings of the test, so its pressure does not count it: warm it up, fill less, or test with nitrogen ({mixture})";
            return null;
        }
        warnings.AddRange(Spoken.All(gas.Warnings));
        double duration = series.DurationS, amount = fit.Line.AtMean, leak = -fit.Line.Slope, pressure = series.PressuresPa.Average(), temperature = series.TemperaturesK.Average();
        (string Name, double MolS)[] parts =
        [
            ("scatter and steps of the readings", Math.Max(fit.Line.SlopeUncertainty, amount / pressure * series.StepPa / Math.Sqrt(6) / duration)),
            ("gas warmer or colder than its thermometer", amount / temperature * test.TemperatureDriftK / duration),
            ("calibration of the gauge", Math.Abs(movedP.Line.Slope - fit.Line.Slope)),
            ("calibration of the thermometer", Math.Abs(movedT.Line.Slope - fit.Line.Slope)),
            ("volume", Math.Abs(leak) * test.VolumeUncertainty),
        ];
        var u = Math.Sqrt(parts.Sum(p => p.MolS * p.MolS));
        var upper = Math.Max(0, leak + OneSided * u);
        var charge = ChargeLosses.Of(record, test, gas, pressure, temperature, Math.Max(leak, 0), upper, warnings);
        var (verdict, needed) = Judge(test, gas, leak, u, duration, charge);
        var (t0, t1) = (series.TimesS[0], series.TimesS[^1]);
        var readings = Lines(series);
        complaint = "";
        return new LeakTestResult
        {
            Gas = mixture.Names.Count == 1 ? mixture.Names[0] : mixture.ToString(),
            DurationS = duration,
            Points = series.Count,
            MeanPressurePa = pressure,
            ChangeAsReadPa = readings.Pressure.Slope * (t1 - t0),
            TemperatureChangeK = readings.Temperature.Slope * (t1 - t0),
            ChangeCorrectedPa = fit.Line.Slope * (t1 - t0) / amount * pressure * fit.PressureOverAmount,
            AmountMol = amount,
            LeakMolS = leak,
            UncertaintyMolS = u,
            Parts = parts,
            LeakPaM3S = leak * gas.GasConstant * ReferenceK,
            UncertaintyPaM3S = u * gas.GasConstant * ReferenceK,
            LeakKgPerYear = leak * gas.MolarMass * YearS,
            UncertaintyKgPerYear = u * gas.MolarMass * YearS,
            UpperLimitMolS = upper,
            Verdict = verdict,
            AllowedKgPerYear = test.AllowedKgPerYear,
            NeededS = needed,
            Charge = charge,
            Series = fit.Points,
            Warnings = warnings,
        };
    }

    private static (LineFit Line, IReadOnlyList<(double, double, double)> Points, double PressureOverAmount)? Fit(ShutInSeries series, GasDensity gas, double volume, double addPa, double addK)
    {
        var (amounts, own) = (new double[series.Count], new double[series.Count]);
        var points = new List<(double, double, double)>();
        var stiffness = 1.0;
        for (var i = 0; i < series.Count; i++)
        {
            double p = series.PressuresPa[i] + addPa, t = series.TemperaturesK[i] + addK, dp = 1e-3 * p;
            if (gas.At(t, p) is not { } rho || gas.At(t, p + dp) is not { } more) return null;
            amounts[i] = volume * rho;
            own[i] = volume * (more - rho) / dp * series.OwnPa[i];
            if (i == series.Count / 2) stiffness = dp / p / ((more - rho) / rho);
            points.Add((series.TimesS[i], p, amounts[i]));
        }
        return (LineFit.Of(series.TimesS, amounts, own), points, stiffness);
    }

    private static (LineFit Pressure, LineFit Temperature) Lines(ShutInSeries series)
    {
        var one = Enumerable.Repeat(1.0, series.Count).ToArray();
        return (LineFit.Of(series.TimesS, [.. series.PressuresPa], one), LineFit.Of(series.TimesS, [.. series.TemperaturesK], one));
    }

    // The limit is on the charge. Each kind of flow turns the test's leak into one of the charge; the unfavourable one counts for passing, the favourable one for failing.
    private static (TightnessVerdict, double? NeededS) Judge(TightnessDescription test, GasDensity gas, double leak, double u, double duration, IReadOnlyList<ChargeLoss> charge)
    {
        if (test.AllowedKgPerYear is not { } allowed) return (TightnessVerdict.NoLimit, null);
        // kg of charge per mol of test gas and year, in each kind of flow; without a machine the test gas itself
        var factors = charge.Count > 0 ? charge.Select(c => c.UpperKgPerYear / Math.Max((leak + OneSided * u) * YearS, double.Epsilon)).ToArray() : [gas.MolarMass];
        if (Math.Max(0, leak + OneSided * u) * factors.Max() * YearS <= allowed) return (TightnessVerdict.Passed, null);
        if ((leak - OneSided * u) * factors.Min() * YearS > allowed) return (TightnessVerdict.Failed, null);
        // Drift and steps weigh in inverse proportion to the length of the test.
        var room = allowed / (factors.Max() * YearS) - Math.Max(leak, 0);
        return (TightnessVerdict.CannotTell, room > 0 ? duration * OneSided * u / room : null);
    }
}
