namespace Coldwright.Machine.Streams;

/// <summary>Columns of a table.</summary>
internal static class StreamColumn
{
    public const int Temperature = 0, VapourFraction = 1, Quality = 2, SpecificVolume = 3,
        VapourDensity = 4, VapourViscosity = 5, VapourConductivity = 6, VapourHeatCapacity = 7,
        LiquidDensity = 8, LiquidViscosity = 9, LiquidConductivity = 10, LiquidHeatCapacity = 11,
        SurfaceTension = 12, PhaseEnthalpyDifference = 13, Count = 14;
}
