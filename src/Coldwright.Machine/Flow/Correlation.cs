namespace Coldwright.Machine.Flow;

/// <summary>
/// Where a correlation comes from and how far it may be trusted, so that a result made with it can carry a band.
/// </summary>
/// <param name="Name">Short name used in reports.</param>
/// <param name="Source">Author, year, journal or book; says "from memory" where no copy was at hand.</param>
/// <param name="RelativeUncertainty">One standard deviation divided by the value, 0 to 1.</param>
/// <param name="Range">Range of the data behind it, in words and numbers.</param>
public sealed record Correlation(string Name, string Source, double RelativeUncertainty, string Range);
