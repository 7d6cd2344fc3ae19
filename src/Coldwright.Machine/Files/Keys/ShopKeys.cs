using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys of <c>shop.yaml</c>.</summary>
public static class ShopKeys
{
    /// <summary>What a gas may hold besides itself, by canonical name.</summary>
    public static IReadOnlyList<string> Impurities { get; } = ["oxygen", "argon", "nitrogen", "water", "carbon-dioxide"];

    /// <summary>One gas that can be had.</summary>
    public static FileSection Gas { get; } = new("gas",
    [
        Required("price", QuantityKind.PricePerMass, "Price by mass, such as 4.20 per kg."),
        Optional("purity", QuantityKind.Fraction.Above(0, 1), "Purity as sold."),
        .. Impurities.Select(name => Optional(name, (QuantityKind.Fraction with { Example = "5 ppm" }).Between(0, 0.2), $"{char.ToUpperInvariant(name[0])}{name[1..].Replace('-', ' ')} in it, by mole.")),
    ]);

    /// <summary>One tube that can be had.</summary>
    public static FileSection Tube { get; } = new("tube",
    [
        new("tube", new TubeForm(), true, "Its size, such as 3/8 in ACR."),
        Required("price", QuantityKind.PricePerLength, "Price by length, such as 4.10 per m."),
    ]);

    /// <summary>One insulation that can be had.</summary>
    public static FileSection Insulation { get; } = new("insulation",
    [
        new("material", new MaterialForm(), true, "The material, such as polyurethane-foam."),
        Required("price", QuantityKind.PricePerVolume, "Price by volume, such as 0.35 per L."),
    ]);

    /// <summary>The whole file.</summary>
    public static FileSection Root { get; } = new("shop",
    [
        new("currency", new TextForm(), true, "Currency of every price in the file."),
        Required("electricity", QuantityKind.PricePerEnergy, "Price of electricity, such as 0.31 per kWh."),
        Optional("charge-loss-per-1000-h", QuantityKind.Fraction, "Share of the charge that leaks away and is replaced in 1000 hours of running."),
        new("gases", new BySubstanceForm(new SectionForm(Gas)), false, "The gases that can be had, by name."),
        new("tubes", new SectionListForm(Tube), false, "Tube that can be had, for cut lists."),
        new("insulation", new SectionListForm(Insulation), false, "Insulation that can be had, for cut lists."),
        new("bought-liquid", new BySubstanceForm(new QuantityForm(QuantityKind.PricePerVolume)), false, "What a litre of liquid costs to buy, by substance, for comparison."),
    ]);
}
