namespace Coldwright.Runs.Tightness;

/// <summary>Answer of a test.</summary>
public enum TightnessVerdict
{
    /// <summary>What was allowed is kept, also at the unfavourable end of the uncertainty.</summary>
    Passed,
    /// <summary>It is broken, also at the favourable end.</summary>
    Failed,
    /// <summary>The uncertainty is larger than the distance to the limit.</summary>
    CannotTell,
    /// <summary>Nothing is said about what is allowed.</summary>
    NoLimit,
}
