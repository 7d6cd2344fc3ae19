using System.Globalization;
using Coldwright.Runs.Files;
using Coldwright.Runs.Repair;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Record;

/// <summary>Makes a channel of raw numbers: judges the samples, converts them and gives each its uncertainty.</summary>
internal static class ChannelBuilder
{
    private const int Nodes = 128;
    private const int MostListed = 20;

    /// <summary>Numbers as they stand in the log or the notes.</summary>
    /// <param name="Axis">Their times.</param>
    /// <param name="Values">Numbers.</param>
    /// <param name="Flags">Good, missing, unreadable, beyond; changed in place.</param>
    /// <param name="StepRaw">Smallest step, raw unit; 0 when not known.</param>
    /// <param name="Column">Heading.</param>
    /// <param name="IsLog">True for a log; notes by hand are not searched for spikes and frozen stretches.</param>
    /// <param name="Line">Line of a sample in the log; 0 when not known.</param>
    public sealed record Raw(TimeAxis Axis, double[] Values, SampleFlag[] Flags, double StepRaw, string Column, bool IsLog, Func<int, int> Line);

    /// <summary>What the conversion needs from outside.</summary>
    /// <param name="RoomPressurePa">Barometer sample by sample, Pa.</param>
    /// <param name="JunctionK">Cold junction sample by sample, K.</param>
    /// <param name="TypicalJunctionK">Cold junction for the uncertainty, K.</param>
    /// <param name="BarometerPa">Standard uncertainty of the barometer, Pa.</param>
    public sealed record Surroundings(Func<int, double> RoomPressurePa, Func<int, double> JunctionK, double TypicalJunctionK, double BarometerPa);

    /// <summary>The channel; faults are added to the list.</summary>
    public static RunChannel Build(ChannelDescription description, Raw raw, Surroundings around, List<Fault> faults)
    {
        var (sensor, name, flags) = (description.Sensor, description.Name, raw.Flags);
        var step = sensor.ResolutionRaw ?? raw.StepRaw;
        var model = new SensorModel(sensor);
        var values = Convert(model, raw, around);
        var rawNoise = raw.IsLog ? NoiseEstimate.Of(raw.Values, flags) : 0;
        if (raw.IsLog) Judge(raw, sensor, rawNoise, step, faults, name);
        Report(FaultKind.Missing, SampleFlag.Missing, "cells are empty", raw, name, faults);
        Report(FaultKind.Unreadable, SampleFlag.Unreadable, "cells hold no number", raw, name, faults);
        Report(FaultKind.OutOfRange, SampleFlag.OutOfRange, "readings lie outside the sensor or outside what can be true (an open lead, an error code)", raw, name, faults);
        Hold(values, flags);

        var noise = raw.IsLog ? NoiseEstimate.Of(values, flags) : 0;
        // Scatter that the logger's step explains is not counted twice.
        if (rawNoise < 0.6 * step) noise = 0;
        var largest = 0.0;
        for (var i = 0; i < values.Length; i++)
            if (flags[i] == SampleFlag.Good) largest = Math.Max(largest, Math.Abs(values[i] - (model.NeedsBarometer ? around.RoomPressurePa(i) : 0)));
        var budget = new SensorUncertainty(model, step, noise, largest, around.TypicalJunctionK, around.BarometerPa);
        var (total, common) = Uncertainties(values, flags, budget);
        var (low, high) = Ends(values, flags);
        return new RunChannel(raw.Axis, values, total, common, flags)
        {
            Name = name,
            Place = description.Place,
            Sensor = sensor,
            Column = raw.Column,
            Noise = noise,
            ResolutionRaw = step,
            AtLowest = budget.At(low),
            AtHighest = budget.At(high),
            Assumptions = budget.Assumptions,
        };
    }

    private static double[] Convert(SensorModel model, Raw raw, Surroundings around)
    {
        var values = new double[raw.Values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            if (raw.Flags[i] != SampleFlag.Good) continue;
            if (!model.TryConvert(raw.Values[i], around.JunctionK(i), around.RoomPressurePa(i), out values[i])) raw.Flags[i] = SampleFlag.OutOfRange;
        }
        return values;
    }

    private static void Judge(Raw raw, SensorDescription sensor, double noise, double step, List<Fault> faults, string name)
    {
        // A motor draws many times its running current for one sample when it starts: real, so power is not searched for spikes.
        if (sensor.Kind.Measured is not (Measured.Power or Measured.Energy) && SpikeFinder.Mark(raw.Values, raw.Flags, noise, step) > 0)
            Report(FaultKind.Spike, SampleFlag.Spike, "samples stand far from both neighbours (spikes)", raw, name, faults);
        var times = raw.Axis.TimesS;
        foreach (var (first, last) in FrozenFinder.Mark(times, raw.Values, raw.Flags, noise, step).Take(MostListed))
        {
            faults.Add(new(FaultKind.Frozen, name, times[first], times[last], last - first, raw.Line(first),
                $"{name} stands still at {raw.Values[first].ToString("0.######", CultureInfo.InvariantCulture)} {sensor.UnitWord} for {(times[last] - times[first]).ToString("0", CultureInfo.InvariantCulture)} s, {last - first} samples; they are not used"));
        }
    }

    private static void Report(FaultKind kind, SampleFlag flag, string what, Raw raw, string name, List<Fault> faults)
    {
        var count = raw.Flags.AsSpan().Count(flag);
        if (count == 0) return;
        int first = raw.Flags.AsSpan().IndexOf(flag), last = raw.Flags.AsSpan().LastIndexOf(flag);
        var share = count == raw.Flags.Length ? "all " : "";
        faults.Add(new(kind, name, raw.Axis.TimesS[first], raw.Axis.TimesS[last], count, raw.Line(first), $"{name}: {share}{count} {what}; they are not used"));
    }

    // Where there is no value its last good neighbour stands in, so that nothing downstream meets a hole; the flag and the infinite uncertainty say so.
    private static void Hold(double[] values, SampleFlag[] flags)
    {
        var next = Array.FindIndex(flags, HasValue);
        if (next < 0) return;
        var held = values[next];
        for (var i = 0; i < values.Length; i++)
        {
            if (HasValue(flags[i])) held = values[i];
            else values[i] = held;
        }
    }

    private static bool HasValue(SampleFlag flag) => flag is SampleFlag.Good or SampleFlag.Spike or SampleFlag.Frozen;

    private static (double Low, double High) Ends(double[] values, SampleFlag[] flags)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < values.Length; i++)
            if (flags[i] == SampleFlag.Good) (low, high) = (Math.Min(low, values[i]), Math.Max(high, values[i]));
        if (high >= low) return (low, high);
        // No good sample: the first stand-in keeps the budget defined; no weight rests on it.
        return values.Length > 0 && values[0] > 0 ? (values[0], values[0]) : (273.15, 273.15);
    }

    // The budget is worked out at a few values and read off in between: a log has millions of samples.
    private static (float[] Total, float[] Common) Uncertainties(double[] values, SampleFlag[] flags, SensorUncertainty budget)
    {
        var (low, high) = Ends(values, flags);
        var nodes = new (double Total, double Common)[Nodes + 1];
        for (var k = 0; k <= Nodes; k++)
        {
            var parts = budget.At(low + (high - low) * k / Nodes);
            nodes[k] = (SensorUncertainty.Combine(parts), SensorUncertainty.Combine(parts.Where(p => p.IsCommon)));
        }
        var (total, common) = (new float[values.Length], new float[values.Length]);
        for (var i = 0; i < values.Length; i++)
        {
            if (flags[i] != SampleFlag.Good)
            {
                total[i] = common[i] = float.PositiveInfinity;
                continue;
            }
            var u = high > low ? (values[i] - low) / (high - low) * Nodes : 0;
            var k = Math.Min((int)u, Nodes - 1);
            var f = u - k;
            total[i] = (float)(nodes[k].Total + f * (nodes[k + 1].Total - nodes[k].Total));
            common[i] = (float)(nodes[k].Common + f * (nodes[k + 1].Common - nodes[k].Common));
        }
        return (total, common);
    }
}
