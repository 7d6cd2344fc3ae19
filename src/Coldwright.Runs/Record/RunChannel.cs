using Coldwright.Quantities;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Record;

/// <summary>
/// One channel of a run: values in SI (pressures absolute) with their uncertainty and what each sample is worth. Immutable.
/// A sample that is not good carries an infinite standard uncertainty, so a fit that weights by it leaves the sample out by itself.
/// </summary>
public sealed class RunChannel
{
    private readonly double[] _values;
    private readonly float[] _uncertainties;
    private readonly float[] _common;
    private readonly SampleFlag[] _flags;

    internal RunChannel(TimeAxis axis, double[] values, float[] uncertainties, float[] common, SampleFlag[] flags)
    {
        (Axis, _values, _uncertainties, _common, _flags) = (axis, values, uncertainties, common, flags);
        GoodCount = flags.AsSpan().Count(SampleFlag.Good);
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < values.Length; i++)
        {
            if (flags[i] != SampleFlag.Good) continue;
            if (values[i] < low) (low, LowestIndex) = (values[i], i);
            if (values[i] > high) (high, HighestIndex) = (values[i], i);
        }
        (Lowest, Highest) = GoodCount > 0 ? (low, high) : (0, 0);
    }

    /// <summary>Its name in <c>run.yaml</c>.</summary>
    public required string Name { get; init; }
    /// <summary>Where the sensor sits.</summary>
    public required Whereabouts Place { get; init; }
    /// <summary>The sensor.</summary>
    public required SensorDescription Sensor { get; init; }
    /// <summary>Column of the log, as it is headed; empty for hand-noted readings.</summary>
    public required string Column { get; init; }
    /// <summary>Scatter from sample to sample, one standard deviation, SI; 0 when it hides in the logger's step.</summary>
    public required double Noise { get; init; }
    /// <summary>Smallest step of the logger, raw unit; 0 when it is not known.</summary>
    public required double ResolutionRaw { get; init; }
    /// <summary>Parts of the uncertainty at the lowest good value.</summary>
    public required IReadOnlyList<UncertaintyPart> AtLowest { get; init; }
    /// <summary>Parts of the uncertainty at the highest good value.</summary>
    public required IReadOnlyList<UncertaintyPart> AtHighest { get; init; }
    /// <summary>What had to be assumed about the sensor.</summary>
    public required IReadOnlyList<Spoken> Assumptions { get; init; }

    /// <summary>When the samples were taken; channels of the same log share it.</summary>
    public TimeAxis Axis { get; }
    /// <summary>Times, s from the start.</summary>
    public ReadOnlySpan<double> TimesS => Axis.TimesS;
    /// <summary>Values, SI; a neighbour stands in where there is none.</summary>
    public ReadOnlySpan<double> Values => _values;
    /// <summary>Standard uncertainty of each value, SI, everything included; infinite where the sample is not good.</summary>
    public ReadOnlySpan<float> StandardUncertainties => _uncertainties;
    /// <summary>The share of the uncertainty that all samples have in common (calibration, cold junction, barometer), SI; infinite where the sample is not good.</summary>
    public ReadOnlySpan<float> CommonUncertainties => _common;
    /// <summary>What each sample is worth.</summary>
    public ReadOnlySpan<SampleFlag> Flags => _flags;
    /// <summary>How many samples.</summary>
    public int Count => _values.Length;
    /// <summary>How many are good.</summary>
    public int GoodCount { get; }
    /// <summary>Lowest good value, SI; 0 when none is good.</summary>
    public double Lowest { get; }
    /// <summary>Highest good value, SI; 0 when none is good.</summary>
    public double Highest { get; }
    /// <summary>Sample with the lowest good value.</summary>
    public int LowestIndex { get; }
    /// <summary>Sample with the highest good value.</summary>
    public int HighestIndex { get; }
    /// <summary>What it measures.</summary>
    public Measured Measured => Sensor.Kind.Measured;

    /// <summary>The last good value at or before a time, with its age; null when there is none.</summary>
    /// <param name="timeS">s from the start.</param>
    public (double Value, double StandardUncertainty, double AgeS)? LastGood(double timeS)
    {
        for (var i = Axis.IndexAt(timeS); i >= 0; i--)
            if (_flags[i] == SampleFlag.Good) return (_values[i], _uncertainties[i], timeS - Axis.TimesS[i]);
        return null;
    }
}
