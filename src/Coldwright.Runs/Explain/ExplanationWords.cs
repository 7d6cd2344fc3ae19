using System.Globalization;
using Coldwright.Quantities;

namespace Coldwright.Runs.Explain;

/// <summary>The explanation as a paragraph.</summary>
internal static class ExplanationWords
{
    // share of what is missing below which a cause is a small part; misfit beyond which no cause named can be right by itself
    private const double SmallShare = 0.2, Unfit = 3;

    public static Spoken Paragraph(Explanation e)
    {
        var ci = CultureInfo.InvariantCulture;
        double d = e.End.MeasuredK - e.End.DescribedK;
        var first = Spoken.Of($"At the end of the pull-down the load stood at {SpokenAmount.Temperature(e.End.MeasuredK)}; the machine as described would stand at {SpokenAmount.Temperature(e.End.DescribedK)}, {SpokenAmount.Difference(Math.Abs(d))} {(d >= 0 ? "colder" : "warmer")}.");
        var named = e.Causes.Where(c => c.Named).ToArray();
        if (named[0].Id == "none")
        {
            var second = e.Causes.Where(c => c.Id != "none").MaxBy(c => c.Probability);
            var doubt = named[0].Probability > 0.6 || second is null ? "" : Spoken.Of($" That is not sure: {second.Name}{Figure(second)} would explain it too ({second.Probability.ToString("0 %", ci)}).");
            return Spoken.Of($"{first} That lies within what machine file, correlations and sensors leave open: nothing needs to be wrong.{doubt}{(!doubt.IsEmpty && e.Tests.Count > 0 ? $" What would settle most: {e.Tests[0].What}." : "")}");
        }
        var what = Spoken.Join("; and ", named.Select(c => Spoken.Of($"{c.Name}{Figure(c)}{(named.Length > 1 && c.ShareOfShortfall < SmallShare ? string.Create(ci, $", a small part of what is missing ({c.ShareOfShortfall:0 %})") : "")}")));
        string sure = e.Misfit > Unfit ? string.Create(ci, $"Even so, much of the record does not fit the model (misfit {e.Misfit:0.0}, near 1 is usual): look at its events, units and the places of its sensors before believing this") : named.Min(c => c.Probability) switch { > 0.95 => "This is well supported", > 0.75 => "This is likely", > 0.5 => "This is more likely than not", _ => "This is only the best guess" };
        string ties = e.Indistinguishable.Count == 0 ? "" : " The record cannot tell apart: " + string.Join("; ", e.Indistinguishable.Select(g => string.Join(", ", g))) + ".";
        string next = e.Tests.Count == 0 || (ties.Length == 0 && named.Min(c => c.Probability) > 0.95) ? "" : $" What would settle most: {e.Tests[0].What}.";
        return Spoken.Of($"{first} What explains it best: {what}. {sure} ({named.Min(c => c.Probability).ToString("0 %", ci)}).{ties}{next}");
    }

    /// <summary>A cause's figure with its interval.</summary>
    public static Spoken Figure(ExplainedCause c)
    {
        var ci = CultureInfo.InvariantCulture;
        return c.Unit switch
        {
            "" => string.Create(ci, $" ({c.Value:0.00} times what the file says, {c.Low:0.00} to {c.High:0.00})"),
            "K" => Spoken.Of($" (by {SpokenAmount.Difference(c.Value)}, {SpokenAmount.Difference(c.Low)} to {SpokenAmount.Difference(c.High)})"),
            _ => string.Create(ci, $" ({c.Unit} {c.Value:0.00}, {Math.Max(0, c.Low):0.00} to {c.High:0.00})"),
        };
    }
}
