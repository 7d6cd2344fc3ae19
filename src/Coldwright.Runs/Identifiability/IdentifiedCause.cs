namespace Coldwright.Runs.Identifiability;

/// <summary>What a record could say of a cause, whatever it says.</summary>
/// <param name="Id">Cause id.</param>
/// <param name="Detail">Which of several (a channel); empty for one alone.</param>
/// <param name="Alone">A clear fault's strength over its standard uncertainty when nothing else may be wrong.</param>
/// <param name="AmongAll">The same when everything else may be wrong too.</param>
/// <param name="LookAlikes">Causes that a clear fault could be taken for: less than two standard deviations apart at their best strength.</param>
public sealed record IdentifiedCause(string Id, string Detail, double Alone, double AmongAll, IReadOnlyList<string> LookAlikes)
{
    /// <summary>True when a clear fault stands two standard deviations above nothing.</summary>
    public bool IsSeen => Alone >= 2;
}
