namespace Coldwright.Fluids.Substances;

/// <summary>The names of substances: one canonical name each, and the other names people use (formulas, R-numbers, older words).</summary>
public static class SubstanceNames
{
    private static readonly (string Name, string[] Aliases)[] _table =
    [
        ("nitrogen", ["N2", "R728"]),
        ("argon", ["Ar", "R740"]),
        ("oxygen", ["O2", "R732"]),
        ("methane", ["CH4", "C1", "R50"]),
        ("ethane", ["C2H6", "C2", "R170"]),
        ("ethylene", ["ethene", "C2H4", "R1150"]),
        ("propane", ["C3H8", "C3", "R290"]),
        ("propylene", ["propene", "C3H6", "R1270"]),
        ("butane", ["n-butane", "normal butane", "nC4", "n-C4H10", "R600"]),
        ("isobutane", ["i-butane", "2-methylpropane", "iC4", "i-C4H10", "iso-C4H10", "R600a"]),
        ("pentane", ["n-pentane", "normal pentane", "nC5", "n-C5H12", "R601"]),
        ("isopentane", ["i-pentane", "2-methylbutane", "iC5", "i-C5H12", "iso-C5H12", "R601a"]),
        ("carbon-dioxide", ["carbon dioxide", "CO2", "R744"]),
        ("water", ["H2O", "R718"]),
        ("neon", ["Ne", "R720"]),
        ("helium", ["He", "helium-4", "R704"]),
        ("hydrogen", ["H2", "normal hydrogen", "R702"]),
        ("krypton", ["Kr", "R784"]),
        ("xenon", ["Xe"]),
        ("R14", ["CF4", "tetrafluoromethane", "carbon tetrafluoride", "FC-14"]),
        ("R23", ["CHF3", "trifluoromethane", "fluoroform"]),
        ("R22", ["CHClF2", "CHF2Cl", "chlorodifluoromethane"]),
        ("R32", ["CH2F2", "difluoromethane"]),
        ("R125", ["C2HF5", "CHF2CF3", "pentafluoroethane"]),
        ("R134a", ["CH2FCF3", "CF3CH2F"]),
        ("R1234yf", ["CF3CF=CH2", "CH2=CFCF3"]),
    ];

    private static readonly Dictionary<string, string> _lookup = BuildLookup();

    /// <summary>Canonical names of the pure substances.</summary>
    public static IReadOnlyList<string> All { get; } = _table.Select(row => row.Name).ToArray();

    /// <summary>Every word that is understood, canonical names first; blends included.</summary>
    public static IReadOnlyList<string> AllWords { get; } =
        [.. All, .. Blend.All.Select(b => b.Name), .. _table.SelectMany(row => row.Aliases)];

    /// <summary>Finds the canonical name of a pure substance; case, hyphens and spaces do not matter (<c>r-290</c>, <c>Carbon Dioxide</c>, <c>HFC-134a</c>).</summary>
    public static bool TryFind(string text, out string canonicalName) => _lookup.TryGetValue(Key(text), out canonicalName!);

    /// <summary>Known names nearest to a misspelt one, best first; empty when none is near.</summary>
    public static IReadOnlyList<string> Nearest(string text, int count = 3)
    {
        var key = Key(text);
        if (key.Length > 40) return [];
        var reach = Math.Max(1, key.Length / 3);
        return _lookup.Select(p => (p.Value, distance: Distance(key, p.Key)))
            .Concat(Blend.All.Select(b => (b.Name, Distance(key, Key(b.Name)))))
            .Where(c => c.Item2 <= reach)
            .GroupBy(c => c.Item1, (name, found) => (name, distance: found.Min(f => f.Item2)))
            .OrderBy(c => c.distance).ThenBy(c => c.name, StringComparer.Ordinal)
            .Take(count).Select(c => c.name).ToArray();
    }

    /// <summary>"unknown substance 'x'" with the nearest names.</summary>
    public static string UnknownMessage(string text)
    {
        var shown = text.Length > 40 ? text[..40] + "…" : text;
        var near = Nearest(text);
        return near.Count > 0
            ? $"unknown substance '{shown}'; did you mean {string.Join(", ", near)}?"
            : $"unknown substance '{shown}'; known are {string.Join(", ", All)} and the blends {string.Join(", ", Blend.All.Select(b => b.Name))}";
    }

    // Case cannot distinguish any two names here (there is no cobalt), so it never matters.
    internal static string Key(string text)
    {
        var key = string.Concat(text.Where(c => c is not ('-' or '_' or ' ' or '\u2010' or '\u2011' or '\u2013'))).ToLowerInvariant();
        foreach (var prefix in (ReadOnlySpan<string>)["hcfc", "hfc", "hfo", "pfc", "hc"])
        {
            if (key.StartsWith(prefix, StringComparison.Ordinal) && key.Length > prefix.Length && char.IsAsciiDigit(key[prefix.Length]))
                return "r" + key[prefix.Length..];
        }
        return key;
    }

    private static Dictionary<string, string> BuildLookup()
    {
        var lookup = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, aliases) in _table)
        {
            lookup[Key(name)] = name;
            foreach (var alias in aliases) lookup[Key(alias)] = name;
        }
        return lookup;
    }

    // Levenshtein's edit distance. A copy, because Fluids stands beside Quantities and does not use it.
    private static int Distance(string a, string b)
    {
        var previous = Enumerable.Range(0, b.Length + 1).ToArray();
        for (int i = 1; i <= a.Length; i++)
        {
            var current = new int[b.Length + 1];
            current[0] = i;
            for (int j = 1; j <= b.Length; j++)
                current[j] = Math.Min(Math.Min(current[j - 1], previous[j]) + 1, previous[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
            previous = current;
        }
        return previous[b.Length];
    }
}
