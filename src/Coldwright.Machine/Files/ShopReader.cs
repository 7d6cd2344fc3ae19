using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files.Keys;
using Coldwright.Machine.Files.Tree;

namespace Coldwright.Machine.Files;

/// <summary>Turns the text of <c>shop.yaml</c> into a description, reporting every problem on the way.</summary>
public static class ShopReader
{
    private const double JoulePerKWh = 3.6e6;
    private const double CubicMetrePerLitre = 1e-3;

    /// <summary>The description; null when the problems found make it useless.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="problems">Collects what is wrong.</param>
    public static ShopDescription? Read(string text, ProblemList problems)
    {
        if (FileTree.Read(text, problems) is not { } node) return null;
        if (node is not MapNode map)
        {
            problems.Add(node, $"the file must be a group of keys (currency, electricity, gases); here is {node.What}");
            return null;
        }
        var context = new ReadingContext(problems, [], NoMolarMass);
        var root = new SectionReader(context, map, ShopKeys.Root, "the file");
        root = root.With(context with { Currency = root.Text("currency") });

        var prices = new Dictionary<string, double>(StringComparer.Ordinal);
        var purities = new Dictionary<string, double>(StringComparer.Ordinal);
        var impurities = new Dictionary<string, IReadOnlyDictionary<string, double>>(StringComparer.Ordinal);
        foreach (var (gas, value) in Substances(root, "gases"))
        {
            if (value is not MapNode keys)
            {
                problems.Add(value, $"the gas '{gas}' must be a group of keys, such as {{price: 4.20 per kg}}; here is {value.What}");
                continue;
            }
            var reader = new SectionReader(root.Context, keys, ShopKeys.Gas, $"the gas '{gas}'");
            prices[gas] = reader.Quantity("price");
            if (reader.OptionalQuantity("purity") is { } purity) purities[gas] = purity;
            if (Impurities(reader, gas) is { Count: > 0 } found) impurities[gas] = found;
        }
        var tubes = root.Sections("tubes", "a tube").Select(t => (Tube: t.Reader.Tube("tube"), Price: t.Reader.Quantity("price"))).Where(t => t.Tube is not null).Select(t => new StockTube(t.Tube!, t.Price)).ToArray();
        var insulation = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (reader, _) in root.Sections("insulation", "an insulation")) insulation[reader.Material("material")] = reader.Quantity("price");
        var shop = new ShopDescription
        {
            Currency = root.Text("currency"),
            ElectricityPerKWh = root.Quantity("electricity") * JoulePerKWh,
            ChargeLossPer1000H = root.Quantity("charge-loss-per-1000-h", 0),
            GasPerKg = prices,
            GasPurity = purities,
            GasImpurities = impurities,
            BoughtLiquidPerL = Liquids(root),
            Tubes = tubes,
            InsulationPerM3 = insulation,
        };
        return problems.IsEmpty ? shop : null;
    }

    private static Dictionary<string, double> Impurities(SectionReader reader, string gas)
    {
        var found = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var name in ShopKeys.Impurities)
            if (reader.OptionalQuantity(name) is { } share && share != 0)
            {
                if (name == gas) reader.Complain(name, $"{name} cannot be an impurity of the gas '{gas}' itself");
                else found[name] = share;
            }
        if (reader.OptionalQuantity("purity") is { } purity && found.Values.Sum() > 1 - purity + 1e-9)
            reader.Complain("purity", FormattableString.Invariant($"the gas '{gas}' has {1e6 * found.Values.Sum():0.#} ppm of impurities, more than its purity of {100 * purity:0.#####} % leaves"));
        return found;
    }

    private static Dictionary<string, double> Liquids(SectionReader root)
    {
        var kind = ((QuantityForm)((BySubstanceForm)ShopKeys.Root["bought-liquid"].Form).Value).Kind;
        var liquids = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (substance, value) in Substances(root, "bought-liquid"))
        {
            if (value is ScalarNode { Text.Length: > 0 } price) liquids[substance] = ValueText.Quantity(root.Context, price, kind, substance) * CubicMetrePerLitre;
            else root.Context.Problems.Add(value, $"the price of '{substance}' must be a single value, such as 2.40 per L; here is {value.What}");
        }
        return liquids;
    }

    /// <summary>The entries of a group whose keys are substance names, with canonical names; unknown and doubled names are reported.</summary>
    private static List<(string Name, FileNode Value)> Substances(SectionReader root, string key)
    {
        var found = new List<(string Name, FileNode Value)>();
        if (!root.Has(key) || root.Map(key) is not { } map) return found;
        foreach (var (name, value) in map.Entries)
        {
            var canonical = Blend.TryFind(name.Text, out var blend) ? blend.Name : null;
            if (canonical is null && !SubstanceNames.TryFind(name.Text, out canonical))
                root.Context.Problems.Add(name, $"{key}: {SubstanceNames.UnknownMessage(name.Text)}");
            else if (found.Any(f => f.Name == canonical))
                root.Context.Problems.Add(name, $"{key}: '{name.Text}' is {canonical}, which is here twice");
            else
                found.Add((canonical, value));
        }
        return found;
    }

    // A shop holds no mixtures, so nothing in it asks for a molar mass.
    private static double NoMolarMass(string name) => throw new InvalidOperationException($"a shop needs no molar mass, but that of {name} was asked for");
}
