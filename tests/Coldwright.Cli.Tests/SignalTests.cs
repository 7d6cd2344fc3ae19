using System.Diagnostics;
using System.Text.Json;

namespace Coldwright.Cli.Tests;

/// <summary>Ctrl-C as a terminal sends it: a signal to the real process.</summary>
public class SignalTests
{
    /// <summary><c>blend</c> interrupted in the middle of its search ends with the exit code of a stop, and its JSON is the best so far.</summary>
    [Fact]
    public async Task BlendInterruptedKeepsTheBestSoFar()
    {
        if (OperatingSystem.IsWindows()) Assert.Skip("a console signal of this kind is sent to a single process on Unix only");
        var program = Path.Combine(AppContext.BaseDirectory, "coldwright.dll");
        Assert.True(File.Exists(program), program);
        string[] command = ["dotnet", program, "blend", Repository.Example("workshop"), "--model", "cubic", "--json"];
        // a test run that a shell put in the background ignores this signal, and so would its children
        if (OperatingSystem.IsLinux()) command = ["env", "--default-signal=INT", .. command];
        using var process = Process.Start(new ProcessStartInfo(command[0], command[1..]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var cancel = TestContext.Current.CancellationToken;
        var output = process.StandardOutput.ReadToEndAsync(cancel);
        // progress says when the first generations are done
        string said = "";
        while (await process.StandardError.ReadLineAsync(cancel) is { } line)
        {
            said += line + "\n";
            if (!line.Contains("generation", StringComparison.Ordinal)) continue;
            using var kill = Process.Start("kill", ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
            await kill.WaitForExitAsync(cancel);
            break;
        }
        said += await process.StandardError.ReadToEndAsync(cancel);
        await process.WaitForExitAsync(cancel);
        Assert.True(process.ExitCode == ExitCode.Stopped, $"exit code {process.ExitCode}: {said}");
        using var document = JsonDocument.Parse(await output);
        Assert.True(document.RootElement.GetProperty("stopped").GetBoolean());
        Assert.True(document.RootElement.GetProperty("best").GetProperty("figures").GetProperty("merit").GetDouble() > 0);
        Assert.Equal(1, document.RootElement.GetProperty("best").GetProperty("mixture").EnumerateObject().Sum(p => p.Value.GetDouble()), 1e-9);
    }
}
