using Coldwright.Fluids.States;
using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;

namespace Coldwright.Simulation.Rating;

/// <summary>What the cold end has to do to a mole of feed gas, and what arrives in the flask of it.</summary>
internal sealed class ProductSolver
{
    private readonly FeedPart _feed;
    private readonly double _roomK, _roomPa;

    public ProductSolver(FeedPart feed, RoomDescription room)
    {
        _feed = feed;
        (_roomK, _roomPa) = (room.TemperatureK, room.PressurePa);
        Fluid = new ProductFluid(feed.Gas);
        CondensingK = Fluid.Saturation(feed.PressurePa)?.TemperatureK;
        Supply = Fluid.At(_roomK, feed.SupplyPressurePa ?? feed.PressurePa);
        Compressed = Fluid.At(_roomK, feed.PressurePa);
        Environment = Fluid.At(_roomK, _roomPa);
        BoilingLiquid = Fluid.Saturated(101325, 0);
    }

    public ProductFluid Fluid { get; }
    /// <summary>Condensing temperature at the vessel's pressure, K; null above the critical pressure.</summary>
    public double? CondensingK { get; }
    /// <summary>Gas as it is supplied.</summary>
    public FluidState Supply { get; }
    /// <summary>Gas at the vessel's pressure and room temperature (after the feed compressor's cooler).</summary>
    public FluidState Compressed { get; }
    /// <summary>Gas at room conditions: zero of the product's exergy.</summary>
    public FluidState Environment { get; }
    /// <summary>Liquid at the normal boiling point.</summary>
    public PhaseState BoilingLiquid { get; }

    /// <summary>Liquid (or dense fluid) that leaves the vessel at a load temperature: enthalpy, entropy, density.</summary>
    public (double Enthalpy, double Entropy, double Density) Leaving(double loadK)
    {
        if (CondensingK is { } t && loadK >= t - 1e-6)
        {
            var liquid = Fluid.Saturated(_feed.PressurePa, 0);
            return (liquid.MolarEnthalpy, liquid.MolarEntropy, liquid.MolarDensity);
        }
        var s = Fluid.At(loadK, _feed.PressurePa);
        return (s.MolarEnthalpy, s.MolarEntropy, s.MolarDensity);
    }

    /// <summary>Gas as it arrives at the vessel: precooled to a temperature (K), or at room temperature when null.</summary>
    public FluidState Arriving(double? precooledK) => precooledK is { } t && t < _roomK ? Fluid.At(t, _feed.PressurePa) : Compressed;

    /// <summary>Let down to the room's pressure.</summary>
    public FluidState LetDown(double molarEnthalpy) => Fluid.LetDown(molarEnthalpy, _roomPa);

    /// <summary>Electrical work of the feed compression, J/mol; 0 from a cylinder.</summary>
    public double FeedWork()
    {
        if (_feed.SupplyPressurePa is not { } from || from >= _feed.PressurePa) return 0;
        double isentropic = Fluid.AtEntropy(_feed.PressurePa, Supply.MolarEntropy).MolarEnthalpy - Supply.MolarEnthalpy;
        return isentropic / _feed.FeedCompressorEfficiency;
    }
}
