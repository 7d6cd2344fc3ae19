using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Machine.ColdVessel;

/// <summary>One standard deviation from the stated uncertainty of the correlations: the film in the tube, the condensing film with its row correction, free convection and friction, independent of one another, each wrong by the same share all along.</summary>
/// <param name="HeatW">W.</param>
/// <param name="CondensedKgPerS">kg/s.</param>
/// <param name="OutletK">Mixture, K.</param>
/// <param name="LiquidK">Liquid, K; 0 where it was given.</param>
/// <param name="ConductanceWPerK">W/K.</param>
/// <param name="PressureDropPa">Pa.</param>
public sealed record ColdVesselBand(double HeatW, double CondensedKgPerS, double OutletK, double LiquidK, double ConductanceWPerK, double PressureDropPa);

/// <summary>A coil in its vessel at work. Immutable.</summary>
public sealed record ColdVesselResult
{
    /// <summary>Heat into the mixture, W.</summary>
    public required double HeatW { get; init; }
    /// <summary>Of it through the coil above the level, W; the feed's desuperheating is in it.</summary>
    public required double CondensingW { get; init; }
    /// <summary>Of it through the coil in the liquid (or dense fluid), W.</summary>
    public required double LiquidW { get; init; }
    /// <summary>Of the condensing heat what brings the feed to its dew point, W.</summary>
    public required double DesuperheatingW { get; init; }
    /// <summary>Gas condensed, kg/s; above the critical pressure feed brought to the content's temperature, kg/s.</summary>
    public required double CondensedKgPerS { get; init; }
    /// <summary>Bubble point of the content, K; null above the critical pressure.</summary>
    public required double? SaturationK { get; init; }
    /// <summary>Liquid or dense fluid, K.</summary>
    public required double LiquidK { get; init; }
    /// <summary>True when the liquid's temperature is the steady one; false when it was given.</summary>
    public required bool Steady { get; init; }
    /// <summary>Subcooling of the liquid, K; 0 above the critical pressure.</summary>
    public double SubcoolingK => SaturationK is { } t ? t - LiquidK : 0;
    /// <summary>Rate at which the liquid's heat changes, W; 0 when steady, below 0 while it cools.</summary>
    public required double LiquidGainW { get; init; }

    /// <summary>Mixture in, K.</summary>
    public required double InletK { get; init; }
    /// <summary>Mixture out, K.</summary>
    public required double OutletK { get; init; }
    /// <summary>Mixture out, J/mol.</summary>
    public required double OutletEnthalpy { get; init; }
    /// <summary>Mixture out, Pa.</summary>
    public required double OutletPressurePa { get; init; }
    /// <summary>Mixture out, mole fraction of vapour.</summary>
    public required double OutletVapourFraction { get; init; }
    /// <summary>Loss of the mixture's pressure, Pa.</summary>
    public required double PressureDropPa { get; init; }
    /// <summary>Content (bubble point; dense fluid) warmer than the mixture leaving the coil by this, K: the coil's own difference.</summary>
    public double OutletDifferenceK => (SaturationK ?? LiquidK) - OutletK;
    /// <summary>Sum of the local conductances between content and mixture, W/K.</summary>
    public required double ConductanceWPerK { get; init; }
    /// <summary>Of it above the level, W/K.</summary>
    public required double CondensingConductanceWPerK { get; init; }
    /// <summary>Heat over conductance: the mean difference between content and mixture, K.</summary>
    public double MeanDifferenceK => HeatW / ConductanceWPerK;
    /// <summary>Surface that meets gas, m2.</summary>
    public required double CondensingAreaM2 { get; init; }
    /// <summary>Surface that meets liquid or dense fluid, m2.</summary>
    public required double SubmergedAreaM2 { get; init; }

    /// <summary>(Mixture's gain less what feed and liquid give up) over the heat, or over 1 mW where that is more.</summary>
    public required double EnergyError { get; init; }
    /// <summary>One standard deviation; null when not asked for.</summary>
    public ColdVesselBand? Band { get; init; }
    /// <summary>Along the tube from where the mixture enters.</summary>
    public required IReadOnlyList<CoilStation> Profile { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
    /// <summary>What the solver did.</summary>
    public required SolveReport Report { get; init; }
}
