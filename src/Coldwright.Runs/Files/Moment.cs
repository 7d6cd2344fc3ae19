using System.Globalization;
using Coldwright.Quantities;

namespace Coldwright.Runs.Files;

/// <summary>A time as a person writes it: <c>10:05</c>, <c>2026-03-14 10:05</c>, <c>2026-03-14</c>, or <c>25 min</c> after the start.</summary>
internal sealed record Moment(string Text, int Line, int Column)
{
    private static readonly string[] _dateTimes = ["yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd HH:mm", "yyyy-MM-ddTHH:mm:ss", "yyyy-MM-ddTHH:mm", "yyyy-MM-dd H:mm:ss", "yyyy-MM-dd H:mm"];
    private static readonly string[] _clocks = ["H:mm:ss", "H:mm", "HH:mm:ss", "HH:mm"];
    private static readonly QuantityKind _elapsed = QuantityKind.Time.Between(-1e7, 1e9);

    /// <summary>Date and time; null when the text holds no date.</summary>
    public DateTime? Date { get; private init; }
    /// <summary>Time of day; null when it is an elapsed time or a date alone.</summary>
    public TimeSpan? Clock { get; private init; }
    /// <summary>Seconds after the start; null when it is a wall-clock time.</summary>
    public double? ElapsedS { get; private init; }

    public static bool TryRead(string text, int line, int column, out Moment moment)
    {
        var words = NumberText.Normalise(text);
        moment = new Moment(text, line, column);
        if (DateTime.TryParseExact(words, _dateTimes, CultureInfo.InvariantCulture, DateTimeStyles.None, out var both))
            moment = moment with { Date = both.Date, Clock = both.TimeOfDay };
        else if (DateTime.TryParseExact(words, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            moment = moment with { Date = date };
        else if (DateTime.TryParseExact(words, _clocks, CultureInfo.InvariantCulture, DateTimeStyles.None, out var clock))
            moment = moment with { Clock = clock.TimeOfDay };
        else if (Quantity.TryParse(words, _elapsed, 101325, out var elapsed, out _))
            moment = moment with { ElapsedS = elapsed };
        else return false;
        return true;
    }
}
