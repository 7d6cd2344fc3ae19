using Coldwright.Quantities;

namespace Coldwright.Runs.Sensors;

/// <summary>One contribution to the uncertainty of a reading.</summary>
/// <param name="Name">What it comes from.</param>
/// <param name="Standard">One standard deviation, SI.</param>
/// <param name="IsCommon">True when all samples of the channel share the same unknown error (calibration), false when each has its own (rounding, noise).</param>
/// <param name="Source">Where the figure comes from.</param>
public sealed record UncertaintyPart(string Name, double Standard, bool IsCommon, Spoken Source);
