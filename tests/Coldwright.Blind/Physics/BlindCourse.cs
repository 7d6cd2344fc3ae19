namespace Coldwright.Blind.Physics;

/// <summary>One moment of a blind machine. SI, pressures absolute.</summary>
public readonly record struct BlindMoment(double TimeS, double LoadK, double ThrottleInletK, double CoilOutletK, double PrecooledK, double ReturnK, double DischargeK, double HighPa, double LowPa, double MassFlow, double CompressorW, double PowerW, double VesselPa, double BottleKg);

/// <summary>A blind machine's whole run.</summary>
public sealed record BlindCourse
{
    /// <summary>Moments, evenly apart.</summary>
    public required IReadOnlyList<BlindMoment> Moments { get; init; }
    /// <summary>Pressure at rest before the start, Pa.</summary>
    public required double RestPa { get; init; }
    /// <summary>Fed, kg.</summary>
    public double FedKg { get; init; }
    /// <summary>Collected, kg.</summary>
    public double CollectedKg { get; init; }
    /// <summary>What the standing flask loses, kg/s.</summary>
    public double FlaskLossKgPerS { get; init; }
}
