using System.Globalization;
using Coldwright.Quantities;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tightness;

/// <summary>A proof test: was the pressure reached, was it held long enough, and did it fall by more than the temperature explains.</summary>
public static class ProofTest
{
    // A full pipe of water: expansion of water less that of copper over the compressibility of water, at 20 °C, stiff walls. From memory: 2.1e-4 1/K, 0.5e-4 1/K, 4.6e-10 1/Pa.
    private const double WaterPaPerK = (2.1e-4 - 0.5e-4) / 4.6e-10;
    private const double OneSided = 1.645;

    /// <summary>Evaluates the test in a record; null with a complaint when it cannot be evaluated.</summary>
    /// <param name="record">The record; its test describes pressure, hold and drop.</param>
    /// <param name="complaint">What is missing.</param>
    public static ProofTestResult? Evaluate(RunRecord record, out string complaint)
    {
        var test = record.Test ?? throw new ArgumentException("the record holds no test", nameof(record));
        if (test.ProofPressurePa is not { } proof || test.HoldS is not { } hold || test.AllowedDropPa is not { } allowed)
        {
            complaint = "a proof test needs proof-pressure, hold and allowed-drop";
            return null;
        }
        var warnings = new List<Spoken>();
        if (ShutInSeries.From(record, test, warnings, out complaint) is not { } series) return null;
        var highest = series.PressuresPa.Max();
        var first = Enumerable.Range(0, series.Count).FirstOrDefault(i => series.PressuresPa[i] >= proof, -1);
        if (test.Gas is not null) warnings.Add("the test was made with gas: what bursts flies; a proof test is made with water");
        if (first < 0) return Result(series, TightnessVerdict.Failed, Spoken.Of($"{Gauge(proof, record.RoomPressurePa)} was not reached; the highest reading is {Gauge(highest, record.RoomPressurePa)}"), 0, 0, 0, 0, 0, 0);

        // Held from the first reading at the pressure to the last one before it was let off; the letting off itself, a fall of half of what is allowed from
        // one reading to the next at the very end, does not belong to it.
        var last = first;
        while (last + 1 < series.Count && series.PressuresPa[last + 1] >= Math.Max(0.9 * proof, proof - 2 * allowed)) last++;
        while (last > first + 2 && last + 1 < series.Count && series.PressuresPa[last - 1] - series.PressuresPa[last] > allowed / 2) last--;
        double held = series.TimesS[last] - series.TimesS[first], temperature = series.TemperaturesK[first];
        if (last - first < 2) return Result(series, TightnessVerdict.CannotTell, Spoken.Of($"only {last - first + 1} readings stand between reaching the pressure and letting it off; 3 are needed"), held, 0, 0, 0, 0, 0);

        var perK = WaterPaPerK;
        if (test.Gas is { } mixture)
        {
            var gas = new GasDensity(mixture);
            if (gas.PressurePerK(temperature, series.PressuresPa[first]) is not { } slope || gas.HasCondensed)
            {
                complaint = $"the gas has no single state at the readings of the test ({mixture})";
                return null;
            }
            perK = slope;
        }
        else warnings.Add(Spoken.Of($"a full pipe of water gains about {SpokenAmount.PressureDifference(perK, "0.#")} for {SpokenAmount.Difference(1, "0")} (from memory; stiff walls, no air left inside), so the temperature decides; let water and pipe stand until they agree"));
        var n = last - first + 1;
        var times = series.TimesS.Slice(first, n);
        var corrected = Enumerable.Range(first, n).Select(i => series.PressuresPa[i] - perK * (series.TemperaturesK[i] - temperature)).ToArray();
        var read = LineFit.Of(times, [.. series.PressuresPa.Skip(first).Take(n)], [.. series.OwnPa.Skip(first).Take(n)]);
        var line = LineFit.Of(times, corrected, [.. series.OwnPa.Skip(first).Take(n)]);
        var kelvin = LineFit.Of(times, [.. series.TemperaturesK.Skip(first).Take(n)], [.. Enumerable.Repeat(1.0, n)]).Slope * held;
        // The water figure is good to a third at best: walls give way and some air stays.
        var slopeShare = test.Gas is null ? 0.33 : 0.02;
        double drop = -line.Slope * held;
        var u = Math.Sqrt(Math.Pow(line.SlopeUncertainty * held, 2) + series.StepPa * series.StepPa / 6 + Math.Pow(perK * test.TemperatureDriftK, 2) + Math.Pow(slopeShare * perK * kelvin, 2));
        var (verdict, reason) = held < hold * (1 - 1e-6)
            ? (TightnessVerdict.Failed, Spoken.Of($"held for {Minutes(held)}; {Minutes(hold)} were asked for"))
            : drop - OneSided * u > allowed ? (TightnessVerdict.Failed, Spoken.Of($"fell by {Bar(drop)}, temperature taken out; {Bar(allowed)} is allowed"))
            : drop + OneSided * u <= allowed ? (TightnessVerdict.Passed, Spoken.Of($"held for {Minutes(held)}; fell by {Bar(drop)}, temperature taken out, of {Bar(allowed)} allowed"))
            : (TightnessVerdict.CannotTell, Spoken.Of($"fell by {Bar(drop)} ± {Bar(u)}, temperature taken out; {Bar(allowed)} is allowed, which is inside the uncertainty"));
        return Result(series, verdict, reason, held, -read.Slope * held, drop, u, kelvin, perK);

        ProofTestResult Result(ShutInSeries s, TightnessVerdict verdict, Spoken reason, double heldS, double asRead, double dropPa, double uPa, double kelvins, double pressurePerK) => new()
        {
            Medium = test.Gas is null ? "water" : test.Gas.Names.Count == 1 ? test.Gas.Names[0] : test.Gas.ToString(),
            ProofPressurePa = proof,
            HighestPa = highest,
            GaugePa = s.CommonPa,
            Reached = first >= 0,
            HeldS = heldS,
            HoldS = hold,
            DropAsReadPa = asRead,
            DropPa = dropPa,
            UncertaintyPa = uPa,
            AllowedDropPa = allowed,
            TemperatureChangeK = kelvins,
            PressurePerK = pressurePerK,
            Verdict = verdict,
            Reason = reason,
            Series = [.. Enumerable.Range(0, s.Count).Select(i => (s.TimesS[i], s.PressuresPa[i]))],
            Warnings = warnings,
        };
    }

    private static SpokenAmount Gauge(double pa, double roomPa) => new(SpokenKind.Pressure, pa, ((pa - roomPa) / 1e5).ToString("0.0#", CultureInfo.InvariantCulture) + " bar gauge");

    private static SpokenAmount Bar(double pa) => SpokenAmount.PressureDifference(pa, Math.Abs(pa) >= 1e5 ? "0.0#" : "0.0##");

    private static string Minutes(double s) => (s / 60).ToString("0.#", CultureInfo.InvariantCulture) + " min";
}
