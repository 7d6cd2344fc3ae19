using Coldwright.Fluids.States;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>What the net cooling of a pass condenses.</summary>
internal sealed record ProductMade
{
    public double FeedMol { get; init; }
    public double FeedPrecoolW { get; init; }
    public double MassError { get; init; }
    public LiquidResult? Liquid { get; init; }
    public FluidState? Arriving { get; init; }
    public FluidState? LetDown { get; init; }
    public (double Enthalpy, double Entropy, double Density) Leaving { get; init; }

    /// <summary>Heat to be taken from a mole of feed at the vessel, J/mol, at a load temperature and a temperature behind the precooler.</summary>
    public static double HeatPerMole(Hardware h, ProductSolver product, double loadK, double precooledK) =>
        product.Arriving(h.Layout.FeedPrecooled ? precooledK : null).MolarEnthalpy - product.Leaving(loadK).Enthalpy;

    public static ProductMade Of(Hardware h, LoopPass p, ProductSolver? product)
    {
        if (product is null) return new ProductMade();
        var arriving = product.Arriving(h.Layout.FeedPrecooled ? p.RecuperatorInletK : null);
        var leaving = product.Leaving(p.LoadK);
        var letDown = product.LetDown(leaving.Enthalpy);
        double heat = arriving.MolarEnthalpy - leaving.Enthalpy;
        bool reached = product.CondensingK is not { } t || p.LoadK <= t + 1e-6;
        double feed = heat > 0 && reached ? Math.Max(0, p.NetCoolingW) / heat : 0, mass = product.Fluid.MolarMass;
        return new ProductMade
        {
            FeedMol = feed,
            FeedPrecoolW = feed * (product.Compressed.MolarEnthalpy - arriving.MolarEnthalpy),
            MassError = feed > 0 ? 1 - letDown.Phases.Sum(x => x.Fraction) : 0,
            Arriving = arriving,
            Leaving = leaving,
            LetDown = letDown,
            Liquid = new LiquidResult
            {
                Substance = product.Fluid.Name,
                CondensingPressurePa = h.Layout.Feed!.PressurePa,
                CondensingTemperatureK = product.CondensingK,
                LiquidTemperatureK = p.LoadK,
                RateKgPerS = feed * mass,
                RateLPerH = feed / leaving.Density * 3.6e6,
                CollectedLPerH = feed * (1 - letDown.VapourFraction) / product.BoilingLiquid.MolarDensity * 3.6e6,
                FlashFraction = letDown.VapourFraction,
                HeatPerKgJ = heat / mass,
            },
        };
    }
}
