namespace Coldwright.Web.Work;

/// <summary>What a piece of work is asked: the same question has the same answer.</summary>
/// <param name="Kind">Word for what is done.</param>
/// <param name="Model">Fluid model that answers; empty where the person has no choice.</param>
/// <param name="Details">What else was filled in.</param>
/// <param name="Revision">The files' revision that it is about.</param>
internal sealed record WorkQuestion(string Kind, string Model, string Details, string Revision)
{
    private static readonly string[] _long = ["help", "blend", "charge", "cooldown", "batch"];

    /// <summary>True for work of many seconds to minutes, which must not keep shorter work waiting.</summary>
    public bool IsLong => _long.Contains(Kind);
}
