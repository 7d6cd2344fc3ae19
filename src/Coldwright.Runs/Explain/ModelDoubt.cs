namespace Coldwright.Runs.Explain;

/// <summary>
/// How far a sound machine's log may lie from its model, one standard deviation: what correlations, assumptions and the lumping of the model leave open.
/// A part of it is common to all figures of a kind (a curve that is late is late throughout). Our assumptions; docs/theory/explain.md.
/// </summary>
internal static class ModelDoubt
{
    // how much sooner a machine may be at its end, as a logarithm, and how much less its cold end then changes in the last third, K
    private const double SoonerAtEnd = 0.3, CreepK = 6;

    /// <summary>Own and common part of a feature's doubt; K, or of a logarithm.</summary>
    public static (double Own, double Common) Of(Feature f) => f.Kind switch
    {
        FeatureKind.Batch => (0, 0),
        // before the cold has come through the recuperator the load hardly moves, and no two models agree when that is
        FeatureKind.LnTime => (f.At switch { < 0.1 => 0.5, < 0.2 => 0.35, < 0.4 => 0.2, < 0.6 => 0.12, < 0.85 => 0.09, _ => 0.18 }, 0.2),
        FeatureKind.LnWarmUp => (0.05, 0.18),
        FeatureKind.WarmUpPressure => (0.05, 0.2),
        FeatureKind.RestPressure => (0.03, 0),
        FeatureKind.WarmReading => (0.7, 0),
        FeatureKind.LateChange => f.What switch { Observable.MassFlow => (0.2, 0), >= Observable.HighPressure => (0.12, 0), _ => (9, 0) },
        FeatureKind.AtEnd when f.What == Observable.Load => (3, 0),
        // while the loop fills and the cold has not come through the recuperator, a run hangs on moments that the model does not hold
        FeatureKind.AtShare when f.At < 0.2 => (4 * Steady(f).Own, Steady(f).Common),
        // when it has come through, the load falls fast and the high side may dip for minutes
        FeatureKind.AtShare when f.At < 0.5 && (f.What >= Observable.HighPressure || f.What == Observable.ThrottleInlet) => (2.5 * Steady(f).Own, Steady(f).Common),
        FeatureKind.AtShare when f.At > 0.85 => (2 * Steady(f).Own, Steady(f).Common),
        _ => Steady(f),
    };

    /// <summary>
    /// One doubt that the times and the late change of the cold end share: how a machine creeps towards its end hangs on the cooling to spare there, in which models of one machine differ most. One that creeps
    /// less is there sooner and changes less in the last third.
    /// </summary>
    public static double Approach(Feature f) => f.Kind switch
    {
        FeatureKind.LnTime => -SoonerAtEnd * f.At * f.At,
        FeatureKind.LateChange when f.What is Observable.Load or Observable.ThrottleInlet or Observable.CoilOutlet => CreepK,
        _ => 0,
    };

    private static (double Own, double Common) Steady(Feature f) => f.What switch
    {
        Observable.ThrottleInlet => (f.Kind == FeatureKind.AtEnd ? 2.5 : 4, 2),
        Observable.CoilOutlet => (1, 1.5),
        Observable.Precooled => (2, 4),
        Observable.Return => (f.Kind == FeatureKind.AtEnd ? 4 : 6, 4),
        Observable.Discharge => (7, 15),
        // towards the end the buffer may run empty, and what holds the high side with it: how near that is hangs on what the exchanger holds up
        Observable.HighPressure => (f.At > 0.85 ? 0.15 : 0.02, 0.03),
        Observable.LowPressure => (0.05, 0.06),
        Observable.MassFlow => (0.05, 0.07),
        // a motor's efficiency is seldom in the file
        _ => (0.05, 0.3),
    };
}
