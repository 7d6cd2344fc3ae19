namespace Coldwright.Runs.Explain;

/// <summary>One observable against time, rising times; what a log and a model have in common.</summary>
/// <param name="TimeS">s from the start of the compressor.</param>
/// <param name="Value">SI.</param>
public sealed record TraceLine(double[] TimeS, double[] Value)
{
    /// <summary>Mean time from one sample to the next, s.</summary>
    public double StepS => TimeS.Length > 1 ? (TimeS[^1] - TimeS[0]) / (TimeS.Length - 1) : 0;

    /// <summary>Value at a time (s), straight between neighbours, held outside.</summary>
    public double At(double timeS)
    {
        int i = Array.BinarySearch(TimeS, timeS);
        if (i >= 0) return Value[i];
        i = ~i;
        if (i == 0) return Value[0];
        if (i == TimeS.Length) return Value[^1];
        return Value[i - 1] + (Value[i] - Value[i - 1]) * (timeS - TimeS[i - 1]) / (TimeS[i] - TimeS[i - 1]);
    }

    /// <summary>Last sample at or before a time (s); null when there is none.</summary>
    public double? Before(double timeS) => IndexBefore(timeS) is >= 0 and var i ? Value[i] : null;

    /// <summary>Time of the last sample at or before a time (s); null when there is none.</summary>
    public double? LastAt(double timeS) => IndexBefore(timeS) is >= 0 and var i ? TimeS[i] : null;

    /// <summary>Time between the two samples around a time, s; 0 at a sample and outside.</summary>
    public double HoleAt(double timeS) => IndexBefore(timeS) is >= 0 and var i && i + 1 < TimeS.Length && TimeS[i] < timeS ? TimeS[i + 1] - TimeS[i] : 0;

    private int IndexBefore(double timeS)
    {
        int i = Array.BinarySearch(TimeS, timeS);
        return i < 0 ? ~i - 1 : i;
    }

    /// <summary>Median of the samples within a span of time (s); null when there is none.</summary>
    public double? Middle(double fromS, double toS)
    {
        double[] within = [.. Value.Where((_, i) => TimeS[i] >= fromS && TimeS[i] <= toS).Order()];
        return within.Length == 0 ? null : within[within.Length / 2];
    }

    /// <summary>Mean over a span of time (s); the value in its middle when no two samples lie in it.</summary>
    public double Mean(double fromS, double toS)
    {
        const int points = 21;
        double sum = 0;
        for (int i = 0; i < points; i++) sum += At(fromS + (toS - fromS) * i / (points - 1));
        return sum / points;
    }

    /// <summary>First time after another (s) at which it has fallen (or risen) to a level; null when it never does.</summary>
    public double? Passes(double level, double fromS, bool falling)
    {
        for (int i = 1; i < TimeS.Length; i++)
        {
            if (TimeS[i] <= fromS || (falling ? Value[i] > level : Value[i] < level)) continue;
            double a = Math.Max(fromS, TimeS[i - 1]), va = At(a), d = Value[i] - va;
            return Math.Abs(d) < 1e-12 ? TimeS[i] : a + (TimeS[i] - a) * Math.Clamp((level - va) / d, 0, 1);
        }
        return null;
    }
}
