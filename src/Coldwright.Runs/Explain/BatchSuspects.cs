using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>The causes that act on a batch alone, as suspects of a comparison.</summary>
internal static class BatchSuspects
{
    private const double UsualSeepKg = 0.1;

    public static IEnumerable<Suspect> Of(BatchModel model, Course plain, BatchTrace like, double endS, IReadOnlyList<Feature> features, double[] expected)
    {
        Suspect Make(string id, Func<double, BatchOddity> odd, (double First, double Second) strengths, double usual)
        {
            double[] Change(double f)
            {
                var figures = model.Predict(plain, like, endS, odd(f));
                return [.. features.Select((x, i) => x.Kind == FeatureKind.Batch && figures[(int)x.At] is { } v ? v - expected[i] : 0)];
            }
            return new Suspect(id, "", null, Change(strengths.First), Change(strengths.Second), strengths, usual, false);
        }

        if (features.All(f => f.Kind != FeatureKind.Batch)) yield break;
        yield return Make("discharge-too-warm", f => new BatchOddity(WarmerK: f), (3, 9), 7);
        yield return Make("line-loss", f => new BatchOddity(LineHeat: 1 + f), (2, 6), 4);
        yield return Make("valve-leak", f => new BatchOddity(SeepKg: f), (0.05, 0.2), UsualSeepKg);
        yield return Make("flask-warm", f => new BatchOddity(FlaskHeat: Math.Exp(f)), (0.5, 1.2), 0.9);
        yield return Make("feed-impure", f => new BatchOddity(Impurity: f), (0.005, 0.02), 0.015);
    }

    /// <summary>Name of a cause in words; null for others.</summary>
    public static string? NameOf(string id) => id switch
    {
        "discharge-too-warm" => "the drain was opened too warm",
        "line-loss" => "the drain line takes more",
        "valve-leak" => "a valve lets product pass",
        "flask-warm" => "the flask takes and loses more",
        "feed-impure" => "the feed holds gas that does not condense",
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
        _ => ("", f => f),
    };
}
