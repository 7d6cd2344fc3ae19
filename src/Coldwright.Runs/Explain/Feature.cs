namespace Coldwright.Runs.Explain;

/// <summary>A figure that log and model are compared in. Pressures, flows and power are compared as logarithms.</summary>
/// <param name="Kind">What.</param>
/// <param name="What">Observable.</param>
/// <param name="At">Share of the way (0..1) or kelvin of warming; of a batch the index of its figure.</param>
public sealed record Feature(FeatureKind Kind, Observable What, double At)
{
    /// <summary>True for a figure of the earlier run of the machine in good order that a run is held against.</summary>
    public bool IsEarlier { get; init; }

    /// <summary>Stable word.</summary>
    public string Id => FormattableString.Invariant($"{(IsEarlier ? "earlier/" : "")}{Kind}/{What}/{At:0.###}");

    /// <summary>True for figures of the pull-down and its end, which hang on the cooling to spare; false for those that a cause answers for alone (warm-up, rest, batch).</summary>
    public bool IsOfPullDown => Kind is FeatureKind.LnTime or FeatureKind.AtShare or FeatureKind.AtEnd or FeatureKind.LateChange;

    /// <summary>True when the figure is a natural logarithm.</summary>
    public bool IsLog => Kind is FeatureKind.LnTime or FeatureKind.LnWarmUp || (Kind is not FeatureKind.WarmReading && What >= Observable.HighPressure && Kind != FeatureKind.Batch);
}
