namespace Coldwright.Machine.Description;

/// <summary>Where a coil sits.</summary>
public enum CoilPlace
{
    /// <summary>In the vessel, washed by its content.</summary>
    Inside,
    /// <summary>Soldered around the vessel or block.</summary>
    Around,
}

/// <summary>kind <c>coil</c>: the mixture's coil at or in the vessel, or around a block.</summary>
public sealed record CoilPart : Part
{
    private readonly double? _differenceK;

    /// <summary>Load (vessel content or block) warmer than the mixture leaving the coil by this, K. Throws <see cref="Numerics.SolveException"/> that names the key when only the tube is described.</summary>
    public double DifferenceK { get => _differenceK ?? throw NotGiven.For(this, "difference"); init => _differenceK = value; }
    /// <summary>Load warmer than the mixture leaving the coil by this, K; null when only the tube is described.</summary>
    public double? GivenDifferenceK => _differenceK;
    /// <summary>Tube.</summary>
    public Tube? Tube { get; init; }
    /// <summary>Tube length, m.</summary>
    public double? LengthM { get; init; }
    /// <summary>Mean diameter of the coil, m; null when not given.</summary>
    public double? CoilDiameterM { get; init; }
    /// <summary>Turns, above 0; null when not counted.</summary>
    public double? Turns { get; init; }
    /// <summary>Where it sits; null when not given.</summary>
    public CoilPlace? Place { get; init; }
}
