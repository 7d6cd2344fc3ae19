using Coldwright.Report.Cooldown;
using Coldwright.Runs.Explain;

namespace Coldwright.Report.Explain;

/// <summary>Figures and rows of an explanation, shared by screen and page.</summary>
internal static class ExplainWords
{
    /// <summary>A cause's figure and interval.</summary>
    public static (string Value, string Interval) Figure(ExplainedCause c, Readout r) => c.Id == "none" ? ("", "") : c.Unit switch
    {
        "" => ($"{r.Fixed(c.Value, 2)} x", $"{r.Fixed(c.Low, 2)} to {r.Fixed(c.High, 2)}"),
        "K" => ($"{r.Difference(c.Value)}", $"{r.Difference(c.Low)} to {r.Difference(c.High)}"),
        _ => (r.Figures(Math.Max(0, c.Value), 2), $"{r.Figures(Math.Max(0, c.Low), 2)} to {r.Figures(Math.Max(0, c.High), 2)}, {c.Unit}"),
    };

    /// <summary>Rows, narrow enough for a telephone: rank, cause with its id, figure over its interval, probability, share.</summary>
    public static IEnumerable<string[]> Causes(ExplainReport report, Readout r) => report.Shown.Select(c => new[]
    {
        c.Named ? $"{c.Rank}" : "", $"{c.Name}{(c.Detail.Length > 0 ? $", {c.Detail}" : "")} ({c.Id})", $"{Figure(c, r).Value}\n{Figure(c, r).Interval}".Trim(), r.Percent(c.Probability), c.ShareOfShortfall > 0 ? r.Percent(c.ShareOfShortfall) : "",
    });

    /// <summary>Rows: phase, from, to.</summary>
    public static IEnumerable<string[]> Phases(ExplainReport report) => report.Result.Phases.Select(p => new[] { p.Kind, CooldownScale.Time(p.FromS), CooldownScale.Time(p.ToS) });

    /// <summary>Rows: term, power.</summary>
    public static IEnumerable<string[]> Watts(ExplainReport report, Readout r) => report.Result.Watts.Select(t => new[] { t.Name, r.Watts(t.Watts), r.Percent(t.Share) });

    /// <summary>Rows: where the heat of the pull-down came from, kJ, share of all.</summary>
    public static IEnumerable<string[]> Heat(ExplainReport report, Readout r) =>
        report.Result.PullDownHeat.Select(t => new[] { t.Name, r.With(r.Figures(t.Joules / 1000, 3), "kJ"), r.Percent(t.Joules / Math.Max(1, report.Result.PullDownHeat[0].Joules)) });

    /// <summary>A figure of the comparison in words.</summary>
    public static string NameOf(Feature f, Readout r)
    {
        string what = f.What switch
        {
            Observable.Load => "load", Observable.ThrottleInlet => "throttle inlet over load", Observable.CoilOutlet => "coil outlet over load", Observable.Precooled => "behind the precooler", Observable.Return => "returning gas",
            Observable.Discharge => "discharge", Observable.HighPressure => "high side", Observable.LowPressure => "suction", Observable.MassFlow => "flow", Observable.CompressorPower => "compressor's power", _ => "power",
        };
        string share = FormattableString.Invariant($"{100 * f.At:0} %");
        return f.Kind switch
        {
            FeatureKind.LnTime => $"time to {share} of the way",
            FeatureKind.AtShare => $"{what}, at {share}",
            FeatureKind.AtEnd => $"{what}, at the end",
            FeatureKind.LateChange => $"{what}, late change",
            FeatureKind.WarmReading => $"{what.Replace(" over load", "", StringComparison.Ordinal)} less room, before the start",
            FeatureKind.RestPressure => "pressure at rest, warm",
            FeatureKind.LnWarmUp => $"time constant while it warms by {r.Difference(f.At)}",
            FeatureKind.WarmUpPressure => $"pressure at rest, {r.Difference(f.At)} warmer",
            _ => f.At switch { 0 => "gas fed", 1 => "found in the flask", 2 => "flask's loss", 3 => "vessel over its vapour pressure", 4 => "vessel when opened", _ => "from feed shut to drain opened" },
        };
    }

    /// <summary>A value of a figure in words.</summary>
    public static string ValueOf(Feature f, double v, Readout r) => f.Kind switch
    {
        FeatureKind.LnTime or FeatureKind.LnWarmUp => CooldownScale.Time(Math.Exp(v)),
        FeatureKind.LateChange when f.IsLog => r.Percent(Math.Exp(v) - 1),
        FeatureKind.LateChange or FeatureKind.WarmReading => r.Difference(v),
        FeatureKind.Batch => f.At switch { 0 or 1 => r.With(r.Figures(1000 * v, 3), "g"), 2 => r.With(r.Figures(3.6e6 * Math.Exp(v), 2), "g/h"), 3 => r.Percent(Math.Exp(v) - 1), 4 => r.Temperature(v), _ => CooldownScale.Time(Math.Exp(v)) },
        _ => f.What switch
        {
            Observable.ThrottleInlet or Observable.CoilOutlet => r.Difference(v),
            Observable.HighPressure or Observable.LowPressure => r.Pressure(Math.Exp(v)),
            Observable.MassFlow => r.With(r.Figures(1000 * Math.Exp(v), 3), "g/s"),
            Observable.CompressorPower or Observable.Power => r.Watts(Math.Exp(v)),
            _ => r.Temperature(v),
        },
    };

    /// <summary>Rows: figure, measured, described, fitted, residual over its doubt; the worst first.</summary>
    public static IEnumerable<string[]> Figures(ExplainReport report, Readout r, int most) => report.Result.Figures.OrderByDescending(f => Math.Abs(f.Measured - f.Described) / f.Uncertainty).Take(most).Select(f => new[]
    {
        NameOf(f.Feature, r), ValueOf(f.Feature, f.Measured, r), ValueOf(f.Feature, f.Described, r), ValueOf(f.Feature, f.Fitted, r), r.Fixed((f.Measured - f.Described) / f.Uncertainty, 1), r.Fixed((f.Measured - f.Fitted) / f.Uncertainty, 1),
    });
}
