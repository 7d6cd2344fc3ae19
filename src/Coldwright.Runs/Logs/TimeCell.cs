namespace Coldwright.Runs.Logs;

/// <summary>Reads dates and times of day in the many ways loggers write them.</summary>
internal static class TimeCell
{
    private static readonly string[] _months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    /// <summary>What was found in a cell.</summary>
    /// <param name="DateS">Date, s since 1 January 2000; NaN when there is none.</param>
    /// <param name="ClockS">Time of day, s; NaN when there is none.</param>
    /// <param name="OffsetS">Offset from universal time, s; NaN when there is none.</param>
    /// <param name="First">First group of a date in which day and month could be swapped; 0 when they could not.</param>
    /// <param name="Second">Second group of it.</param>
    public readonly record struct Parts(double DateS, double ClockS, double OffsetS, int First, int Second)
    {
        public bool HasDate => !double.IsNaN(DateS);
        public bool HasClock => !double.IsNaN(ClockS);

        /// <summary>Seconds since 2000; universal time when the cell gives an offset.</summary>
        public double Seconds => (HasDate ? DateS : 0) + (HasClock ? ClockS : 0) - (double.IsNaN(OffsetS) ? 0 : OffsetS);
    }

    /// <summary>True for a cell that looks like a date or a time of day.</summary>
    public static bool IsTime(ReadOnlySpan<byte> cell) => TryRead(cell, dayFirst: true, out _) || TryRead(cell, dayFirst: false, out _);

    /// <summary>Reads a cell.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="dayFirst">True when 03/04/2026 is the third of April.</param>
    /// <param name="parts">What was found.</param>
    public static bool TryRead(ReadOnlySpan<byte> cell, bool dayFirst, out Parts parts)
    {
        parts = new(double.NaN, double.NaN, double.NaN, 0, 0);
        if (cell.Length is < 3 or > 40) return false;
        var i = 0;
        double date = double.NaN, clock = double.NaN, offset = double.NaN;
        int first = 0, second = 0;
        if (TryDate(cell, ref i, dayFirst, out date, out first, out second))
        {
            while (i < cell.Length && cell[i] is (byte)' ' or (byte)'T' or (byte)'t' or (byte)',' or (byte)'_') i++;
            if (i < cell.Length && !TryClock(cell, ref i, out clock)) return false;
        }
        else if (!TryClock(cell, ref i, out clock)) return false;
        if (i < cell.Length && !TryOffset(cell, ref i, out offset)) return false;
        parts = new(date, clock, offset, first, second);
        return i == cell.Length;
    }

    private static bool TryDate(ReadOnlySpan<byte> cell, ref int i, bool dayFirst, out double date, out int first, out int second)
    {
        (date, first, second) = (double.NaN, 0, 0);
        var j = i;
        if (!TryGroup(cell, ref j, out var a, out var digitsA)) return false;
        int year, month, day;
        if (digitsA == 8) (year, month, day) = (a / 10000, a / 100 % 100, a % 100);
        else
        {
            if (j >= cell.Length || cell[j] is not ((byte)'-' or (byte)'/' or (byte)'.' or (byte)' ')) return false;
            var separator = cell[j++];
            int b, digitsB;
            var named = TryMonth(cell, ref j, out b);
            if (!named && (separator == ' ' || !TryGroup(cell, ref j, out b, out digitsB) || digitsB > 2)) return false;
            if (j >= cell.Length || cell[j] != separator && !(named && cell[j] is (byte)'-' or (byte)' ')) return false;
            j++;
            if (!TryGroup(cell, ref j, out var c, out var digitsC)) return false;
            if (digitsA == 4) (year, month, day) = (a, b, c);
            else if (digitsA <= 2 && digitsC is 4 or 2)
            {
                year = digitsC == 2 ? 2000 + c : c;
                (day, month) = dayFirst || named ? (a, b) : (b, a);
                if (!named) (first, second) = (a, b);
            }
            else return false;
        }
        if (year is < 1900 or > 2200 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month)) return false;
        date = (new DateTime(year, month, day) - new DateTime(2000, 1, 1)).TotalSeconds;
        i = j;
        return true;
    }

    private static bool TryClock(ReadOnlySpan<byte> cell, ref int i, out double clock)
    {
        clock = double.NaN;
        var j = i;
        if (!TryGroup(cell, ref j, out var hour, out var digits)) return false;
        double minute, second = 0;
        if (digits == 6 && i > 0) (hour, minute, second) = (hour / 10000, hour / 100 % 100, hour % 100);
        else
        {
            if (digits > 4 || j >= cell.Length || cell[j] is not ((byte)':' or (byte)'h')) return false;
            j++;
            if (!TryGroup(cell, ref j, out var m, out digits) || digits > 2) return false;
            minute = m;
            if (j < cell.Length && cell[j] == ':')
            {
                j++;
                if (!TryGroup(cell, ref j, out var s, out digits) || digits > 2) return false;
                second = s;
            }
        }
        if (minute >= 60 || second > 60) return false;
        // 09:12:05.250, 09:12:05,250 and 09:12:05:250
        if (j + 1 < cell.Length && cell[j] is (byte)'.' or (byte)',' or (byte)':' && (uint)(cell[j + 1] - '0') <= 9)
        {
            j++;
            for (var place = 0.1; j < cell.Length && (uint)(cell[j] - '0') <= 9; j++, place /= 10) second += place * (cell[j] - '0');
        }
        if (TryHalf(cell, ref j, out var afternoon))
        {
            if (hour is < 1 or > 12) return false;
            hour = hour % 12 + (afternoon ? 12 : 0);
        }
        clock = hour * 3600.0 + minute * 60 + second;
        i = j;
        return true;
    }

    private static bool TryHalf(ReadOnlySpan<byte> cell, ref int i, out bool afternoon)
    {
        afternoon = false;
        var j = i;
        while (j < cell.Length && cell[j] == ' ') j++;
        if (j + 1 >= cell.Length || (cell[j + 1] | 0x20) != 'm' || (cell[j] | 0x20) is not ('a' or 'p')) return false;
        afternoon = (cell[j] | 0x20) == 'p';
        i = j + 2;
        return true;
    }

    private static bool TryOffset(ReadOnlySpan<byte> cell, ref int i, out double offset)
    {
        offset = double.NaN;
        var j = i;
        while (j < cell.Length && cell[j] == ' ') j++;
        if (j < cell.Length && cell[j] is (byte)'Z' or (byte)'z')
        {
            (offset, i) = (0, j + 1);
            return true;
        }
        if (j >= cell.Length || cell[j] is not ((byte)'+' or (byte)'-')) return false;
        var sign = cell[j++] == '-' ? -1 : 1;
        if (!TryGroup(cell, ref j, out var hour, out var digits)) return false;
        var minute = 0;
        if (digits == 4) (hour, minute) = (hour / 100, hour % 100);
        else if (j < cell.Length && cell[j] == ':')
        {
            j++;
            if (!TryGroup(cell, ref j, out minute, out _)) return false;
        }
        if (hour > 14 || minute > 59) return false;
        (offset, i) = (sign * (hour * 3600.0 + minute * 60), j);
        return true;
    }

    private static bool TryMonth(ReadOnlySpan<byte> cell, ref int i, out int month)
    {
        month = 0;
        if (i + 3 > cell.Length) return false;
        Span<char> letters = [(char)(cell[i] | 0x20), (char)(cell[i + 1] | 0x20), (char)(cell[i + 2] | 0x20)];
        for (var m = 0; m < 12 && month == 0; m++)
            if (letters.SequenceEqual(_months[m])) month = m + 1;
        if (month == 0) return false;
        while (i < cell.Length && (uint)((cell[i] | 0x20) - 'a') < 26) i++;
        return true;
    }

    private static bool TryGroup(ReadOnlySpan<byte> cell, ref int i, out int value, out int digits)
    {
        (value, digits) = (0, 0);
        for (; i < cell.Length && (uint)(cell[i] - '0') <= 9 && digits < 9; i++, digits++) value = value * 10 + (cell[i] - '0');
        return digits > 0;
    }
}
