using Coldwright.Materials.Solids;

namespace Coldwright.Machine.Insulation;

/// <summary>One layer of a wall, from inside to outside in a list.</summary>
/// <param name="Name">For reports.</param>
/// <param name="ThicknessM">Thickness, m, above 0 to 2.</param>
public abstract record InsulationLayer(string Name, double ThicknessM)
{
    /// <summary>One standard deviation of the heat flow through it, divided by the flow.</summary>
    public abstract double RelativeUncertainty { get; }

    /// <summary>Heat flow per metre of shape factor, W/m: flux times thickness; rises with the warm and falls with the cold temperature.</summary>
    /// <param name="coldK">Inner temperature, K.</param>
    /// <param name="warmK">Outer temperature, K.</param>
    public abstract double Potential(double coldK, double warmK);

    /// <summary>Shape factor of the layer, m.</summary>
    /// <param name="shape">The wall.</param>
    /// <param name="fromM">Inner depth, m.</param>
    public virtual double ShapeM(WallShape shape, double fromM) => shape.ShapeFactorM(fromM, fromM + ThicknessM);

    /// <summary>Heat to bring a cubic metre from one temperature to another, J/m3; null where density or specific heat are not known.</summary>
    /// <param name="fromK">Start, K.</param>
    /// <param name="toK">End, K.</param>
    public abstract double? HeatPerVolume(double fromK, double toK);

    /// <summary>What a person must be told about the layer at these temperatures.</summary>
    /// <param name="coldK">Inner temperature, K.</param>
    /// <param name="warmK">Outer temperature, K.</param>
    public abstract IEnumerable<string> Warnings(double coldK, double warmK);

    internal void RequireThickness()
    {
        if (!(ThicknessM is > 0 and <= 2)) throw new ArgumentException(FormattableString.Invariant($"the thickness of the layer {Name} must be above 0 and not above 2 m, got {ThicknessM} m"));
    }
}

/// <summary>A layer that conducts: a solid, a foam, a powder.</summary>
/// <param name="Name">For reports.</param>
/// <param name="ThicknessM">Thickness, m.</param>
/// <param name="Conductivity">Dry conductivity, W/(m K).</param>
/// <param name="Water">Moisture in it.</param>
/// <param name="DensityKgPerM3">Density, kg/m3; null where unknown.</param>
/// <param name="SpecificHeat">Specific heat, J/(kg K); null where unknown.</param>
/// <param name="Caveat">To be shown with every result; null when there is nothing to say.</param>
public sealed record ConductingLayer(
    string Name, double ThicknessM, MaterialProperty Conductivity, Moisture Water, double? DensityKgPerM3, MaterialProperty? SpecificHeat, string? Caveat) : InsulationLayer(Name, ThicknessM)
{
    /// <summary>A layer of a library solid.</summary>
    /// <param name="solid">The solid.</param>
    /// <param name="thicknessM">Thickness, m.</param>
    /// <param name="water">Moisture; null for dry.</param>
    public static ConductingLayer Of(SolidMaterial solid, double thicknessM, Moisture? water = null) =>
        new(solid.Name, thicknessM, solid.ConductivityCurve, water ?? Moisture.None, solid.Density?.KgPerM3, solid.SpecificHeatCurve, solid.Caveat);

    /// <summary>A layer of a foam or powder modelled with the gas in it.</summary>
    /// <param name="foam">The foam.</param>
    /// <param name="thicknessM">Thickness, m.</param>
    /// <param name="solid">Library solid whose specific heat it has.</param>
    /// <param name="water">Moisture; null for dry.</param>
    public static ConductingLayer Of(CellularInsulation foam, double thicknessM, SolidMaterial? solid = null, Moisture? water = null) =>
        new(foam.Name, thicknessM, foam.Conductivity(), water ?? Moisture.None, foam.DensityKgPerM3, solid?.SpecificHeatCurve, foam.Caveat);

    /// <inheritdoc/>
    public override double RelativeUncertainty => Math.Sqrt(Conductivity.RelativeUncertainty * Conductivity.RelativeUncertainty + Water.RelativeUncertainty * Water.RelativeUncertainty);

    /// <inheritdoc/>
    public override double Potential(double coldK, double warmK) => Water.Multiplier * Conductivity.Integral(coldK, warmK).Value;

    /// <inheritdoc/>
    /// <remarks>Dry: water would add at most its 4.2 MJ/(m3 K) times the share, and 334 MJ/m3 where it freezes.</remarks>
    public override double? HeatPerVolume(double fromK, double toK) => DensityKgPerM3 * SpecificHeat?.Integral(fromK, toK).Value;

    /// <inheritdoc/>
    public override IEnumerable<string> Warnings(double coldK, double warmK)
    {
        if (Caveat is not null) yield return Caveat;
        if (Conductivity.Integral(coldK, warmK).Warning is { } warning) yield return warning;
        if (Water.VolumeShare > 0 && coldK < 273.15) yield return $"moisture in {Name} is frozen in the cold part: ice conducts better than the law for water says, take the leak as a lower bound";
        if (HeatPerVolume(coldK, warmK) is null) yield return $"no density or specific heat of {Name}: its stored heat is left out";
    }
}
