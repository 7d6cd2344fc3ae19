using Coldwright.Runs.Record;

namespace Coldwright.Report.Runs;

/// <summary>A channel's good samples, thinned for a picture: of each stretch of time the lowest and the highest are kept, so no peak is lost.</summary>
internal static class RunThinning
{
    private const int Stretches = 220;
    // Samples farther apart than this many usual steps are not joined by a line.
    private const double JoinedSteps = 6;

    /// <summary>Indices of the samples kept, in pieces that a line may join.</summary>
    public static IReadOnlyList<IReadOnlyList<int>> Pieces(RunChannel channel, double fromS, double toS)
    {
        var kept = new List<int>();
        var width = Math.Max(toS - fromS, 1e-9) / Stretches;
        int low = -1, high = -1;
        var stretch = long.MinValue;
        for (var i = 0; i < channel.Count; i++)
        {
            if (channel.Flags[i] != SampleFlag.Good) continue;
            var at = (long)((channel.TimesS[i] - fromS) / width);
            if (at != stretch) Flush();
            stretch = at;
            if (low < 0 || channel.Values[i] < channel.Values[low]) low = i;
            if (high < 0 || channel.Values[i] > channel.Values[high]) high = i;
        }
        Flush();
        return Split(channel, kept, width);

        void Flush()
        {
            if (low >= 0) kept.Add(Math.Min(low, high));
            if (high >= 0 && high != low) kept.Add(Math.Max(low, high));
            low = high = -1;
        }
    }

    private static List<IReadOnlyList<int>> Split(RunChannel channel, List<int> kept, double width)
    {
        var pieces = new List<IReadOnlyList<int>>();
        var piece = new List<int>();
        var usual = UsualStep(channel);
        foreach (var i in kept)
        {
            if (piece.Count > 0 && HasHole(channel, piece[^1], i, usual, width))
            {
                pieces.Add(piece);
                piece = [];
            }
            piece.Add(i);
        }
        if (piece.Count > 0) pieces.Add(piece);
        return pieces;
    }

    private static bool HasHole(RunChannel channel, int from, int to, double usual, double width)
    {
        // Notes by hand are far apart by nature and are joined.
        if (channel.Column.Length == 0) return false;
        var last = channel.TimesS[from];
        for (var i = from + 1; i <= to; i++)
        {
            if (channel.Flags[i] != SampleFlag.Good) continue;
            if (channel.TimesS[i] - last > Math.Max(JoinedSteps * usual, 0.5 * width)) return true;
            last = channel.TimesS[i];
        }
        return false;
    }

    private static double UsualStep(RunChannel channel) => channel.Count < 2 ? 1 : (channel.TimesS[^1] - channel.TimesS[0]) / (channel.Count - 1);
}
