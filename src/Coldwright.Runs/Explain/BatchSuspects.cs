using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>The causes that act on a batch alone, as suspects of a comparison.</summary>
internal static class BatchSuspects
{
    private const double UsualSeepKg = 0.1;

    public static IEnumerable<Suspect> Of(BatchModel model, Course plain, Trace like, IReadOnlyList<Feature> features, double[] expected)
    {
        Suspect Make(string id, Func<double, BatchOddity> odd, (double First, double Second) strengths, double usual)
        {
            double[] Change(double f)
            {
                var figures = model.Predict(plain, like, odd(f));
                return [.. features.Select((x, i) => x.Kind == FeatureKind.Batch && figures[(int)x.At] is { } v ? v - expected[i] : 0)];
            }
            return new Suspect(id, "", null, Change(strengths.First), Change(strengths.Second), strengths, usual, false);
        }

        if (features.All(f => f.Kind != FeatureKind.Batch)) yield break;
        foreach (var (id, strengths, usual) in _all)
            if (id != "feed-compressor-faded" || model.HasFeedCompressor) yield return Make(id, f => OddityOf([(id, f)]), strengths, usual);
    }

    private static readonly (string Id, (double First, double Second) Strengths, double Usual)[] _all =
    [
        ("discharge-too-warm", (3, 9), 7), ("line-loss", (2, 6), 4), ("valve-leak", (0.05, 0.2), UsualSeepKg), ("flask-warm", (0.5, 1.2), 0.9), ("feed-impure", (0.005, 0.02), 0.015), ("feed-compressor-faded", (0.2, 0.6), 0.4),
    ];

    /// <summary>What causes of the batch at their strengths do to a prediction; others do nothing.</summary>
    public static BatchOddity OddityOf(IEnumerable<(string Id, double Strength)> causes)
    {
        var odd = new BatchOddity();
        foreach (var (id, f) in causes)
            odd = id switch
            {
                "discharge-too-warm" => odd with { WarmerK = f },
                "line-loss" => odd with { LineHeat = 1 + f },
                "valve-leak" => odd with { SeepKg = f },
                "flask-warm" => odd with { FlaskHeat = Math.Exp(f) },
                "feed-impure" => odd with { Impurity = f },
                "feed-compressor-faded" => odd with { FeedFaded = f },
                _ => odd,
            };
        return odd;
    }

    /// <summary>Name of a cause in words; null for others.</summary>
    public static string? NameOf(string id) => id switch
    {
        "discharge-too-warm" => "the drain was opened too warm",
        "line-loss" => "the drain line takes more",
        "valve-leak" => "a valve lets product pass",
        "flask-warm" => "the flask takes and loses more",
        "feed-impure" => "the feed holds gas that does not condense",
        "feed-compressor-faded" => "the feed compressor delivers less",
        _ => null,
    };

    /// <summary>Unit of a cause's figure and the figure from its strength.</summary>
    public static (string Unit, Func<double, double> Shown) FigureOf(string id) => id switch
    {
        "discharge-too-warm" => ("K", f => f),
        "line-loss" => ("", f => 1 + f),
        "flask-warm" => ("", Math.Exp),
        "valve-leak" => ("kg lost", f => f),
        "feed-impure" => ("mole fraction", f => f),
        "feed-compressor-faded" => ("share of its flow lost", f => f),
        _ => ("", f => f),
    };
}
