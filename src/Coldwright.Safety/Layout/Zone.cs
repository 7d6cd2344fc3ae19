namespace Coldwright.Safety.Layout;

/// <summary>Which pressure a line or part sees.</summary>
internal enum Zone
{
    /// <summary>Not reached from the compressor or the feed: rated at the highest pressure of the machine.</summary>
    Unknown,

    /// <summary>Mixture between compressor and throttle.</summary>
    High,

    /// <summary>Mixture between throttle and compressor.</summary>
    Low,

    /// <summary>Product gas from the feed onwards.</summary>
    Feed,
}
