namespace Coldwright.Runs.Explain;

/// <summary>
/// How far a sound machine's log may lie from its model, one standard deviation: what correlations, assumptions and the lumping of the model leave open.
/// A part of it is common to all figures of a kind (a curve that is late is late throughout). Our assumptions; docs/theory/explain.md.
/// </summary>
internal static class ModelDoubt
{
    /// <summary>Own and common part of a feature's doubt; K, or of a logarithm.</summary>
    public static (double Own, double Common) Of(Feature f) => f.Kind switch
    {
        FeatureKind.Batch => (0, 0),
        FeatureKind.LnTime => (f.At < 0.1 ? 0.35 : f.At < 0.2 ? 0.2 : 0.09, 0.15),
        FeatureKind.LnWarmUp => (0.05, 0.13),
        FeatureKind.WarmUpPressure => (0.05, 0.08),
        FeatureKind.RestPressure => (0.02, 0),
        FeatureKind.WarmReading => (0.7, 0),
        FeatureKind.LateChange => f.What >= Observable.HighPressure ? (0.12, 0) : (9, 0),
        FeatureKind.AtEnd when f.What == Observable.Load => (3, 0),
        // while the loop fills and the cold has not come through the recuperator, a run hangs on moments that the model does not hold
        FeatureKind.AtShare when f.At < 0.2 => (4 * Steady(f).Own, Steady(f).Common),
        // when it has come through, the load falls fast and the high side may dip for minutes
        FeatureKind.AtShare when f.At < 0.5 && f.What >= Observable.HighPressure => (2.5 * Steady(f).Own, Steady(f).Common),
        _ => Steady(f),
    };

    private static (double Own, double Common) Steady(Feature f) => f.What switch
    {
        Observable.ThrottleInlet => (f.Kind == FeatureKind.AtEnd ? 2.5 : 4, 2),
        Observable.CoilOutlet => (1, 1.5),
        Observable.Precooled => (2, 4),
        Observable.Return => (4, 4),
        Observable.Discharge => (4, 15),
        Observable.HighPressure => (0.02, 0.03),
        Observable.LowPressure => (0.05, 0.06),
        Observable.MassFlow => (0.05, 0.05),
        _ => (0.03, 0.1),
    };
}
