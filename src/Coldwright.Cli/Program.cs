using Coldwright.Numerics;
using Coldwright.Report;

namespace Coldwright.Cli;

/// <summary>The command line's entry: parses, calls, shows. Nothing is computed here.</summary>
public static class Program
{
    private static int Main(string[] args)
    {
        // An UTF-8 minus sign or degree must arrive whole wherever it is sent.
        Console.OutputEncoding = System.Text.Encoding.UTF8;
        using var cancel = new CancellationTokenSource();
        Console.CancelKeyPress += (_, e) =>
        {
            // The first Ctrl-C stops cleanly; a second one ends the process as usual.
            e.Cancel = !cancel.IsCancellationRequested;
            cancel.Cancel();
        };
        var colour = !Console.IsOutputRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        return Run(args, new Terminal(Console.Out, Console.Error, colour, cancel.Token));
    }

    /// <summary>Runs one command line inside this process, without colour.</summary>
    /// <param name="args">The words after <c>coldwright</c>.</param>
    /// <param name="output">Takes what standard output would.</param>
    /// <param name="error">Takes what standard error would.</param>
    /// <param name="cancellationToken">Stops long work.</param>
    /// <returns>The exit code, see <see cref="ExitCode"/>.</returns>
    public static int Run(string[] args, TextWriter output, TextWriter error, CancellationToken cancellationToken = default) =>
        Run(args, new Terminal(output, error, Colour: false, cancellationToken));

    private static int Run(string[] args, Terminal terminal)
    {
        try
        {
            return CommandLine.Run(args, terminal);
        }
        catch (InputException e)
        {
            return terminal.Refuse(e);
        }
        catch (SolveException e)
        {
            terminal.Error.WriteLine($"coldwright: no answer: {Readout.Advice(e.Report, UnitsOf(args))}");
            return e.Report.Status == SolveStatus.Outside ? ExitCode.BadInput : ExitCode.No;
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine("coldwright: stopped before there was an answer; nothing was written");
            return ExitCode.Stopped;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"coldwright: a file cannot be read or written: {e.Message}");
            return ExitCode.BadInput;
        }
        catch (Exception e)
        {
            // The person gets a sentence, not a stack trace; the environment variable is for whoever mends it.
            terminal.Error.WriteLine($"coldwright: a defect in the program ({e.GetType().Name}): {e.Message}");
            terminal.Error.WriteLine("  please report it with the command and the files used; COLDWRIGHT_TRACE=1 shows where it happened");
            if (Environment.GetEnvironmentVariable("COLDWRIGHT_TRACE") == "1") terminal.Error.WriteLine(e);
            return ExitCode.Defect;
        }
    }

    // where the command line has been left already
    private static UnitSystem UnitsOf(string[] args)
    {
        var at = Array.FindIndex(args, a => a.StartsWith("--units", StringComparison.Ordinal));
        var word = at < 0 ? "" : args[at].Length > "--units".Length ? args[at]["--units=".Length..] : at + 1 < args.Length ? args[at + 1] : "";
        return string.Equals(word, "us", StringComparison.OrdinalIgnoreCase) ? UnitSystem.Us : UnitSystem.Si;
    }
}
