namespace Coldwright.Report.Loops;

/// <summary>The upper wall of the cold box.</summary>
/// <param name="Y">Its upper edge.</param>
/// <param name="Crossings">x of the lines that pass it.</param>
internal sealed record Wall(double Y, IReadOnlyList<double> Crossings);
