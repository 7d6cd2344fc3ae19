namespace Coldwright.Machine.Recuperation;

/// <summary>Shape of a counterflow exchanger whose cross-section is the same all along. Immutable.</summary>
public abstract class RecuperatorGeometry
{
    /// <summary>Roughness of drawn copper tube, m: 1.5 micrometre (L. F. Moody, Trans. ASME 66 (1944) 671, drawn tubing).</summary>
    public const double DrawnTubeRoughnessM = 1.5e-6;

    private protected RecuperatorGeometry(double lengthM, double? coilDiameterM, double roughnessM)
    {
        GeometryGuard.Positive(lengthM, "length", "m");
        if (coilDiameterM is { } c) GeometryGuard.Positive(c, "coil diameter", "m");
        if (!(roughnessM >= 0) || !double.IsFinite(roughnessM)) throw new ArgumentException($"roughness must not be below 0 m, got {roughnessM} m");
        (LengthM, CoilDiameterM, RoughnessM) = (lengthM, coilDiameterM, roughnessM);
    }

    /// <summary>Length of tube, m, above 0.</summary>
    public double LengthM { get; }
    /// <summary>Mean diameter of the coil, m; null for a straight exchanger.</summary>
    public double? CoilDiameterM { get; }
    /// <summary>Roughness of all walls, m.</summary>
    public double RoughnessM { get; }

    /// <summary>In words, for a report.</summary>
    public abstract string Title { get; }
    /// <summary>Passage of the warm stream.</summary>
    public abstract FlowChannel Hot { get; }
    /// <summary>Passage of the cold stream.</summary>
    public abstract FlowChannel Cold { get; }
    /// <summary>Metal cross-section that conducts along the exchanger, m2.</summary>
    public abstract double MetalAreaM2 { get; }
    /// <summary>Where heat from the room arrives.</summary>
    public abstract LeakReceiver LeakReceiver { get; }

    /// <summary>Conductance per length from the warm stream to the middle of the wall, W/(m K).</summary>
    /// <param name="film">Film coefficient, W/(m2 K), above 0.</param>
    /// <param name="wallConductivity">Of the tube metal, W/(m K), above 0.</param>
    public abstract double HotConductance(double film, double wallConductivity);

    /// <summary>As <see cref="HotConductance"/>, of the cold stream.</summary>
    /// <param name="film">Film coefficient, W/(m2 K), above 0.</param>
    /// <param name="wallConductivity">Of the tube metal, W/(m K), above 0.</param>
    public abstract double ColdConductance(double film, double wallConductivity);

    /// <summary>A round bore, all of it heated.</summary>
    private protected FlowChannel Tube(int count, double boreM) =>
        new(count * Math.PI / 4 * boreM * boreM, boreM, count * Math.PI * boreM, 0, Curvature(boreM), RoughnessM / boreM);

    private protected double Curvature(double diameterM)
    {
        if (CoilDiameterM is not { } coil) return 0;
        double ratio = diameterM / coil;
        if (!(ratio <= 0.5)) throw new ArgumentException($"coil diameter must be at least twice the tube's {diameterM} m, got {coil} m");
        return ratio;
    }
}
