using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Precooling;

/// <summary>The loop's state points at given pressures: what the search moves about. Molar, SI.</summary>
internal readonly record struct LoopPoint
{
    public required double LnEvaporating { get; init; }
    public required double LnCondensing { get; init; }
    public required double SuperheatK { get; init; }
    /// <summary>What arrives at the expansion device: 1 full subcooling, 0 bubble point, below 0 with vapour.</summary>
    public required double Measure { get; init; }
    /// <summary>mol/s while the compressor runs.</summary>
    public required double Flow { get; init; }
    /// <summary>m3/s at the suction port by the compressor's table, not corrected: so that what counts as delivering nothing does not depend on what was solved before.</summary>
    public required double TableVolumeFlow { get; init; }
    public required double Work { get; init; }
    public required double ShellShare { get; init; }
    public required GasPoint Outlet { get; init; }
    public required GasPoint Suction { get; init; }
    public required double DischargeEnthalpy { get; init; }
    public required double DischargeK { get; init; }
    public required double LiquidEnthalpy { get; init; }
    public required double LiquidK { get; init; }

    public double EvaporatingPa => Math.Exp(LnEvaporating);
    public double CondensingPa => Math.Exp(LnCondensing);
    /// <summary>Cooling per mole, J/mol.</summary>
    public double Cooling => Outlet.MolarEnthalpy - LiquidEnthalpy;
    /// <summary>Cooling while the compressor runs, W.</summary>
    public double CoolingW => Flow * Cooling;
}
