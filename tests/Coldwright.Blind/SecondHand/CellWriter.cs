using System.Globalization;
using System.Text;

namespace Coldwright.Blind.SecondHand;

/// <summary>A builder's way to write numbers, times, headings and channels.</summary>
internal sealed class CellWriter(Habits h, DateTime start, double fromS)
{
    private const double RoomPa = CoolerSizes.RoomPa, PascalPerPsi = 6894.757;
    private static readonly CultureInfo _ci = CultureInfo.InvariantCulture;

    /// <summary>Unit of a channel.</summary>
    public string Unit(SecondSensor s) => s.IsTemperature ? h.Temperature : s.IsPressure ? (UsesCurrent ? "mA" : h.Pressure) : s.Kind switch { "power-meter" => "W", "flow-meter" => "g/s", _ => "kg" };

    private bool UsesCurrent => h.Milliamperes && !h.ByHand;

    /// <summary>A value of SI in the builder's unit and digits.</summary>
    public string Number(SecondSensor s, double si)
    {
        bool coarse = h.Noise == NoiseKind.Coarse;
        var (v, digits) = s.IsTemperature ? (h.Temperature switch { "K" => si, "°F" => 1.8 * si - 459.67, _ => si - 273.15 }, coarse || h.ByHand ? 0 : 1)
            : s.IsPressure ? Pressure(s, si) : s.Kind switch { "power-meter" => (si, 0), "flow-meter" => (1000 * si, 3), _ => (si, 3) };
        string text = v.ToString("F" + digits, _ci);
        return h.DecimalComma && !h.ByHand ? text.Replace('.', ',') : text;
    }

    private (double, int) Pressure(SecondSensor s, double pa)
    {
        int rough = h.Noise == NoiseKind.Coarse || h.ByHand ? 1 : 2;
        if (UsesCurrent) return (4 + 16 * (pa - RoomPa) / 1e5 / Span(s), 3);
        return h.Pressure switch { "bara" => (pa / 1e5, rough), "psig" => ((pa - RoomPa) / PascalPerPsi, rough - 1), "kPaa" => (pa / 1e3, 0), _ => ((pa - RoomPa) / 1e5, rough) };
    }

    private static int Span(SecondSensor s) => s.Name == "high" ? 40 : 25;

    /// <summary>What a broken lead or a converter's hiccup writes.</summary>
    public string Nonsense(SecondSensor s, Random random) => random.Next(4) switch { 0 => "", 1 => "OL", 2 => s.IsTemperature ? "1372" : "9999", _ => s.IsTemperature ? "-270" : "0" };

    /// <summary>A moment by the watch on the wall.</summary>
    public string Watch(double s)
    {
        var at = start.AddSeconds(s);
        return h.Form == ClockForm.Clock && at.Date > start.Date ? at.ToString("yyyy-MM-dd HH:mm", _ci) : at.ToString("HH:mm", _ci);
    }

    /// <summary>The line about the log.</summary>
    public string LogLine
    {
        get
        {
            string more = h.AheadS != 0 && h.SaysAhead ? string.Create(_ci, $", clock-ahead: {h.AheadS / 60:0} min") : "";
            // without headings nothing says what an elapsed time is counted in
            if (h.Form == ClockForm.ElapsedMinutes && h.NoHeadings) more += ", time-unit: min";
            return $"log: {{file: log.csv{more}}}";
        }
    }

    /// <summary>A channel of <c>run.yaml</c>.</summary>
    public string Channel(SecondSensor s, int index)
    {
        string column = h.ByHand ? "" : h.NoHeadings ? $"column: {index + 1 + TimeColumns}, " : $"column: {Heading(s)}, ";
        string signal = UsesCurrent && s.IsPressure ? $"signal: {{low-reading: 4, low: 0 barg, high-reading: 20, high: {Span(s)} barg}}, " : "";
        return $"  {s.Name}: {{{column}{s.Place}, sensor: {s.Kind}, {(h.ByHand ? "" : $"unit: {Unit(s)}, ")}{signal}{s.More}}}";
    }

    private int TimeColumns => h.Form == ClockForm.TwoColumns ? 2 : 1;

    private static string Heading(SecondSensor s) => s.Name switch { "vessel" => "T pot", "high" => "P1", "low" => "P2", "precooled" => "T pre", "before-throttle" => "T4", "coil-out" => "T5", "return" => "T6", "power" => "Watts", _ => s.Name };

    /// <summary>What stands over the rows.</summary>
    public void Head(StringBuilder log, SecondSensor[] sensors)
    {
        string d = h.Delimiter.ToString();
        if (h.Preamble) log.Append("Logger 3, garage").Append(NewLine).Append("channels: ").Append(sensors.Length).Append(NewLine).Append(NewLine);
        if (h.NoHeadings) return;
        log.Append(h.Form switch { ClockForm.TwoColumns => "Date" + d + "Time", ClockForm.ElapsedMinutes => "Elapsed (min)", ClockForm.Epoch => "unix", _ => "Time" });
        foreach (var s in sensors) log.Append(d).Append(Heading(s));
        log.Append(NewLine);
        if (!h.Preamble) return;
        log.Append(h.Form == ClockForm.TwoColumns ? d : "");
        foreach (var s in sensors) log.Append(d).Append(Unit(s));
        log.Append(NewLine);
    }

    private string NewLine => h.DecimalComma ? "\r\n" : "\n";

    /// <summary>One row.</summary>
    public void Row(StringBuilder log, double t, IEnumerable<string> cells)
    {
        var at = start.AddSeconds(t + h.AheadS + (h.Jump.ByS != 0 && t > h.Jump.AtS ? h.Jump.ByS : 0));
        string d = h.Delimiter.ToString(), stamp = h.Form switch
        {
            ClockForm.Iso => at.ToString("yyyy-MM-ddTHH:mm:ss", _ci),
            ClockForm.DayFirst => at.ToString("dd.MM.yyyy HH:mm:ss", _ci),
            ClockForm.TwoColumns => at.ToString("yyyy-MM-dd", _ci) + d + at.ToString("HH:mm:ss", _ci),
            ClockForm.Epoch => (at - DateTime.UnixEpoch).TotalSeconds.ToString("F0", _ci),
            ClockForm.Clock => at.ToString("HH:mm:ss", _ci),
            _ => ((t - fromS) / 60).ToString("F3", _ci).Replace('.', h.DecimalComma ? ',' : '.'),
        };
        log.Append(stamp);
        foreach (string cell in cells) log.Append(d).Append(cell);
        log.Append(NewLine);
    }
}
