namespace Coldwright.Machine.Insulation;

/// <summary>How heat comes from the room to the outside of the wall.</summary>
public abstract record RoomSide
{
    /// <summary>Flux into the wall, W/m2; 0 when surface and room are alike, falling as the surface warms.</summary>
    /// <param name="surfaceK">Surface temperature, K.</param>
    /// <param name="roomK">Temperature of air and walls of the room, K.</param>
    public abstract double Flux(double surfaceK, double roomK);

    /// <summary>One standard deviation of the flux at given temperatures, divided by it.</summary>
    public abstract double RelativeUncertainty { get; }
}

/// <summary>A fixed surface resistance, convection and radiation together.</summary>
/// <param name="ResistanceM2KPerW">m2 K/W, 1e-4 to 100; 0.13 for still indoor air (ISO 6946:2017).</param>
public sealed record FixedFilm(double ResistanceM2KPerW = BoxHeatLeak.OutsideSurfaceResistance) : RoomSide
{
    /// <inheritdoc/>
    public override double RelativeUncertainty => 0.2;

    /// <inheritdoc/>
    public override double Flux(double surfaceK, double roomK) => ResistanceM2KPerW is >= 1e-4 and <= 100
        ? (roomK - surfaceK) / ResistanceM2KPerW
        : throw new ArgumentException(FormattableString.Invariant($"the surface resistance must be 1e-4 to 100 m2 K/W, got {ResistanceM2KPerW} m2 K/W"));
}

/// <summary>Free convection of air along upright faces and radiation to the room.</summary>
/// <remarks>
/// Nu = (0.825 + 0.387 Ra^(1/6)/(1 + (0.492/Pr)^(9/16))^(8/27))^2 over the height: S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18
/// (1975) 1323, all Ra up to 1e12; within 10 % of the data it was made from. Properties of air at the mean of room and surface, 1 atm:
/// viscosity 1.716e-5 Pa s (T/273)^1.5 384/(T + 111), conductivity 0.0241 W/(m K) (T/273)^1.5 467/(T + 194), Sutherland's law with the constants of
/// F. M. White, Viscous Fluid Flow, 2nd ed. (1991), table 1-2 and 1-3, from memory; cp 1006 J/(kg K). Top and bottom are taken like the sides.
/// </remarks>
/// <param name="HeightM">Height of the faces, m, 0.01 to 10.</param>
/// <param name="Emissivity">Emissivity of the surface, 0 to 1; paint, wood, tape, plastic 0.9, bright foil 0.05 to 0.1 (our assumption).</param>
public sealed record FreeConvectionFilm(double HeightM, double Emissivity = 0.9) : RoomSide
{
    /// <inheritdoc/>
    public override double RelativeUncertainty => 0.15;

    /// <inheritdoc/>
    public override double Flux(double surfaceK, double roomK)
    {
        if (!(HeightM is >= 0.01 and <= 10)) throw new ArgumentException(FormattableString.Invariant($"the height must be 0.01 to 10 m, got {HeightM} m"));
        if (!(Emissivity is >= 0 and <= 1)) throw new ArgumentException(FormattableString.Invariant($"the emissivity must be 0 to 1, got {Emissivity}"));
        var radiation = Emissivity * CellularInsulation.StefanBoltzmann * (roomK * roomK + surfaceK * surfaceK) * (roomK + surfaceK) * (roomK - surfaceK);
        return Convection(surfaceK, roomK) * (roomK - surfaceK) + radiation;
    }

    /// <summary>Coefficient of free convection, W/(m2 K).</summary>
    /// <param name="surfaceK">Surface temperature, K.</param>
    /// <param name="roomK">Air temperature, K.</param>
    public double Convection(double surfaceK, double roomK)
    {
        var t = (surfaceK + roomK) / 2;
        var stretch = Math.Pow(t / 273, 1.5);
        var viscosity = 1.716e-5 * stretch * 384 / (t + 111);
        var conductivity = 0.0241 * stretch * 467 / (t + 194);
        var density = 101325 / (287.05 * t);
        var prandtl = viscosity * 1006 / conductivity;
        var rayleigh = 9.80665 * Math.Abs(roomK - surfaceK) / t * HeightM * HeightM * HeightM * density * density / (viscosity * viscosity) * prandtl;
        var nusselt = 0.825 + 0.387 * Math.Pow(rayleigh, 1.0 / 6) / Math.Pow(1 + Math.Pow(0.492 / prandtl, 9.0 / 16), 8.0 / 27);
        return nusselt * nusselt * conductivity / HeightM;
    }
}
