using System.Diagnostics;

namespace Coldwright.Benchmarks;

/// <summary>One row of the table.</summary>
/// <param name="Name">Name, fixed by the program's description.</param>
/// <param name="MedianMicroseconds">Median time of one call, us.</param>
/// <param name="AllocatedBytes">Bytes allocated on the calling thread per call, in the steady state.</param>
public sealed record Measurement(string Name, double MedianMicroseconds, double AllocatedBytes)
{
    private const int Samples = 31;

    /// <summary>
    /// Median of 31 batches, each long enough for the clock (at least 3 ms), after a warm-up of half a second in which the
    /// compiler settles.
    /// </summary>
    public static Measurement Of(string name, Action call)
    {
        var warm = Stopwatch.StartNew();
        int calls = 0;
        while (warm.ElapsedMilliseconds < 500 || calls < 3) { call(); calls++; }
        double each = warm.Elapsed.TotalMilliseconds / calls;
        int batch = Math.Max(1, (int)(3 / each));
        var times = new double[Samples];
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < Samples; i++)
        {
            long start = Stopwatch.GetTimestamp();
            for (int k = 0; k < batch; k++) call();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMicroseconds / batch;
        }
        double bytes = (double)(GC.GetAllocatedBytesForCurrentThread() - before) / (Samples * (double)batch);
        Array.Sort(times);
        return new Measurement(name, times[Samples / 2], Math.Round(bytes));
    }

    /// <summary>Median of five calls after one to warm up: for what takes seconds.</summary>
    public static Measurement OfFive(string name, Action call)
    {
        call();
        var times = new double[5];
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < times.Length; i++)
        {
            long start = Stopwatch.GetTimestamp();
            call();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
        }
        Array.Sort(times);
        return new Measurement(name, times[times.Length / 2], Math.Round((GC.GetAllocatedBytesForCurrentThread() - before) / (double)times.Length));
    }

    /// <summary>Processor time of one call on all threads, without a warm-up: for what takes many seconds on several of them.</summary>
    public static Measurement ProcessorTime(string name, Action call)
    {
        long before = GC.GetTotalAllocatedBytes();
        var start = Environment.CpuUsage.TotalTime;
        call();
        return new Measurement(name, (Environment.CpuUsage.TotalTime - start).TotalMicroseconds, GC.GetTotalAllocatedBytes() - before);
    }

    /// <summary>One call, without a warm-up: for what takes minutes.</summary>
    public static Measurement Once(string name, Action call)
    {
        long before = GC.GetAllocatedBytesForCurrentThread(), start = Stopwatch.GetTimestamp();
        call();
        return new Measurement(name, Stopwatch.GetElapsedTime(start).TotalMicroseconds, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
