using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Simulation.Batch;

/// <summary>All that a batch needs of the cooler, worked out once; shared by every run. SI.</summary>
public sealed record BatchCooler
{
    /// <summary>The product in vessel and flask.</summary>
    public required ProductMap Product { get; init; }
    /// <summary>The pure product.</summary>
    public required ProductFluid Fluid { get; init; }
    /// <summary>Flow through an opening into the room.</summary>
    public required OutletFlow Outlet { get; init; }
    /// <summary>Drain line.</summary>
    public required DrainLine Line { get; init; }
    /// <summary>Metal of the drain line; null for none.</summary>
    public MetalStore? LineMetal { get; init; }
    /// <summary>Metal of vessel and coil, at the content's temperature; null for none.</summary>
    public MetalStore? VesselMetal { get; init; }
    /// <summary>Inner wall of the flask; null for none.</summary>
    public MetalStore? FlaskMetal { get; init; }
    /// <summary>Inside volume of the vessel, coil taken off, m3.</summary>
    public required double VesselM3 { get; init; }
    /// <summary>What the flask holds, m3.</summary>
    public double FlaskM3 { get; init; } = 1;
    /// <summary>From the room into the standing flask, W/K.</summary>
    public double FlaskConductanceWPerK { get; init; }
    /// <summary>Net cooling of the cold end (box leak taken off) against the content's temperature, W over K.</summary>
    public required MonotoneCubic NetCoolingW { get; init; }
    /// <summary>How the level changes that; null: not at all.</summary>
    public CoilByLevel? Coil { get; init; }
    /// <summary>Electricity of loop, precooler and fans while it all runs, W.</summary>
    public double LoopPowerW { get; init; }
    /// <summary>Room, K.</summary>
    public required double RoomK { get; init; }
    /// <summary>Room, Pa.</summary>
    public required double RoomPa { get; init; }
    /// <summary>Gas arrives in the vessel at, K.</summary>
    public required double ArrivingK { get; init; }
    /// <summary>Feed lines before the fill valve, m3.</summary>
    public double SupplyLineM3 { get; init; } = 2e-6;
    /// <summary>Feed lines behind the fill valve, m3.</summary>
    public double FillLineM3 { get; init; } = 2e-6;
    /// <summary>Effective area of the open fill valve, m2.</summary>
    public required double FillAreaM2 { get; init; }
    /// <summary>Effective area of the open drain valve, m2.</summary>
    public required double DrainAreaM2 { get; init; }
    /// <summary>Effective area of the shut drain valve, m2.</summary>
    public double SeatAreaM2 { get; init; }
    /// <summary>Highest pressure in the vessel, Pa: that of the feed.</summary>
    public required double FeedPa { get; init; }
    /// <summary>Receiver; null for a supply that never falls.</summary>
    public ReceiverDescription? Receiver { get; init; }
    /// <summary>Before the feed compressor, Pa; null for a cylinder with a regulator.</summary>
    public double? SuctionPa { get; init; }
    /// <summary>Feed compressor's sizes; null for none.</summary>
    public FeedCompressorDescription? Compressor { get; init; }
    /// <summary>Isentropic over electrical power where the compressor's sizes are not known.</summary>
    public double FeedEfficiency { get; init; } = 1;
    /// <summary>Vessel at the start, K.</summary>
    public required double StartK { get; init; }
    /// <summary>Below this the product freezes, K.</summary>
    public required double FreezingK { get; init; }

    /// <summary>What the cold end takes from the content, W; negative below the no-load temperature.</summary>
    /// <param name="content">The content.</param>
    /// <param name="massKg">Its mass, kg.</param>
    internal double CoolingW(in ContentState content, double massKg) => Coil is null ? NetCoolingW.At(content.TemperatureK) : Coil.NetW(content.TemperatureK, CoveredShare(content, massKg));

    // Liquid over the vessel's volume. Dense fluid washes all turns as liquid does; between gas and dense fluid the change is rounded.
    private double CoveredShare(in ContentState content, double massKg)
    {
        if (content.TwoPhase) return Math.Clamp(massKg * content.LiquidShare / content.LiquidDensity / VesselM3, 0, 1);
        double s = Math.Clamp((massKg / VesselM3 / (Fluid.Model.Substances[0].CriticalDensity * Fluid.MolarMass) - 0.7) / 0.6, 0, 1);
        return s * s * (3 - 2 * s);
    }

    /// <summary>Product at the room's pressure: boiling point (K), enthalpies of liquid and vapour (J/kg), liquid density (kg/m3).</summary>
    internal (double BoilingK, double Liquid, double Vapour, double Density) AtRoom
    {
        get
        {
            // a fork: several runs may ask at once
            var map = Product.Fork();
            double bubble = map.BubbleTemperature(RoomPa)!.Value, dew = map.DewTemperature(RoomPa)!.Value;
            var (l, v) = (map.Bubble(bubble)!.Value, map.Dew(dew)!.Value);
            return (bubble, l.LiquidEnthalpy, v.VapourEnthalpy, l.LiquidDensity);
        }
    }

    /// <summary>Mass of the vessel brimful of liquid at the feed pressure, or of dense fluid above the critical pressure, kg.</summary>
    /// <param name="pressurePa">Pa.</param>
    internal double BrimfulKg(double pressurePa)
    {
        var map = Product.Fork();
        if (map.BubbleTemperature(pressurePa) is { } t) return VesselM3 * map.Bubble(t)!.Value.LiquidDensity;
        var dense = new ProductFluid(Fluid.Name).At(Math.Max(StartK, FreezingK + 1), pressurePa);
        return VesselM3 * dense.MolarDensity * Fluid.MolarMass;
    }
}
