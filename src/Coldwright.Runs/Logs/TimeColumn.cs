namespace Coldwright.Runs.Logs;

/// <summary>Where and how a log keeps its times.</summary>
/// <param name="Form">Form.</param>
/// <param name="Column">Column of the time; -1 when there is none.</param>
/// <param name="DateColumn">Column of the date; -1 when the time holds it or there is none.</param>
/// <param name="UnitS">Seconds in one unit of a number.</param>
/// <param name="DayFirst">True when 03/04/2026 is the third of April.</param>
/// <param name="Words">The form in words.</param>
internal sealed record TimeColumn(TimeForm Form, int Column, int DateColumn, double UnitS, bool DayFirst, string Words)
{
    /// <summary>Seconds from 1 January 2000 to the start of other counts.</summary>
    public const double Epoch1970S = -946684800;
    private const double SpreadsheetS = -36526 * 86400.0;

    /// <summary>True when the times carry a date.</summary>
    public bool HasDate => Form is TimeForm.DateTime or TimeForm.Epoch or TimeForm.Spreadsheet;

    /// <summary>Seconds of a row: since 2000 with a date, of the day for a clock, from the start for others; NaN when it cannot be read.</summary>
    /// <param name="time">Cell of the time.</param>
    /// <param name="date">Cell of the date; empty when there is none.</param>
    /// <param name="decimalComma">Decimal sign of numbers.</param>
    public double Read(ReadOnlySpan<byte> time, ReadOnlySpan<byte> date, bool decimalComma)
    {
        switch (Form)
        {
            case TimeForm.DateTime or TimeForm.Clock or TimeForm.ElapsedClock:
                if (!TimeCell.TryRead(time, DayFirst, out var parts)) return double.NaN;
                if (DateColumn >= 0)
                {
                    return TimeCell.TryRead(date, DayFirst, out var day) && day.HasDate && parts.HasClock ? day.DateS + parts.Seconds : double.NaN;
                }
                return Form == TimeForm.DateTime ? parts.HasDate ? parts.Seconds : double.NaN : parts.HasClock ? parts.ClockS : double.NaN;
            default:
                if (NumberCell.Read(time, decimalComma, out var number, out _, out var rest) != CellContent.Number || rest.Length > 3) return double.NaN;
                return number * UnitS + Form switch
                {
                    TimeForm.Epoch => Epoch1970S,
                    TimeForm.Spreadsheet => SpreadsheetS,
                    _ => 0,
                };
        }
    }
}
