using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Precooling;

/// <summary>Evaporator: boiling refrigerant in counterflow to the mixture. Own input record, SI.</summary>
public sealed record MixtureEvaporator
{
    /// <summary>Conductance with boiling refrigerant along the whole of it, refrigerant to mixture, W/K, 0.01 to 1e5.</summary>
    public required double ConductanceWPerK { get; init; }
    /// <summary>Conductance of the part where the refrigerant is dry, over that of the same part boiling, 0.02 to 1; 0.3: common practice.</summary>
    public double DryShare { get; init; } = 0.3;
    /// <summary>One standard deviation of the conductance, relative, 0 to 1; 0.25: common practice for an estimate.</summary>
    public double RelativeUncertainty { get; init; } = 0.25;

    internal void Check()
    {
        InputCheck.Within(ConductanceWPerK, 0.01, 1e5, "W/K", $"evaporator {nameof(ConductanceWPerK)}");
        InputCheck.Within(DryShare, 0.02, 1, "", nameof(DryShare));
        InputCheck.Within(RelativeUncertainty, 0, 1, "", $"evaporator {nameof(RelativeUncertainty)}");
    }
}
