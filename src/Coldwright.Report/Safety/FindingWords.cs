using Coldwright.Report.Rating;
using Coldwright.Safety;

namespace Coldwright.Report.Safety;

/// <summary>A finding's figures and sentences as a person reads them.</summary>
/// <param name="Readout">Units and digits.</param>
internal sealed record FindingWords(Readout Readout)
{
    /// <summary>The grade in capitals.</summary>
    public static string Grade(Finding finding) => GradeWords.Of(finding.Grade).ToUpperInvariant();

    /// <summary>What was found, where, and the figures: <c>charge: flammable charge, 320 g, limit 240 g</c>.</summary>
    public string Headline(Finding finding)
    {
        var what = finding.Part == "machine" ? RatingHeadline.Capital(What(finding)) : $"{finding.Part}: {What(finding)}";
        return Figures(finding) is { Length: > 0 } figures ? $"{what}, {figures}" : what;
    }

    /// <summary>What was found, in the words of its identifier.</summary>
    public static string What(Finding finding) => finding.Id.Replace('-', ' ');

    /// <summary>Value and limit; empty without figures.</summary>
    public string Figures(Finding finding)
    {
        var limit = finding.Limit is { } l ? $"{(finding.AtLeast ? "at least" : "limit")} {Amount(l, finding.Unit)}{(finding.AtLeast ? " needed" : "")}" : null;
        return string.Join(", ", new[] { finding.Value is { } value ? Amount(value, finding.Unit) : null, limit }.OfType<string>());
    }

    private string Amount(double value, string unit) => unit switch
    {
        "m" => Readout.Any(value * 1e3, "mm"),
        "kg" when Math.Abs(value) < 1 => Readout.Any(value * 1e3, "g"),
        "kg/m3" => Readout.Any(value * 1e3, "g/m3"),
        "J" when Math.Abs(value) >= 1e3 => Readout.Any(value / 1e3, "kJ"),
        "Pa" when value < 0.1e5 => Readout.Any(value / 100, "mbar abs"),
        _ => Readout.Any(value, unit),
    };
}
