using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Machine.Streams;

/// <summary>One flash along an isobar: temperature, enthalpy and the columns of <see cref="StreamColumn"/>.</summary>
internal sealed class StreamNode
{
    /// <summary>K.</summary>
    public required double TemperatureK { get; init; }
    /// <summary>J/mol.</summary>
    public required double MolarEnthalpy { get; init; }
    /// <summary>Phases in words.</summary>
    public required string Phases { get; init; }
    /// <summary>Molar fraction of every phase, in the order of the words.</summary>
    public required double[] Fractions { get; init; }
    /// <summary>Mole fractions of the vapour; null where there is none.</summary>
    public double[]? Vapour { get; init; }
    /// <summary>Mole fractions of all liquid together; null where there is none.</summary>
    public double[]? Liquid { get; init; }
    /// <summary>Values by column; not a number where the phase is absent, until <see cref="IsobarSampler"/> fills it.</summary>
    public required double[] Values { get; init; }

    /// <summary>The phases themselves, to go on from; null where none were kept.</summary>
    public FlashMark? Mark { get; init; }

    // J/mol; less than this is a liquid that becomes a gas without boiling
    private const double LeastBoiling = 100;

    /// <summary>True when this is saturated liquid and the next node the saturated vapour of the same temperature: a pure fluid boils between them.</summary>
    public bool BoilsInto(StreamNode warmer) => Phases == "liquid" && warmer.Phases == "vapour" && warmer.MolarEnthalpy - MolarEnthalpy > LeastBoiling;
}
