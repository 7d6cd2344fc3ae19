using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Files;

/// <summary>A reading with its time.</summary>
/// <param name="TimeS">s from the start.</param>
/// <param name="Reading">The reading as noted.</param>
internal sealed record HandTime(double TimeS, HandReading Reading);

/// <summary>Makes raw numbers of readings noted by hand: each with its own unit, or plain numbers in the channel's unit.</summary>
internal static class HandRaw
{
    /// <summary>The numbers, all in the unit of the first; null, and reported, when a reading is wrong.</summary>
    public static (ChannelDescription Channel, ChannelBuilder.Raw? Raw) Build(ChannelDescription channel, IReadOnlyList<HandTime> readings, double roomPa, ProblemList problems)
    {
        var sorted = readings.OrderBy(r => r.TimeS).ToArray();
        var values = new double[sorted.Length];
        var sensor = channel.Sensor;
        var decimals = 0;
        var good = true;
        for (var i = 0; i < sorted.Length; i++)
        {
            var reading = sorted[i].Reading;
            var text = NumberText.Normalise(reading.Text);
            if (!NumberText.TryRead(text, out var number, out var unitText, out var complaint))
            {
                good = Complain(reading, $"{channel.Name}: '{text}' {complaint}");
                continue;
            }
            decimals = Math.Max(decimals, Decimals(text));
            if (channel.UnitIsGiven && (unitText.Length == 0 || unitText == sensor.UnitWord))
            {
                values[i] = number;
                continue;
            }
            if (sensor.Scale != RawScale.Unit)
            {
                good = Complain(reading, $"{channel.Name}: '{text}' must be a number in {(sensor.UnitWord.Length > 0 ? sensor.UnitWord : "the signal's own unit")}");
                continue;
            }
            if (!Quantity.TryParse(text, sensor.Kind.Quantity, roomPa, out var si, out var problem) || !UnitExpression.TryParse(unitText, out var unit))
            {
                good = Complain(reading, $"{channel.Name}: {problem?.Message ?? $"'{unitText}' is no unit"}");
                continue;
            }
            // Later readings in another unit are brought to that of the first.
            if (sensor.Unit is null) sensor = sensor with { Unit = unit, UnitWord = unitText };
            values[i] = sensor.Unit!.FromSi(si, roomPa);
        }
        if (!good) return (channel, null);
        var axis = new TimeAxis([.. sorted.Select(r => r.TimeS)]);
        return (channel with { Sensor = sensor }, new(axis, values, new SampleFlag[values.Length], Math.Pow(10, -decimals), "", false, _ => 0));

        bool Complain(HandReading reading, string message)
        {
            problems.Add(reading.Line, reading.FileColumn, message);
            return false;
        }
    }

    private static int Decimals(string text)
    {
        var point = text.IndexOf('.');
        var n = 0;
        while (point >= 0 && point + 1 + n < text.Length && char.IsAsciiDigit(text[point + 1 + n])) n++;
        return n;
    }
}
