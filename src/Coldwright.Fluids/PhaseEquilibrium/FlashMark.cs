namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>The phases of an answer, kept to be taken up again (<see cref="Flash.Return"/>) and moved to a state near by. Immutable; may be shared between threads.</summary>
public sealed class FlashMark
{
    internal FlashMark(double temperatureK, double pressurePa, double[] z, PhaseBuffer[] phases) => (TemperatureK, PressurePa, Z, Phases) = (temperatureK, pressurePa, z, phases);

    /// <summary>K.</summary>
    public double TemperatureK { get; }
    /// <summary>Pa.</summary>
    public double PressurePa { get; }
    internal double[] Z { get; }
    /// <summary>True for an answer of these overall mole fractions.</summary>
    public bool IsOf(ReadOnlySpan<double> z) => z.SequenceEqual(Z);
    internal PhaseBuffer[] Phases { get; }
}
