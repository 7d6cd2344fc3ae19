namespace Coldwright.Machine.Description;

/// <summary>A round tube: outside diameter and wall, m.</summary>
/// <param name="Text">As written in the file.</param>
/// <param name="OutsideDiameterM">Outside diameter, m.</param>
/// <param name="WallM">Nominal wall, m.</param>
public sealed record Tube(string Text, double OutsideDiameterM, double WallM)
{
    /// <summary>Inside diameter, m.</summary>
    public double InsideDiameterM => OutsideDiameterM - 2 * WallM;
    /// <summary>Metal cross-section, m2.</summary>
    public double MetalAreaM2 => Math.PI / 4 * (OutsideDiameterM * OutsideDiameterM - InsideDiameterM * InsideDiameterM);
    /// <summary>Bore cross-section, m2.</summary>
    public double BoreAreaM2 => Math.PI / 4 * InsideDiameterM * InsideDiameterM;
}
