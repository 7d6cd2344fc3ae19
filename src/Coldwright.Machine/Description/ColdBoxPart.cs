namespace Coldwright.Machine.Description;

/// <summary>kind <c>cold-box</c>: the insulated box around everything cold.</summary>
public sealed record ColdBoxPart : Part
{
    private readonly string? _insulation;

    /// <summary>Inside length, width, height, m.</summary>
    public required (double LengthM, double WidthM, double HeightM) Inside { get; init; }
    /// <summary>Insulation thickness, m; of all layers together when there are layers.</summary>
    public required double WallM { get; init; }
    /// <summary>
    /// Insulation material (key of the materials data); that of the layer when there is a single plain one. Throws
    /// <see cref="Numerics.SolveException"/> that names the key when the wall is of several layers.
    /// </summary>
    public string Insulation { get => GivenInsulation ?? throw NotGiven.For(this, "insulation"); init => _insulation = value; }
    /// <summary>Insulation material; null when the wall has several layers, moisture or a cell gas of its own.</summary>
    public string? GivenInsulation => _insulation ?? (Layers is [{ MoistureShare: 0, CellGas: null } only] ? only.Material : null);
    /// <summary>Layers from inside to outside; empty when <see cref="Insulation"/> and <see cref="WallM"/> describe the wall.</summary>
    public IReadOnlyList<LayerDescription> Layers { get; init; } = [];
    /// <summary>Wires and other metal through the wall: material, total cross-section (m2), length in the wall (m).</summary>
    public IReadOnlyList<(string Material, double AreaM2, double LengthM)> Penetrations { get; init; } = [];
}
