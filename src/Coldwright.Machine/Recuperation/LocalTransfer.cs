using Coldwright.Machine.Flow;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Streams;
using FrictionLaw = Coldwright.Machine.Flow.Friction;

namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Heat transfer, friction and hold-up of one stream in its passage, from the common correlations: <see cref="InTube"/> in tubes,
/// with the ratio of annulus to tube carried over from the single phases to two-phase flow in the outer passage.
/// </summary>
internal static class LocalTransfer
{
    // below this the two-phase and single-phase laws agree to a part in a thousand
    private const double LeastQuality = 1e-6;

    private static readonly double CondensingUncertainty = Quadrature(Condensation.ShahCorrelation, MixtureCorrection.SilverBellGhalyCorrelation);
    private static readonly double BoilingUncertainty = Quadrature(Boiling.GungorWintertonCorrelation, MixtureCorrection.SilverBellGhalyCorrelation);

    /// <param name="p">State.</param>
    /// <param name="channel">Passage.</param>
    /// <param name="massFlow">kg/s, above 0.</param>
    /// <param name="condensing">True: gives up heat; false: takes it up.</param>
    /// <param name="heatFlux">Heat into the fluid, W/m2 of heated wall; used when boiling.</param>
    /// <param name="pseudoCriticalPa">Pa.</param>
    public static LocalAnswer At(in StreamPoint p, FlowChannel channel, double massFlow, bool condensing, double heatFlux, double pseudoCriticalPa)
    {
        double g = massFlow / channel.AreaM2;
        return TwoPhase(p) ? Two(p, channel, g, condensing, heatFlux, pseudoCriticalPa) : One(p, channel, g);
    }

    public static bool TwoPhase(in StreamPoint p) =>
        p.Quality is > LeastQuality and < 1 - LeastQuality && p.PhaseEnthalpyDifference > 0 && p.Liquid.Density > p.Vapour.Density * 1.0001;

    /// <summary>What the correlations were asked with, for the checks of their ranges.</summary>
    public static TwoPhaseFlow Asked(in StreamPoint p, FlowChannel channel, double massFlux, double pseudoCriticalPa) => new()
    {
        MassFlux = massFlux,
        Quality = p.Quality,
        DiameterM = channel.HydraulicDiameterM,
        LiquidDensity = p.Liquid.Density,
        VapourDensity = p.Vapour.Density,
        LiquidViscosity = p.Liquid.Viscosity,
        VapourViscosity = p.Vapour.Viscosity,
        LiquidConductivity = p.Liquid.Conductivity,
        VapourConductivity = p.Vapour.Conductivity,
        LiquidHeatCapacity = p.Liquid.HeatCapacity,
        VapourHeatCapacity = p.Vapour.HeatCapacity,
        LatentHeat = p.PhaseEnthalpyDifference,
        ReducedPressure = p.PressurePa / pseudoCriticalPa,
        MolarMass = p.MolarMass,
    };

    private static LocalAnswer One(in StreamPoint p, FlowChannel channel, double g)
    {
        var phase = p.Single;
        double d = channel.HydraulicDiameterM;
        double film = OnePhase(phase, channel, g, d);
        bool coiled = channel.DiameterOverCoil > 0;
        var heat = channel.AnnulusRatio > 0 ? Annulus.NusseltCorrelation : SinglePhase.NusseltCorrelation;
        double uncertainty = coiled ? Math.Max(heat.RelativeUncertainty, SinglePhase.NusseltCoiledCorrelation.RelativeUncertainty) : heat.RelativeUncertainty;
        if (p.Phases.Contains("second")) uncertainty = Together(uncertainty, LiquidMixing.CombineCorrelation.RelativeUncertainty);
        double friction = Gradient(phase, channel, g, d);
        double density = p.Density;
        return new LocalAnswer(film, uncertainty, friction, (coiled ? FrictionLaw.CoiledCorrelation : FrictionLaw.ChurchillCorrelation).RelativeUncertainty, g * g / density, density);
    }

    private static LocalAnswer Two(in StreamPoint p, FlowChannel channel, double g, bool condensing, double heatFlux, double pseudoCriticalPa)
    {
        double d = channel.HydraulicDiameterM, x = p.Quality;
        var flow = Asked(p, channel, g, pseudoCriticalPa);
        double share = MixtureCorrection.SensibleShare(x, p.Vapour.HeatCapacity, p.MassTemperatureSlope);
        double film = condensing ? InTube.Condensing(flow, share, channel.DiameterOverCoil) : InTube.BoilingFlow(flow, heatFlux, share, channel.DiameterOverCoil);
        film *= AnnulusOverTube(p, channel, g, d);
        double uncertainty = condensing ? CondensingUncertainty : BoilingUncertainty;
        if (p.Phases.Contains("second")) uncertainty = Together(uncertainty, LiquidMixing.CombineCorrelation.RelativeUncertainty);
        double friction = TwoPhaseGradient.MuellerSteinhagenHeck(x, Gradient(p.Liquid, channel, g, d), Gradient(p.Vapour, channel, g, d));
        double hold = VoidFraction.Rouhani(g, x, p.Liquid.Density, p.Vapour.Density, p.SurfaceTension);
        double density = hold * p.Vapour.Density + (1 - hold) * p.Liquid.Density;
        return new LocalAnswer(film, uncertainty, friction, TwoPhaseGradient.MuellerSteinhagenHeckCorrelation.RelativeUncertainty,
            MomentumFlux.Separated(g, x, hold, p.Liquid.Density, p.Vapour.Density), density);
    }

    /// <summary>The film's parts, where there are two phases or one.</summary>
    public static FilmParts Parts(in StreamPoint p, FlowChannel channel, double massFlow, bool condensing, double pseudoCriticalPa)
    {
        double g = massFlow / channel.AreaM2, d = channel.HydraulicDiameterM;
        if (!TwoPhase(p))
        {
            double only = OnePhase(p.Single, channel, g, d);
            return new(only, 0, only, only, 0, only);
        }
        var flow = Asked(p, channel, g, pseudoCriticalPa);
        var parts = condensing ? InTube.CondensingParts(flow, channel.DiameterOverCoil) : InTube.BoilingParts(flow, channel.DiameterOverCoil);
        double ratio = AnnulusOverTube(p, channel, g, d);
        return parts with { Share = ratio * parts.Share, Rest = ratio * parts.Rest };
    }

    // what the outer passage's film is over a tube's, carried over from the single phases
    private static double AnnulusOverTube(in StreamPoint p, FlowChannel channel, double g, double d)
    {
        if (channel.AnnulusRatio <= 0) return 1;
        double liquid = OnePhase(p.Liquid, channel, g, d) / TubeOnePhase(p.Liquid, channel, g, d), vapour = OnePhase(p.Vapour, channel, g, d) / TubeOnePhase(p.Vapour, channel, g, d);
        return (1 - p.Quality) * liquid + p.Quality * vapour;
    }

    private static double TubeOnePhase(PhaseTransport phase, FlowChannel channel, double g, double d) =>
        InTube.OnePhase(g, d, phase.Viscosity, phase.Conductivity, phase.HeatCapacity, channel.DiameterOverCoil, channel.RelativeRoughness);

    // an annulus in a coil: the straight annulus times what coiling does to a tube of its hydraulic diameter (our rule)
    private static double OnePhase(PhaseTransport phase, FlowChannel channel, double g, double d)
    {
        double tube = TubeOnePhase(phase, channel, g, d);
        if (channel.AnnulusRatio <= 0) return tube;
        double annulus = Annulus.Nusselt(g * d / phase.Viscosity, phase.Prandtl, channel.AnnulusRatio, AnnulusWall.Inner) * phase.Conductivity / d;
        if (channel.DiameterOverCoil <= 0) return annulus;
        return annulus * tube / InTube.OnePhase(g, d, phase.Viscosity, phase.Conductivity, phase.HeatCapacity);
    }

    private static double Gradient(PhaseTransport phase, FlowChannel channel, double g, double d)
    {
        double tube = PressureGradient.SinglePhase(g, d, phase.Density, phase.Viscosity, channel.RelativeRoughness, channel.DiameterOverCoil);
        if (channel.AnnulusRatio <= 0) return tube;
        double re = g * d / phase.Viscosity;
        double straight = FrictionLaw.Churchill(re, channel.RelativeRoughness);
        return tube * Annulus.DarcyFriction(re, channel.RelativeRoughness, channel.AnnulusRatio) / straight;
    }

    private static double Quadrature(Correlation a, Correlation b) => Together(a.RelativeUncertainty, b.RelativeUncertainty);
    private static double Together(double a, double b) => Math.Sqrt(a * a + b * b);
}
