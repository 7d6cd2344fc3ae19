namespace Coldwright.Machine.HeatTransfer;

/// <summary>
/// An in-tube film taken apart into what changes with the heat flux, what changes with the temperature's slope, and the rest, so that it can be tabulated: share times the
/// film with the Silver-Bell-Ghaly correction, plus rest.
/// </summary>
/// <param name="Film">Film without heat flux, W/(m2 K).</param>
/// <param name="PerFlux">What the heat flux (W/m2, to the power <see cref="FluxPower"/>) adds to it.</param>
/// <param name="Floor">Least film, W/(m2 K).</param>
/// <param name="VapourAlone">Film of the vapour flowing alone, W/(m2 K).</param>
/// <param name="Share">Weight of the corrected film, 0 to 1.</param>
/// <param name="Rest">What the single phases at either end add, W/(m2 K).</param>
public readonly record struct FilmParts(double Film, double PerFlux, double Floor, double VapourAlone, double Share, double Rest)
{
    /// <summary>Power of the heat flux in <see cref="Boiling.GungorWinterton"/>.</summary>
    public const double FluxPower = 0.86;

    /// <summary>The film, W/(m2 K).</summary>
    /// <param name="heatFlux">W/m2; counted as 0 if negative.</param>
    /// <param name="sensibleShare">Z of <see cref="MixtureCorrection.SensibleShare"/>, 0 to 1.</param>
    public double At(double heatFlux, double sensibleShare)
    {
        double film = heatFlux > 0 && PerFlux > 0 ? Film + PerFlux * Math.Pow(heatFlux, FluxPower) : Film;
        return Rest + Share * MixtureCorrection.SilverBellGhaly(Math.Max(film, Floor), VapourAlone, sensibleShare);
    }
}
