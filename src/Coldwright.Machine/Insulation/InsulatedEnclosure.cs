namespace Coldwright.Machine.Insulation;

/// <summary>A cold space with its wall, what crosses it and the room around it: the input of <see cref="EnclosureSolver"/>.</summary>
/// <param name="Shape">Shape of the wall.</param>
/// <param name="Layers">Layers from inside to outside, one or more.</param>
/// <param name="Penetrations">What crosses the wall; may be empty.</param>
/// <param name="RoomK">Temperature of the room, K, 233 to 333.</param>
/// <param name="RelativeHumidity">Of the room's air, above 0 to 1.</param>
/// <param name="Outside">How heat comes from the room to the wall.</param>
public sealed record InsulatedEnclosure(
    WallShape Shape, IReadOnlyList<InsulationLayer> Layers, IReadOnlyList<WallPenetration> Penetrations, double RoomK, double RelativeHumidity, RoomSide Outside)
{
    /// <summary>Thickness of all layers, m.</summary>
    public double WallM => Layers.Sum(l => l.ThicknessM);

    internal void Validate(double insideK)
    {
        if (Layers.Count == 0) throw new ArgumentException("the wall needs one layer or more, got 0");
        foreach (var layer in Layers) layer.RequireThickness();
        foreach (var penetration in Penetrations) penetration.Validate();
        if (!(RoomK is >= 233 and <= 333)) throw new ArgumentException(FormattableString.Invariant($"the room must be 233 to 333 K, got {RoomK} K"), nameof(RoomK));
        if (!(insideK is >= 4 and <= 400)) throw new ArgumentException(FormattableString.Invariant($"the inside must be 4 to 400 K, got {insideK} K"), nameof(insideK));
    }
}
