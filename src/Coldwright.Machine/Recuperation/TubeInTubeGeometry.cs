namespace Coldwright.Machine.Recuperation;

/// <summary>
/// One or several tubes inside an outer tube, straight or coiled. Several tubes: the outer passage is counted as an annulus whose
/// core has the tubes' outside area, with the true wetted perimeter (our rule; the tubes lie loose and shift the flow).
/// </summary>
public sealed class TubeInTubeGeometry : RecuperatorGeometry
{
    // diameter of the smallest circle around n equal circles over theirs (elementary for 1 to 4 and 7; n = 5: 1 + 1/sin 36 deg; 6 as 7)
    private static readonly double[] Around = [1, 2, 1 + 2 / 1.7320508075688772, 1 + 1.4142135623730951, 1 + 1 / 0.5877852522924731, 3, 3];

    /// <param name="innerOutsideDiameterM">Inner tube, outside, m.</param>
    /// <param name="innerWallM">Inner tube, wall, m.</param>
    /// <param name="tubeCount">Number of equal inner tubes, 1 or more.</param>
    /// <param name="outerOutsideDiameterM">Outer tube, outside, m.</param>
    /// <param name="outerWallM">Outer tube, wall, m.</param>
    /// <param name="lengthM">Length, m.</param>
    /// <param name="coilDiameterM">Mean diameter of the coil, m; null: straight.</param>
    /// <param name="hotInside">True: the warm (high-pressure) stream flows in the inner tubes.</param>
    /// <param name="roughnessM">Of all walls, m, at least 0.</param>
    /// <exception cref="ArgumentException">A value outside its range, or the tubes do not fit.</exception>
    public TubeInTubeGeometry(double innerOutsideDiameterM, double innerWallM, int tubeCount, double outerOutsideDiameterM, double outerWallM, double lengthM,
        double? coilDiameterM = null, bool hotInside = true, double roughnessM = DrawnTubeRoughnessM) : base(lengthM, coilDiameterM, roughnessM)
    {
        GeometryGuard.Wall(innerWallM, innerOutsideDiameterM, "inner tube");
        GeometryGuard.Wall(outerWallM, outerOutsideDiameterM, "outer tube");
        if (tubeCount < 1) throw new ArgumentException($"number of inner tubes must be 1 or more, got {tubeCount}");
        double bore = outerOutsideDiameterM - 2 * outerWallM;
        double least = tubeCount <= Around.Length ? Around[tubeCount - 1] * innerOutsideDiameterM : innerOutsideDiameterM * Math.Sqrt(tubeCount / 0.9069);
        if (!(bore > least)) throw new ArgumentException($"{tubeCount} tube(s) of {innerOutsideDiameterM} m need an outer bore above {least} m, got {bore} m");
        (InnerOutsideDiameterM, InnerWallM, TubeCount, OuterOutsideDiameterM, OuterWallM, HotInside) =
            (innerOutsideDiameterM, innerWallM, tubeCount, outerOutsideDiameterM, outerWallM, hotInside);
        var inside = Tube(tubeCount, innerOutsideDiameterM - 2 * innerWallM);
        double area = Math.PI / 4 * (bore * bore - tubeCount * innerOutsideDiameterM * innerOutsideDiameterM);
        double hydraulic = 4 * area / (Math.PI * (bore + tubeCount * innerOutsideDiameterM));
        var outside = new FlowChannel(area, hydraulic, tubeCount * Math.PI * innerOutsideDiameterM, Math.Sqrt(tubeCount) * innerOutsideDiameterM / bore, Curvature(hydraulic), roughnessM / hydraulic);
        (Hot, Cold) = hotInside ? (inside, outside) : (outside, inside);
    }

    /// <summary>Inner tube, outside, m.</summary>
    public double InnerOutsideDiameterM { get; }
    /// <summary>Inner tube, wall, m.</summary>
    public double InnerWallM { get; }
    /// <summary>Number of inner tubes.</summary>
    public int TubeCount { get; }
    /// <summary>Outer tube, outside, m.</summary>
    public double OuterOutsideDiameterM { get; }
    /// <summary>Outer tube, wall, m.</summary>
    public double OuterWallM { get; }
    /// <summary>True: the warm stream flows in the inner tubes.</summary>
    public bool HotInside { get; }

    /// <inheritdoc/>
    public override string Title => FormattableString.Invariant(
        $"{(TubeCount == 1 ? "tube" : $"{TubeCount} tubes")} {InnerOutsideDiameterM * 1000:0.##} x {InnerWallM * 1000:0.##} mm in a tube {OuterOutsideDiameterM * 1000:0.##} x {OuterWallM * 1000:0.##} mm, {LengthM:0.##} m long{(CoilDiameterM is { } c ? $", coiled to {c * 1000:0.#} mm" : "")}");
    /// <inheritdoc/>
    public override FlowChannel Hot { get; }
    /// <inheritdoc/>
    public override FlowChannel Cold { get; }
    /// <summary>Inner and outer tubes together: the outer tube is counted at the inner wall's temperature, from which it differs by a few kelvin at most.</summary>
    public override double MetalAreaM2 => Math.PI * (TubeCount * (InnerOutsideDiameterM - InnerWallM) * InnerWallM + (OuterOutsideDiameterM - OuterWallM) * OuterWallM);
    /// <inheritdoc/>
    public override LeakReceiver LeakReceiver => HotInside ? LeakReceiver.Cold : LeakReceiver.Hot;

    /// <inheritdoc/>
    public override double HotConductance(double film, double wallConductivity) => Conductance(Hot, film, wallConductivity);
    /// <inheritdoc/>
    public override double ColdConductance(double film, double wallConductivity) => Conductance(Cold, film, wallConductivity);

    // film and half the wall's resistance in series
    private double Conductance(FlowChannel channel, double film, double k)
    {
        double wall = Math.Log(InnerOutsideDiameterM / (InnerOutsideDiameterM - 2 * InnerWallM)) / (2 * Math.PI * k * TubeCount);
        return 1 / (1 / (film * channel.HeatedPerimeterM) + 0.5 * wall);
    }
}
