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
    public bool IsLike(Crossing other) => Alike(A, other.A) && Alike(B, other.B) && (IsJump || A.Count > 1 || B.Least == other.B.Least) || IsJump && Alike(A, other.B) && Alike(B, other.A);

    private static bool Alike(Sample a, Sample b) => a.Unlike(b) < BoundarySearch.Alike;
}
