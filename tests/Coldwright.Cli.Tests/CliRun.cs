// Commands take paths relative to the current folder, which belongs to the whole process.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]

namespace Coldwright.Cli.Tests;

/// <summary>One command line run inside the test process.</summary>
/// <param name="Code">Exit code.</param>
/// <param name="Output">Standard output.</param>
/// <param name="Error">Standard error.</param>
internal sealed record CliRun(int Code, string Output, string Error)
{
    public static CliRun Of(params string[] args) => Of(CancellationToken.None, args);

    public static CliRun Of(CancellationToken cancel, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        // A timer of the program writes to the error text while the work runs.
        var code = Program.Run(args, output, TextWriter.Synchronized(error), cancel);
        return new CliRun(code, output.ToString(), error.ToString());
    }

    /// <summary>Asserts that the input was refused: exit 2, nothing on standard output, no stack trace, and every word in the message.</summary>
    public void MustRefuse(params string[] words)
    {
        Assert.Equal(ExitCode.BadInput, Code);
        Assert.Equal("", Output);
        Assert.DoesNotContain("   at ", Error, StringComparison.Ordinal);
        foreach (var word in words) Assert.Contains(word, Error, StringComparison.Ordinal);
    }

    /// <summary>Asserts exit 0 and an empty standard error.</summary>
    public CliRun MustSucceed()
    {
        Assert.True(Code == ExitCode.Done, $"exit code {Code}: {Error}");
        return this;
    }
}
