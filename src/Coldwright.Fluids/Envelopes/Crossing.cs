namespace Coldwright.Fluids.Envelopes;

/// <summary>A point of a boundary with what lies on either side.</summary>
/// <param name="At">Where.</param>
/// <param name="A">A sample on the side of fewer phases (of the two, when both have as many: where the phases jump).</param>
/// <param name="B">A sample on the other side, next to the boundary.</param>
/// <param name="Width">How well the place is known, in units of the window.</param>
internal sealed record Crossing(Place At, Sample A, Sample B, double Width)
{
    /// <summary>True where one phase is exchanged for another while their number stays.</summary>
    public bool IsJump => A.Count == B.Count;

    /// <summary>Same kind of change between alike phases.</summary>
    public bool IsLike(Crossing other) => A.Count == other.A.Count && B.Count == other.B.Count && A.Unlike(other.A) < BoundarySearch.Alike;
}
