namespace Coldwright.Runs.Live;

/// <summary>A time without a connection: nothing that was sent in it is in the log.</summary>
/// <param name="From">When a message came last, or the connection was made.</param>
/// <param name="To">When the broker answered again; null while it does not.</param>
/// <param name="Reason">Why, as far as it is known.</param>
public sealed record ListeningGap(DateTime From, DateTime? To, string Reason);
