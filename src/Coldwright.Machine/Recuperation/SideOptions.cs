namespace Coldwright.Machine.Recuperation;

/// <summary>One side's film and friction; the defaults are the correlations as they stand.</summary>
/// <param name="FixedFilm">Film coefficient in place of the correlations, W/(m2 K), above 0; null: correlations.</param>
/// <param name="FilmScale">Factor on the film coefficient, above 0.</param>
/// <param name="FrictionScale">Factor on the friction gradient, at least 0.</param>
public sealed record SideOptions(double? FixedFilm = null, double FilmScale = 1, double FrictionScale = 1)
{
    internal void Check(string name)
    {
        if (FixedFilm is { } f) GeometryGuard.Positive(f, $"film coefficient of the {name} side", "W/(m2 K)");
        GeometryGuard.Positive(FilmScale, $"film scale of the {name} side", "(factor)");
        if (!(FrictionScale >= 0) || !double.IsFinite(FrictionScale)) throw new ArgumentException($"friction scale of the {name} side must not be below 0, got {FrictionScale}");
    }
}
