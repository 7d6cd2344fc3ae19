using Coldwright.Fluids.Substances;
using Coldwright.Quantities;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Design.Charging;

/// <summary>How to fill a loop. SI, pressures absolute.</summary>
public sealed record ChargeResult
{
    /// <summary>What is charged, mole fractions.</summary>
    public required Composition Mixture { get; init; }
    /// <summary>kg.</summary>
    public required double MassKg { get; init; }
    /// <summary>mol.</summary>
    public required double Moles { get; init; }
    /// <summary>Space it fills, place by place, m3.</summary>
    public required IReadOnlyList<(string Name, double VolumeM3)> Places { get; init; }
    /// <summary>Pump and rinses.</summary>
    public required Evacuation Evacuation { get; init; }
    /// <summary>Steps.</summary>
    public required FillingRecipe Recipe { get; init; }
    /// <summary>What does not belong in it.</summary>
    public required IReadOnlyList<TraceInCharge> Traces { get; init; }
    /// <summary>After a leak; empty without one.</summary>
    public required IReadOnlyList<TopUpCase> TopUps { get; init; }
    /// <summary>Lowest of the pressures that parts, tubes and relief devices of the loop allow, Pa, and whose; null when none is known.</summary>
    public (string Name, double Pa)? LowestLimit { get; init; }
    /// <summary>The loop closed with this charge; null when it was not asked for or there is no answer.</summary>
    public ModelRating? Cold { get; init; }
    /// <summary>Coldest temperature in the loop, K, and whether it was computed or is the product's.</summary>
    public required double ColdestK { get; init; }
    /// <summary>Fluid model of the filling.</summary>
    public required string Model { get; init; }
    /// <summary>Safety findings, gravest first, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
    /// <summary>True when the closed loop was stopped; the recipe stands.</summary>
    public bool Stopped { get; init; }

    /// <summary>True when the loop at rest stays below every limit.</summary>
    public bool StandsBelowLimits => LowestLimit is not { } limit || Recipe.StandstillPa <= limit.Pa;
}
