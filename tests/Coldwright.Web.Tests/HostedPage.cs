using System.Diagnostics;
using System.Globalization;

namespace Coldwright.Web.Tests;

/// <summary>A cooler's page served by a process of its own, as <c>coldwright page</c> does, which tells what it holds when asked.</summary>
internal sealed class HostedPage : IAsyncDisposable
{
    private readonly Process _process;

    private HostedPage(Process process, string url) => (_process, Url) = (process, url);

    /// <summary>What the process held at one moment.</summary>
    /// <param name="WholeMB">Resident memory of the process, MB.</param>
    /// <param name="AliveMB">Alive after a full collection, MB.</param>
    /// <param name="KeptMB">Kept by the collector from the operating system, MB.</param>
    /// <param name="Threads">Threads.</param>
    /// <param name="Answered">Requests answered since it began.</param>
    public sealed record Holding(double WholeMB, double AliveMB, double KeptMB, double Threads, double Answered)
    {
        public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"alive {AliveMB:0.0} MB, whole {WholeMB:0} MB, kept by the collector {KeptMB:0} MB, {Threads:0} threads, {Answered:0} requests answered");
    }

    public string Url { get; }

    public static async Task<HostedPage> Start(CoolerCopy cooler, CancellationToken cancel)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(CoolerCopy.Root, "artifacts", "bench", "Coldwright.Benchmarks.dll"), "page-host", cooler.Path]) { RedirectStandardOutput = true, RedirectStandardInput = true };
        // As the program's own project file says.
        start.Environment["DOTNET_TieredCompilation"] = "0";
        var process = Process.Start(start)!;
        return new HostedPage(process, (await process.StandardOutput.ReadLineAsync(cancel))!);
    }

    public async Task<Holding> Tell(CancellationToken cancel)
    {
        await _process.StandardInput.WriteLineAsync();
        await _process.StandardInput.FlushAsync(cancel);
        var told = (await _process.StandardOutput.ReadLineAsync(cancel))!.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        return new Holding(told[0], told[1], told[2], told[3], told[4]);
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync(CancellationToken.None);
        _process.Dispose();
    }
}
