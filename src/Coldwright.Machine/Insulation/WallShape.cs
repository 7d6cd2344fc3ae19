using System.Globalization;

namespace Coldwright.Machine.Insulation;

/// <summary>Shape of a wall wrapped round the cold space; depth 0 is its inside surface and grows outwards.</summary>
public abstract record WallShape
{
    /// <summary>Conduction shape factor S between two depths, m: heat flow = S times the conductivity integral.</summary>
    /// <param name="fromM">Inner depth, m, 0 or more.</param>
    /// <param name="toM">Outer depth, m, above the inner one.</param>
    public abstract double ShapeFactorM(double fromM, double toM);

    /// <summary>Area of the surface at a depth, m2.</summary>
    /// <param name="depthM">Depth, m, 0 or more.</param>
    public abstract double AreaM2(double depthM);

    /// <summary>Volume enclosed by the surface at a depth, less that at depth 0, m3.</summary>
    /// <param name="depthM">Depth, m, 0 or more.</param>
    public abstract double VolumeM3(double depthM);

    /// <summary>Null where the shape factor's rule holds; else why it does not.</summary>
    /// <param name="fromM">Inner depth, m.</param>
    /// <param name="toM">Outer depth, m.</param>
    public virtual string? Warning(double fromM, double toM) => null;

    private protected static double Positive(string name, double value, string unit) => value > 0 && double.IsFinite(value)
        ? value
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name} of the wall must be above 0 {unit}, got {value} {unit}"));
}

/// <summary>Flat wall, edges left out.</summary>
/// <param name="FaceM2">Area, m2, above 0.</param>
public sealed record FlatWall(double FaceM2) : WallShape
{
    /// <inheritdoc/>
    public override double ShapeFactorM(double fromM, double toM) => Positive("the area", FaceM2, "m2") / (toM - fromM);

    /// <inheritdoc/>
    public override double AreaM2(double depthM) => FaceM2;

    /// <inheritdoc/>
    public override double VolumeM3(double depthM) => FaceM2 * depthM;
}

/// <summary>Side of a cylinder, ends left out; exact.</summary>
/// <param name="RadiusM">Inside radius, m, above 0.</param>
/// <param name="LengthM">Length, m, above 0.</param>
public sealed record CylinderWall(double RadiusM, double LengthM) : WallShape
{
    /// <inheritdoc/>
    public override double ShapeFactorM(double fromM, double toM) => ConductionShapeFactors.ConcentricCylinders(Positive("the length", LengthM, "m"), Positive("the radius", RadiusM, "m") + fromM, RadiusM + toM);

    /// <inheritdoc/>
    public override double AreaM2(double depthM) => 2 * Math.PI * (RadiusM + depthM) * LengthM;

    /// <inheritdoc/>
    public override double VolumeM3(double depthM) => Math.PI * LengthM * depthM * (2 * RadiusM + depthM);
}

/// <summary>Sphere; exact.</summary>
/// <param name="RadiusM">Inside radius, m, above 0.</param>
public sealed record SphereWall(double RadiusM) : WallShape
{
    /// <inheritdoc/>
    public override double ShapeFactorM(double fromM, double toM) => ConductionShapeFactors.ConcentricSpheres(Positive("the radius", RadiusM, "m") + fromM, RadiusM + toM);

    /// <inheritdoc/>
    public override double AreaM2(double depthM) => 4 * Math.PI * (RadiusM + depthM) * (RadiusM + depthM);

    /// <inheritdoc/>
    public override double VolumeM3(double depthM) => 4 * Math.PI / 3 * (Math.Pow(RadiusM + depthM, 3) - Math.Pow(RadiusM, 3));
}

/// <summary>Rectangular box by <see cref="BoxShapeFactor"/>.</summary>
/// <remarks>
/// Surfaces between nested layers are taken as boxes of one temperature. That is right between layers of very different conductivity and an upper bound of
/// the leak else, for a surface held at one temperature never hinders heat; <see cref="NestingExcess"/> says by how much at most.
/// </remarks>
/// <param name="LengthM">Inside length, m, above 0.</param>
/// <param name="WidthM">Inside width, m, above 0.</param>
/// <param name="HeightM">Inside height, m, above 0.</param>
public sealed record BoxWall(double LengthM, double WidthM, double HeightM) : WallShape
{
    /// <inheritdoc/>
    public override double ShapeFactorM(double fromM, double toM) => Of(fromM, toM).ShapeFactorM;

    /// <inheritdoc/>
    public override double AreaM2(double depthM)
    {
        var (a, b, c) = Sides(depthM);
        return 2 * (a * b + b * c + c * a);
    }

    /// <inheritdoc/>
    public override double VolumeM3(double depthM)
    {
        var (a, b, c) = Sides(depthM);
        return a * b * c - LengthM * WidthM * HeightM;
    }

    /// <inheritdoc/>
    public override string? Warning(double fromM, double toM) => Of(fromM, toM).Warning;

    /// <summary>By how much the leak is over-rated at most, as a share, when a wall of one conductivity is split at these depths.</summary>
    /// <param name="depthsM">Depths of all surfaces from 0 outwards, m.</param>
    public double NestingExcess(IReadOnlyList<double> depthsM)
    {
        double resistance = 0;
        for (var i = 1; i < depthsM.Count; i++) resistance += 1 / ShapeFactorM(depthsM[i - 1], depthsM[i]);
        return 1 / (resistance * ShapeFactorM(depthsM[0], depthsM[^1])) - 1;
    }

    private BoxShapeFactor Of(double fromM, double toM) => BoxShapeFactor.Of(Sides(fromM), toM - fromM);

    private (double, double, double) Sides(double depthM) => (LengthM + 2 * depthM, WidthM + 2 * depthM, HeightM + 2 * depthM);
}
