using System.Diagnostics;
using System.Globalization;
using Coldwright.Web;

namespace Coldwright.Benchmarks;

/// <summary>
/// Serves a cooler's page as <c>coldwright page</c> does, and tells for every line on standard input what it holds: megabytes of memory as they
/// are, then after a full collection what is alive, what the collector keeps, threads, and requests answered. For <c>bench tabs</c>.
/// </summary>
internal static class PageHost
{
    public static async Task<int> Run(string directory)
    {
        await using var server = await PageServer.Start(new PageOptions { Directory = directory });
        Console.WriteLine(server.Url);
        using var me = Process.GetCurrentProcess();
        while (await Console.In.ReadLineAsync() is not null)
        {
            me.Refresh();
            double whole = me.WorkingSet64 / 1e6;
            GC.Collect();
            GC.WaitForPendingFinalizers();
            GC.Collect();
            var memory = GC.GetGCMemoryInfo(GCKind.FullBlocking);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{whole:0.0} {GC.GetTotalMemory(false) / 1e6:0.00} {memory.TotalCommittedBytes / 1e6:0.0} {me.Threads.Count} {server.Answered}"));
        }
        return 0;
    }
}
