namespace Coldwright.Machine.Description;

/// <summary>One of the <c>layers</c> of a cold box.</summary>
public sealed record LayerDescription
{
    /// <summary>Material (key of the materials data).</summary>
    public required string Material { get; init; }
    /// <summary>Thickness, m, above 0 to 2.</summary>
    public required double ThicknessM { get; init; }
    /// <summary>Water in it as a share of the volume, 0..0.15.</summary>
    public double MoistureShare { get; init; }
    /// <summary>Gas in its cells: <c>air</c>, <c>nitrogen</c>, <c>carbon-dioxide</c>, <c>helium</c>, <c>R134a</c>, <c>isopentane</c>, <c>vacuum</c>; null: as the material's data were measured.</summary>
    public string? CellGas { get; init; }
}
