namespace Coldwright.Materials.Solids;

/// <summary>Density of a solid at room temperature.</summary>
/// <param name="KgPerM3">Density, kg/m3; for a foam or powder of the whole, gas included.</param>
/// <param name="RelativeUncertainty">One standard deviation divided by the value, 0 to 1.</param>
/// <param name="Provenance">Published or from memory.</param>
public sealed record SolidDensity(double KgPerM3, double RelativeUncertainty, Provenance Provenance);
