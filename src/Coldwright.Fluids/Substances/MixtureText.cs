using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Coldwright.Fluids.Substances;

/// <summary>Reads a mixture as a person writes it: <c>nitrogen 0.35, methane 0.65</c>, <c>nitrogen=0.35;methane=0.65</c>, <c>R290</c>.</summary>
public static class MixtureText
{
    /// <summary>A sum further than this from 1 is an error; a nearer one is normalised and said.</summary>
    public const double SumTolerance = 1e-3;

    /// <summary>The most substances a mixture may have after blends are taken apart.</summary>
    public const int MostSubstances = 12;

    private const int LongestText = 2000;

    /// <summary>Reads a mixture; every problem is reported, not only the first.</summary>
    /// <param name="text">Names with fractions, separated by commas or semicolons; a single bare name is the pure substance. <c>35 %</c> is accepted for 0.35.</param>
    /// <param name="byMass">True when the fractions are mass fractions.</param>
    /// <param name="molarMassKgPerMol">Molar mass (kg/mol) of a canonical name; asked only for mass fractions and for blends.</param>
    /// <param name="composition">Mole fractions, when the method returns true; substances in the order written.</param>
    /// <param name="problems">What is wrong, when the method returns false.</param>
    /// <param name="notes">What was done silently otherwise: fractions normalised, a blend taken apart.</param>
    public static bool TryParse(string text, bool byMass, Func<string, double> molarMassKgPerMol,
        [NotNullWhen(true)] out Composition? composition, out IReadOnlyList<string> problems, out IReadOnlyList<string> notes)
    {
        composition = null;
        var wrong = new List<string>();
        var said = new List<string>();
        (problems, notes) = (wrong, said);
        if (text.Length > LongestText)
        {
            wrong.Add($"the mixture is a text of {text.Length} characters; the limit is {LongestText}");
            return false;
        }
        var items = Split(text, wrong);
        CheckRepeats(items, wrong);
        if (wrong.Count > 0) return false;

        var sum = items.Sum(i => i.Share);
        if (Math.Abs(sum - 1) > SumTolerance)
        {
            var hint = Math.Abs(sum - 100) < 1 ? "; write fractions of 1, or add % to each" : "";
            wrong.Add($"the {(byMass ? "mass" : "mole")} fractions sum to {Show(sum)}, and must sum to 1 within {Show(SumTolerance)}{hint}");
            return false;
        }
        if (Math.Abs(sum - 1) > 1e-9) said.Add($"the fractions sum to {Show(sum)} and were normalised to 1");

        var moles = Expand(items, byMass, molarMassKgPerMol, said);
        if (moles.Count > MostSubstances)
        {
            wrong.Add($"the mixture has {moles.Count} substances; the limit is {MostSubstances}");
            return false;
        }
        composition = new Composition(moles.Select(m => m.Name).ToArray(), moles.Select(m => m.Moles).ToArray());
        return true;
    }

    private readonly record struct Item(string Name, Blend? Blend, double Share);

    private static List<Item> Split(string text, List<string> wrong)
    {
        var pieces = text.Split([',', ';', '\n'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var items = new List<Item>();
        if (pieces.Length == 0) wrong.Add("the mixture is empty; write for example nitrogen 0.35, methane 0.65");
        if (pieces.Any(p => p.Length > 0 && p.All(char.IsAsciiDigit)))
        {
            wrong.Add("the mixture has a comma inside a number; decimals are written with a point, e.g. nitrogen 0.35, methane 0.65");
            return items;
        }
        if (pieces.Length == 1 && TryName(pieces[0], out var pure)) return [pure with { Share = 1 }];
        foreach (var piece in pieces)
        {
            if (TryItem(piece, out var item, out var complaint)) items.Add(item);
            else wrong.Add(complaint);
        }
        return items;
    }

    private static bool TryItem(string piece, out Item item, out string complaint)
    {
        item = default;
        var percent = piece.EndsWith('%');
        var body = (percent ? piece[..^1] : piece).TrimEnd();
        // The last "=" or ":" wins over a space, because formulas (CF3CF=CH2) and names (carbon dioxide) contain them too.
        var cut = Math.Max(body.LastIndexOf('='), body.LastIndexOf(':'));
        if (cut < 0 || !TryNumber(body[(cut + 1)..], out _)) cut = body.LastIndexOf(' ');
        if (cut <= 0 || !TryNumber(body[(cut + 1)..], out var share))
        {
            complaint = TryName(piece, out _)
                ? $"'{Short(piece)}' has no fraction; write for example {Short(piece)} 0.35"
                : $"'{Short(piece)}' is not a name with a fraction; write for example nitrogen 0.35";
            return false;
        }
        var name = body[..cut].Trim();
        if (!TryName(name, out item))
        {
            complaint = SubstanceNames.UnknownMessage(name);
            return false;
        }
        if (percent) share /= 100;
        item = item with { Share = share };
        complaint = share is >= 0 and <= 100
            ? ""
            : $"the fraction of {name} is {Show(share)}; it must be from 0 to 1";
        return complaint.Length == 0;
    }

    private static bool TryName(string text, out Item item)
    {
        item = default;
        if (SubstanceNames.TryFind(text, out var canonical)) item = new Item(canonical, null, 0);
        else if (Blend.TryFind(text, out var blend)) item = new Item(blend.Name, blend, 0);
        return item.Name is not null;
    }

    private static void CheckRepeats(List<Item> items, List<string> wrong)
    {
        foreach (var group in items.GroupBy(i => i.Name).Where(g => g.Count() > 1))
            wrong.Add($"{group.Key} is named {group.Count()} times");
    }

    private static List<(string Name, double Moles)> Expand(List<Item> items, bool byMass, Func<string, double> molarMassKgPerMol, List<string> said)
    {
        var moles = new List<(string Name, double Moles)>();
        foreach (var item in items)
        {
            if (item.Blend is null)
            {
                Add(item.Name, byMass ? item.Share / molarMassKgPerMol(item.Name) : item.Share);
                continue;
            }
            var amount = byMass ? item.Share / item.Blend.MolarMass(molarMassKgPerMol) : item.Share;
            foreach (var (substance, fraction) in item.Blend.MoleFractions(molarMassKgPerMol)) Add(substance, amount * fraction);
            said.Add($"{item.Name} was taken as {string.Join(", ", item.Blend.Parts.Select(p => $"{p.Substance} {Show(p.Share)}"))} by {(item.Blend.IsByMass ? "mass" : "mole")} ({item.Blend.Source})");
        }
        return moles;

        void Add(string name, double amount)
        {
            var at = moles.FindIndex(m => m.Name == name);
            if (at < 0) moles.Add((name, amount));
            else moles[at] = (name, moles[at].Moles + amount);
        }
    }

    private static bool TryNumber(string text, out double value) =>
        double.TryParse(text.Trim().Replace('\u2212', '-'), NumberStyles.Float & ~NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static string Show(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    private static string Short(string text) => text.Length > 40 ? text[..40] + "…" : text;
}
