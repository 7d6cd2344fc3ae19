using Coldwright.Runs.Record;

namespace Coldwright.Runs.Explain;

/// <summary>A channel of the record that shows an observable of the machine.</summary>
/// <param name="What">What it shows.</param>
/// <param name="Channel">The channel.</param>
/// <param name="StepS">Usual time from one good sample to the next, s.</param>
public sealed record ObservedChannel(Observable What, RunChannel Channel, double StepS)
{
    /// <summary>Standard uncertainty common to all samples near a value (SI), SI.</summary>
    public double CommonAt(double value)
    {
        double low = Channel.Lowest, high = Channel.Highest;
        double Sum(IReadOnlyList<Sensors.UncertaintyPart> parts) => Math.Sqrt(parts.Where(p => p.IsCommon).Sum(p => p.Standard * p.Standard));
        double a = Sum(Channel.AtLowest), b = Sum(Channel.AtHighest);
        return high > low ? a + (b - a) * Math.Clamp((value - low) / (high - low), 0, 1) : a;
    }

    /// <summary>What one kelvin at the cold junction makes at the tip at a temperature (K); 0 for other sensors.</summary>
    public double JunctionGain(double temperatureK, double roomK) => Channel.Sensor.Kind.Thermocouple is { } couple
        ? couple.SensitivityVPerK(roomK) / Math.Max(couple.SensitivityVPerK(temperatureK), 1e-7) : 0;
}
