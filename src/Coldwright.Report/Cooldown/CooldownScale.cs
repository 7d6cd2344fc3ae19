using System.Globalization;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Report.Cooldown;

/// <summary>Times of a cooldown as a person reads them.</summary>
internal static class CooldownScale
{
    /// <summary>Unit of the pictures' time axis: seconds in it and its word.</summary>
    public static (double Seconds, string Word) Axis(CooldownSeries s) => s.TimeS[^1] switch
    {
        > 4 * 86400 => (86400.0, "days"),
        > 7200 => (3600.0, "h"),
        _ => (60.0, "min"),
    };

    /// <summary>A time: <c>43 min</c>, <c>3.2 h</c>.</summary>
    public static string Time(double? seconds) => seconds switch
    {
        null => "never",
        < 90 => string.Create(CultureInfo.InvariantCulture, $"{seconds:0} s"),
        < 5400 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0} min"),
        < 48 * 3600 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600:0.0} h"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{seconds / 86400:0.0} days"),
    };
}
