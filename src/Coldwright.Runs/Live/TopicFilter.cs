using System.Text;

namespace Coldwright.Runs.Live;

/// <summary>Topics asked for: levels between strokes, <c>+</c> for any one level, <c>#</c> at the end for everything below (MQTT 3.1.1, section 4.7).</summary>
public static class TopicFilter
{
    private const int LongestBytes = 65535;

    /// <summary>What is wrong with a filter; empty when nothing is.</summary>
    public static string Complaint(string filter)
    {
        if (filter.Length == 0) return "it is empty";
        if (filter.Contains('\0') || Encoding.UTF8.GetByteCount(filter) > LongestBytes) return $"it is longer than {LongestBytes} bytes or holds a null character";
        var levels = filter.Split('/');
        for (var i = 0; i < levels.Length; i++)
        {
            if (levels[i].Contains('#') && (levels[i].Length > 1 || i < levels.Length - 1)) return "# stands alone and at the end, as in cooler/#";
            if (levels[i].Contains('+') && levels[i].Length > 1) return "+ stands alone between strokes, as in cooler/+/temperature";
        }
        return "";
    }

    /// <summary>True when every topic that <paramref name="narrow"/> asks for is asked for by <paramref name="wide"/> too; a topic without signs is asked for by itself.</summary>
    public static bool Covers(string wide, string narrow)
    {
        string[] w = wide.Split('/'), n = narrow.Split('/');
        // a broker's own topics are not meant by a sign at the beginning
        if (n[0].StartsWith('$') && w[0] is "#" or "+") return false;
        for (var i = 0; i < w.Length; i++)
        {
            // "a/#" asks for "a" too
            if (w[i] == "#") return true;
            if (i >= n.Length) return false;
            if (n[i] == "#" || (w[i] != "+" && w[i] != n[i])) return false;
        }
        return n.Length == w.Length;
    }

    /// <summary>The filters without those that another one covers, because a broker may send twice what was asked for twice.</summary>
    public static IReadOnlyList<string> Least(IEnumerable<string> filters)
    {
        var least = new List<string>();
        foreach (var filter in filters)
        {
            if (least.Any(f => Covers(f, filter))) continue;
            least.RemoveAll(f => Covers(filter, f));
            least.Add(filter);
        }
        return least;
    }
}
