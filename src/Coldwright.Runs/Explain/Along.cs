namespace Coldwright.Runs.Explain;

/// <summary>How far two figures of one curve err together: a model that is wrong at one moment is wrong in the same way shortly after.</summary>
internal static class Along
{
    // in steps of FeatureReader.Shares; share of an error that is smooth; of the compressor's power that both powers hold; of an error that a machine repeats from day to day. Our assumptions.
    private const double Length = 2.5, Smooth = 0.65, PairShare = 0.9, Repeated = 0.7;

    /// <summary>Correlation of the own errors of two figures, 0..1.</summary>
    public static double Correlation(Feature a, Feature b)
    {
        if (a == b) return 1;
        if (a.IsEarlier != b.IsEarlier) return Repeated * Correlation(a with { IsEarlier = false }, b with { IsEarlier = false });
        if (Family(a) != Family(b)) return 0;
        double between = Smooth * Math.Exp(-Math.Abs(Place(a) - Place(b)) / Length);
        return a.What == b.What ? between : PairShare * between;
    }

    private static (FeatureKind, Observable) Family(Feature f) => (f.Kind == FeatureKind.AtEnd ? FeatureKind.AtShare : f.Kind, f.Kind is FeatureKind.Batch or FeatureKind.LateChange ? (Observable)(100 + (int)f.At + 10 * (int)f.What) : f.What == Observable.CompressorPower ? Observable.Power : f.What);

    private static double Place(Feature f) => f.Kind switch
    {
        FeatureKind.LnTime or FeatureKind.AtShare => Array.IndexOf(FeatureReader.Shares, f.At),
        FeatureKind.AtEnd => FeatureReader.Shares.Length,
        FeatureKind.LnWarmUp or FeatureKind.WarmUpPressure => Array.IndexOf(FeatureReader.Warmings, f.At),
        _ => 0,
    };
}
