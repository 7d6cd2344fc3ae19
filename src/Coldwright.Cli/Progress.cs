using System.Diagnostics;
using System.Globalization;

namespace Coldwright.Cli;

/// <summary>Tells a waiting person that work goes on: one line after a second, then one every five.</summary>
internal sealed class Progress : IDisposable
{
    private static readonly TimeSpan _first = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan _next = TimeSpan.FromSeconds(5);

    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private readonly Lock _gate = new();
    private readonly Timer _timer;
    private bool _done;

    /// <param name="terminal">Gets the lines on standard error.</param>
    /// <param name="what">What is being done; asked each time, so that it can count.</param>
    public Progress(Terminal terminal, Func<string> what)
    {
        _timer = new Timer(_ =>
        {
            // No line after the work has ended: it would land in the middle of the answer.
            lock (_gate)
                if (!_done) terminal.Error.WriteLine($"{what()}: {_watch.Elapsed.TotalSeconds.ToString("0", CultureInfo.InvariantCulture)} s (Ctrl-C stops)");
        }, null, _first, _next);
    }

    public void Dispose()
    {
        lock (_gate) _done = true;
        _timer.Dispose();
    }
}
