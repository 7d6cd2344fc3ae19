using System.Globalization;
using Coldwright.Quantities;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;
using Coldwright.Runs.Tightness;

namespace Coldwright.Report.Runs;

/// <summary>Sentences and rows that terminal and page share.</summary>
internal static class RunWords
{
    /// <summary>What the record holds, in one sentence.</summary>
    public static string Extent(RunReport report, RunUnits units)
    {
        var record = report.Record;
        var from = record.Start is { Year: > 2000 } start ? $" from {start.AddSeconds(record.FirstS).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)}" : "";
        return $"{Count(record.Channels.Count, "channel")} over {RunUnits.Duration(record.LastS - record.FirstS)}{from}; gauge pressures counted from {units.Barometer(record.RoomPressurePa)}.";
    }

    /// <summary>How the log was read, in one sentence; empty without a log.</summary>
    public static string Log(RunRecord record) => record.Log is not { } log ? "Readings noted by hand, no log." :
        $"{log.File}: {Count(log.Rows, "row")}, one every {log.StepS.ToString("0.###", CultureInfo.InvariantCulture)} s; {log.Delimiter} between cells, decimal {log.Decimal}, {log.TimeForm}."
        + (log.Unused.Count > 0 ? $" Not used: {string.Join(", ", log.Unused.Take(12))}{(log.Unused.Count > 12 ? $" and {log.Unused.Count - 12} more" : "")}." : "");

    /// <summary>Name of a sensor with its class.</summary>
    public static string Sensor(SensorDescription sensor) => sensor.Grade.Length > 0 ? $"{sensor.Kind.Word}, class {sensor.Grade}" : sensor.Kind.Word;

    /// <summary>One standard deviation at the lowest and the highest value.</summary>
    public static (string Lowest, string Highest) Uncertainty(RunChannel c, RunUnits units) =>
        (units.Spread(c.Measured, SensorUncertainty.Combine(c.AtLowest)), units.Spread(c.Measured, SensorUncertainty.Combine(c.AtHighest)));

    /// <summary>An event in words.</summary>
    public static string Event(RunEvent e, RunUnits units)
    {
        var what = e.At.Length > 0 ? $"{e.Word} {e.At}" : e.Word;
        if (e.MassKg is { } mass) what += $": {units.WithSpread(mass * 1e3, (e.MassUncertaintyKg ?? 0) * 1e3, "g")}";
        return e.Note.Length > 0 ? $"{what}{(e.MassKg is null ? ": " : ", ")}{e.Note}" : what;
    }

    /// <summary>An event in two or three words.</summary>
    public static string Brief(RunEvent e) => e.At.Length > 0 ? $"{e.Word} {e.At}" : e.Word;

    /// <summary>When a fault was: one moment or two.</summary>
    public static string When(Fault f, RunUnits units) => f.ToS - f.FromS < 0.5 ? units.Moment(f.FromS) : $"{units.Moment(f.FromS)} to {units.Moment(f.ToS)}";

    /// <summary>The answer of a test in one sentence; empty without a test.</summary>
    public static string Verdict(RunReport report, RunUnits units)
    {
        var answer = report.Answer;
        if (answer.Complaint.Length > 0) return $"The test cannot be evaluated: {answer.Complaint}.";
        if (answer.Proof is { } proof) return $"{Word(proof.Verdict)}: {units.Readout.Say(proof.Reason)}.";
        if (answer.Leak is not { } leak) return "";
        var size = leak.IsSeen
            ? $"it leaks {units.WithSpread(leak.LeakMolS, leak.UncertaintyMolS, "mol/s")}"
            : $"no leak stands out of the uncertainty; it is smaller than {Power(leak.UpperLimitMolS, units)} mol/s (95 %)";
        if (leak.AllowedKgPerYear is not { } allowed) return $"{char.ToUpperInvariant(size[0])}{size[1..]}.";
        var limit = $"{Grams(allowed, units)} of charge a year {(leak.Verdict == TightnessVerdict.Failed ? "were" : "are")} allowed";
        var more = leak.Verdict == TightnessVerdict.CannotTell
            ? leak.NeededS is { } needed ? $"; a test of about {RunUnits.Duration(needed)} would tell" : "; with this leak no longer test will pass"
            : "";
        return $"{Word(leak.Verdict)}: {size}; {limit}{more}.";
    }

    /// <summary>Figures of a leak test: name, value, note.</summary>
    public static IEnumerable<(string Name, string Value, string Note)> Leak(LeakTestResult leak, RunUnits units)
    {
        yield return ("Gas, mean pressure", $"{leak.Gas}, {units.Readout.PressureFull(leak.MeanPressurePa)}", $"{leak.Points} points over {RunUnits.Duration(leak.DurationS)}");
        yield return ("Pressure changed by", units.Drop(leak.ChangeAsReadPa), $"while the gas changed by {units.Spread(Measured.Temperature, leak.TemperatureChangeK)}");
        yield return ("Temperature taken out", units.Drop(leak.ChangeCorrectedPa), "real gas, straight line through all points");
        yield return ("Leak", units.WithSpread(leak.LeakMolS, leak.UncertaintyMolS, "mol/s"), leak.IsSeen ? "" : "not seen: within twice its uncertainty of zero");
        yield return ("", units.WithSpread(leak.LeakPaM3S, leak.UncertaintyPaM3S, "Pa m3/s"), units.Readout.Say(Spoken.Of($"at {SpokenAmount.Celsius(293.15, "0")}")));
        yield return ("", units.WithSpread(leak.LeakKgPerYear * 1e3, leak.UncertaintyKgPerYear * 1e3, "g/year"), $"of {leak.Gas}");
        yield return ("Uncertain because of", leak.Parts.MaxBy(p => p.MolS).Name, "the largest of five causes");
    }

    /// <summary>One row for each way of flowing: flow, loss a year, a tenth gone, shift, what goes first.</summary>
    public static IEnumerable<string[]> ChargeRows(LeakTestResult leak, RunUnits units) => leak.Charge.Select(c => new[]
    {
        c.Flow,
        leak.IsSeen ? Grams(c.KgPerYear, units) : $"below {Grams(c.UpperKgPerYear, units)}",
        leak.IsSeen && c.TenthLostS is { } tenth ? $"in {RunUnits.Duration(tenth)}" : c.TenthLostUpperS is { } earliest ? $"not before {RunUnits.Duration(earliest)}" : "never",
        c.First.Length == 0 ? "never" : leak.IsSeen && c.ShiftS is { } shift ? $"in {RunUnits.Duration(shift)}" : c.ShiftUpperS is { } least ? $"not before {RunUnits.Duration(least)}" : "never",
        c.First.Length == 0 ? "" : $"{c.First} first, {units.Readout.Figures(c.FirstRelative, 3)} times as fast as all",
    });

    /// <summary>Headings of <see cref="ChargeRows"/>.</summary>
    public static string[] ChargeHeadings(double shift) => ["flow through the leak", ">charge lost a year", ">a tenth is gone", $">a mole fraction moves by {shift.ToString("0.###", CultureInfo.InvariantCulture)}", "order"];

    /// <summary>Figures of a proof test: name, value, note.</summary>
    public static IEnumerable<(string Name, string Value, string Note)> Proof(ProofTestResult proof, RunUnits units)
    {
        yield return ("Filled with", proof.Medium, "");
        yield return ("Asked for", units.Value(Measured.Pressure, proof.ProofPressurePa), $"for {RunUnits.Duration(proof.HoldS)}");
        yield return ("Highest reading", units.Value(Measured.Pressure, proof.HighestPa), $"the gauge is good to {units.Spread(Measured.Pressure, proof.GaugePa)}");
        if (!proof.Reached) yield break;
        yield return ("Held for", RunUnits.Duration(proof.HeldS), "");
        yield return ("Fell, as read", units.Drop(proof.DropAsReadPa), $"while it warmed by {units.Spread(Measured.Temperature, proof.TemperatureChangeK)}");
        yield return ("Fell, temperature taken out", $"{units.Drop(proof.DropPa)} ± {units.Drop(proof.UncertaintyPa)}", $"{units.Drop(proof.PressurePerK)} for each kelvin");
        yield return ("Allowed", units.Drop(proof.AllowedDropPa), "");
    }

    /// <summary>Everything that was assumed or should be known.</summary>
    public static IEnumerable<Spoken> Notes(RunReport report)
    {
        foreach (var warning in report.Record.Warnings) yield return warning;
        // The same words for several channels are said once.
        var said = report.Record.Channels.SelectMany(c => Spoken.All(c.Assumptions).Concat(Cold(c)).Select(text => (text, c.Name)));
        foreach (var group in said.GroupBy(s => s.text, s => s.Name)) yield return Spoken.Of($"{string.Join(", ", group)}: {group.Key}");
        foreach (var warning in report.Answer.Leak?.Warnings ?? report.Answer.Proof?.Warnings ?? []) yield return warning;
    }

    private static IEnumerable<Spoken> Cold(RunChannel c)
    {
        if (c.AtLowest.Any(p => p.Source.Contains("not specified", StringComparison.Ordinal)))
            yield return Spoken.Of($"below {SpokenAmount.Celsius(233.15, "0")} the class promises nothing; the limit of class 3 is taken, which such wire need not keep. A dip in boiling nitrogen gives an 'offset' and an 'uncertainty' of your own");
    }

    /// <summary>A word with its number.</summary>
    public static string Count(int n, string word) => string.Create(CultureInfo.InvariantCulture, $"{n} {word}{(n == 1 ? "" : "s")}");

    private static string Word(TightnessVerdict verdict) => verdict switch
    {
        TightnessVerdict.Passed => "Passed",
        TightnessVerdict.Failed => "Failed",
        TightnessVerdict.CannotTell => "Cannot tell",
        _ => "Measured",
    };

    private static string Grams(double kg, RunUnits units) => units.Readout.Figures(kg * 1e3, 2) + " g";

    private static string Power(double value, RunUnits units)
    {
        if (value == 0) return "0";
        var power = (int)Math.Floor(Math.Log10(value));
        return $"{units.Readout.Fixed(value / Math.Pow(10, power), 1)}e{power.ToString(CultureInfo.InvariantCulture)}";
    }
}
