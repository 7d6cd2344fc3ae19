namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Two tubes soldered side by side, straight or coiled together. Heat reaches the bond along each tube's wall, which works as a
/// fin on either side of the bond (adiabatic outside), then crosses the wall under the bond and the solder.
/// </summary>
public sealed class SideBySideGeometry : RecuperatorGeometry
{
    /// <summary>Conductivity of soft solder, W/(m K): 50 (common practice, no source).</summary>
    public const double SoftSolderConductivity = 50;

    private readonly double _hotOutsideM, _hotWallM, _coldOutsideM, _coldWallM;

    /// <param name="hotOutsideDiameterM">Tube of the warm stream, outside, m.</param>
    /// <param name="hotWallM">Its wall, m.</param>
    /// <param name="coldOutsideDiameterM">Tube of the cold stream, outside, m.</param>
    /// <param name="coldWallM">Its wall, m.</param>
    /// <param name="bondWidthM">Width of the solder fillet, m, above 0 and at most half the smaller tube's circumference.</param>
    /// <param name="bondThicknessM">Mean thickness of solder between the tubes, m, at least 0.</param>
    /// <param name="lengthM">Length, m.</param>
    /// <param name="coilDiameterM">Mean diameter of the coil, m; null: straight.</param>
    /// <param name="bondConductivity">Of the solder, W/(m K).</param>
    /// <param name="roughnessM">Of the bores, m, at least 0.</param>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    public SideBySideGeometry(double hotOutsideDiameterM, double hotWallM, double coldOutsideDiameterM, double coldWallM, double bondWidthM, double bondThicknessM, double lengthM,
        double? coilDiameterM = null, double bondConductivity = SoftSolderConductivity, double roughnessM = DrawnTubeRoughnessM) : base(lengthM, coilDiameterM, roughnessM)
    {
        GeometryGuard.Wall(hotWallM, hotOutsideDiameterM, "warm tube");
        GeometryGuard.Wall(coldWallM, coldOutsideDiameterM, "cold tube");
        GeometryGuard.Positive(bondWidthM, "bond width", "m");
        GeometryGuard.Positive(bondConductivity, "bond conductivity", "W/(m K)");
        if (!(bondThicknessM >= 0) || !double.IsFinite(bondThicknessM)) throw new ArgumentException($"bond thickness must not be below 0 m, got {bondThicknessM} m");
        double most = 0.5 * Math.PI * Math.Min(hotOutsideDiameterM, coldOutsideDiameterM);
        if (bondWidthM > most) throw new ArgumentException($"bond width must be at most half the smaller circumference {most} m, got {bondWidthM} m");
        (_hotOutsideM, _hotWallM, _coldOutsideM, _coldWallM) = (hotOutsideDiameterM, hotWallM, coldOutsideDiameterM, coldWallM);
        (BondWidthM, BondThicknessM, BondConductivity) = (bondWidthM, bondThicknessM, bondConductivity);
        Hot = Tube(1, hotOutsideDiameterM - 2 * hotWallM);
        Cold = Tube(1, coldOutsideDiameterM - 2 * coldWallM);
    }

    /// <summary>Width of the solder fillet, m.</summary>
    public double BondWidthM { get; }
    /// <summary>Thickness of the solder, m.</summary>
    public double BondThicknessM { get; }
    /// <summary>Conductivity of the solder, W/(m K).</summary>
    public double BondConductivity { get; }

    /// <inheritdoc/>
    public override string Title => FormattableString.Invariant(
        $"tubes {_hotOutsideM * 1000:0.##} x {_hotWallM * 1000:0.##} mm and {_coldOutsideM * 1000:0.##} x {_coldWallM * 1000:0.##} mm soldered side by side, {LengthM:0.##} m long{(CoilDiameterM is { } c ? $", coiled to {c * 1000:0.#} mm" : "")}");
    /// <inheritdoc/>
    public override FlowChannel Hot { get; }
    /// <inheritdoc/>
    public override FlowChannel Cold { get; }
    /// <inheritdoc/>
    public override double MetalAreaM2 => Math.PI * ((_hotOutsideM - _hotWallM) * _hotWallM + (_coldOutsideM - _coldWallM) * _coldWallM);
    /// <inheritdoc/>
    public override LeakReceiver LeakReceiver => LeakReceiver.Wall;

    /// <inheritdoc/>
    public override double HotConductance(double film, double wallConductivity) => Conductance(_hotOutsideM, _hotWallM, film, wallConductivity);
    /// <inheritdoc/>
    public override double ColdConductance(double film, double wallConductivity) => Conductance(_coldOutsideM, _coldWallM, film, wallConductivity);

    // g = h w + 2 (h k t)^(1/2) tanh(m L), m = (h/(k t))^(1/2), L from the bond's edge to the far side; straight fin, adiabatic tip
    private double Conductance(double outsideM, double wallM, double film, double k)
    {
        double reach = 0.5 * Math.Max(0, Math.PI * (outsideM - wallM) - BondWidthM), m = Math.Sqrt(film / (k * wallM));
        double gathered = film * BondWidthM + 2 * Math.Sqrt(film * k * wallM) * Math.Tanh(m * reach);
        double under = 0.5 * wallM / (k * BondWidthM) + 0.5 * BondThicknessM / (BondConductivity * BondWidthM);
        return 1 / (1 / gathered + under);
    }
}
