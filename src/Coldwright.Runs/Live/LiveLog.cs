using System.Globalization;

namespace Coldwright.Runs.Live;

/// <summary>
/// Writes lines as they come (a serial line, a pipe) into a log with the time of their arrival before them. Every line is on disk before the next is read, so that a pulled plug costs one line.
/// </summary>
public sealed class LiveLog(TextReader source, TextWriter log, Func<DateTime> now)
{
    private const int LongestLine = 4096;

    /// <summary>Lines written.</summary>
    public int Written { get; private set; }
    /// <summary>Lines left out: empty or too long.</summary>
    public int LeftOut { get; private set; }
    /// <summary>The last line written; empty before the first.</summary>
    public string Last { get; private set; } = "";

    /// <summary>Copies until the source ends or it is cancelled.</summary>
    /// <param name="each">Told after each line; may be null.</param>
    /// <param name="cancel">Ends it; what was written stays.</param>
    public async Task CopyAsync(Action? each, CancellationToken cancel)
    {
        char delimiter = '\0';
        try
        {
            while (await source.ReadLineAsync(cancel).ConfigureAwait(false) is { } line)
            {
                line = line.Trim('\r', '\0', ' ');
                if (line.Length is 0 or > LongestLine)
                {
                    LeftOut++;
                    continue;
                }
                if (delimiter == '\0')
                {
                    delimiter = line.Contains(';') ? ';' : line.Contains('\t') ? '\t' : ',';
                    // without headings columns are called by their number, the time being the first
                    if (IsData(line, delimiter)) await log.WriteLineAsync($"time{delimiter}{string.Join(delimiter, Enumerable.Range(1, line.Split(delimiter).Length).Select(i => $"c{i}"))}").ConfigureAwait(false);
                    else
                    {
                        await log.WriteLineAsync($"time{delimiter}{line}").ConfigureAwait(false);
                        await log.FlushAsync(CancellationToken.None).ConfigureAwait(false);
                        continue;
                    }
                }
                await log.WriteLineAsync($"{now().ToString("yyyy-MM-dd HH:mm:ss.fff", CultureInfo.InvariantCulture)}{delimiter}{line}").ConfigureAwait(false);
                await log.FlushAsync(CancellationToken.None).ConfigureAwait(false);
                (Written, Last) = (Written + 1, line);
                each?.Invoke();
            }
        }
        catch (OperationCanceledException)
        {
            // ended by hand: the usual end of a run
        }
    }

    private static bool IsData(string line, char delimiter) => line.Split(delimiter).Any(cell => double.TryParse(cell.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out _));
}
