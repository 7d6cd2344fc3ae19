namespace Coldwright.Quantities;

/// <summary>"Did you mean": the known words closest to a misspelt one.</summary>
public static class NearestWord
{
    /// <summary>The known words nearest to a word, best first; only those close enough to be a misspelling (a third of the letters, at least two).</summary>
    /// <param name="word">The unknown word.</param>
    /// <param name="known">The words that would be right.</param>
    /// <param name="count">At most this many.</param>
    public static IReadOnlyList<string> Find(string word, IEnumerable<string> known, int count = 1)
    {
        if (word.Length > 60) return [];
        var reach = Math.Max(2, word.Length / 3);
        return known
            .Distinct(StringComparer.Ordinal)
            .Select(candidate => (candidate, distance: Distance(word, candidate)))
            // A word with nothing in common is no suggestion, however short.
            .Where(c => c.distance <= reach && c.distance < Math.Max(word.Length, c.candidate.Length))
            .OrderBy(c => c.distance).ThenBy(c => c.candidate, StringComparer.Ordinal)
            .Take(count).Select(c => c.candidate).ToArray();
    }

    /// <summary>
    /// Edit distance that ignores case: insertions, deletions, replacements and swaps of neighbours each cost 1
    /// (optimal string alignment; Damerau, Communications of the ACM 7 (1964) 171).
    /// </summary>
    public static int Distance(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++) d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++) d[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                var same = Same(a[i - 1], b[j - 1]);
                d[i, j] = Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }
        return d[a.Length, b.Length];

        static bool Same(char x, char y) => char.ToLowerInvariant(x) == char.ToLowerInvariant(y);
    }
}
