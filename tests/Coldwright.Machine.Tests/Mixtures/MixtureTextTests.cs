using Coldwright.Fluids.Substances;
using CsCheck;

namespace Coldwright.Machine.Tests.Mixtures;

public sealed class MixtureTextTests
{
    [Theory]
    [InlineData("nitrogen 0.35, methane 0.65")]
    [InlineData("nitrogen=0.35;methane=0.65")]
    [InlineData("N2: 0.35, CH4: 0.65")]
    [InlineData("nitrogen 35 %, R50 65 %")]
    [InlineData("Nitrogen  0.35 ; R-50 = 0.65 ;")]
    public void TheSameMixtureInManySpellings(string text)
    {
        var mixture = Parse(text, out var notes);
        Assert.Equal(["nitrogen", "methane"], mixture.Names);
        Assert.Equal(0.35, mixture.MoleFractions[0], 1e-12);
        Assert.Empty(notes);
    }

    [Theory]
    [InlineData("R290", "propane")]
    [InlineData("R600a", "isobutane")]
    [InlineData("carbon dioxide", "carbon-dioxide")]
    [InlineData("HFC-134a", "R134a")]
    [InlineData("R-1234YF", "R1234yf")]
    [InlineData("n-C4H10", "butane")]
    [InlineData("CF3CF=CH2", "R1234yf")]
    public void ABareNameIsThePureSubstance(string text, string expected) => Assert.Equal([expected], Parse(text, out _).Names);

    [Fact]
    public void EveryNameAndAliasIsUnderstood()
    {
        Assert.Equal(26, SubstanceNames.All.Count);
        Assert.All(SubstanceNames.AllWords, word => Parse(word, out _));
        Assert.All(SubstanceNames.All, name => Assert.True(SubstanceNames.TryFind(name, out var found) && found == name));
    }

    [Fact]
    public void AirIsItsThreeGases()
    {
        var air = Parse("air", out var notes);
        Assert.Equal(["nitrogen", "argon", "oxygen"], air.Names);
        Assert.Equal(0.7812, air.MoleFractions[0], 1e-12);
        Assert.Contains("Lemmon", Assert.Single(notes), StringComparison.Ordinal);
    }

    [Fact]
    public void R410AIsTakenApartByMass()
    {
        // 50/50 by mass with 52.024 and 120.022 g/mol (formula weights): 0.6976 mol R32 per mol.
        var blend = Parse("R410A", out _);
        Assert.Equal(120.022 / (120.022 + 52.024), blend.MoleFractions[0], 1e-4);
    }

    [Fact]
    public void BlendsAndTheirPartsAddUp()
    {
        var mixture = Parse("air 0.5, nitrogen 0.5", out _);
        Assert.Equal(["nitrogen", "argon", "oxygen"], mixture.Names);
        Assert.Equal(0.5 + 0.5 * 0.7812, mixture.MoleFractions[0], 1e-12);
    }

    [Fact]
    public void MassFractionsBecomeMoleFractions()
    {
        Assert.True(MixtureText.TryParse("nitrogen 0.5, helium 0.5", true, MolarMass, out var mixture, out _, out _));
        Assert.Equal(4.002602 / (4.002602 + 28.0134), mixture.MoleFractions[0], 1e-5);
    }

    [Theory]
    [InlineData("nitrogen 0.35, methane 0.60", "sum to 0.95", "within 0.001")]
    [InlineData("nitrogen 35, methane 65", "sum to 100", "add %")]
    [InlineData("nitrogn 0.35, methane 0.65", "unknown substance 'nitrogn'", "nitrogen")]
    [InlineData("unobtainium", "not a name with a fraction", "nitrogen 0.35")]
    [InlineData("unobtainium 1", "unknown substance 'unobtainium'", "known are")]
    [InlineData("nitrogen 0,35, methane 0,65", "comma", "point")]
    [InlineData("nitrogen -0.35, methane 1.35", "must be from 0", "-0.35")]
    [InlineData("nitrogen, methane 0.65", "'nitrogen' has no fraction", "nitrogen 0.35")]
    [InlineData("nitrogen 0.5, N2 0.5", "nitrogen is named 2 times", "")]
    [InlineData("nitrogen NaN, methane 1", "not a name with a fraction", "")]
    [InlineData("", "empty", "nitrogen 0.35")]
    public void WrongTextsAreExplained(string text, string what, string instead)
    {
        Assert.False(MixtureText.TryParse(text, false, MolarMass, out _, out var problems, out _));
        Assert.Contains(problems, p => p.Contains(what, StringComparison.Ordinal) && p.Contains(instead, StringComparison.Ordinal));
    }

    [Fact]
    public void AllProblemsComeAtOnce()
    {
        Assert.False(MixtureText.TryParse("nitrogn 0.3, methan 0.3, ethane -1", false, MolarMass, out _, out var problems, out _));
        Assert.Equal(3, problems.Count);
    }

    [Fact]
    public void TheOrderDoesNotChangeTheFractions() =>
        Gen.Select(Gen.Double[0.05, 1], Gen.Double[0.05, 1], Gen.Double[0.05, 1]).Sample((a, b, c) =>
        {
            var s = a + b + c;
            string Item(string name, double x) => FormattableString.Invariant($"{name} {x / s:R}");
            var one = Parse(string.Join(", ", Item("nitrogen", a), Item("methane", b), Item("ethane", c)), out _);
            var two = Parse(string.Join(", ", Item("ethane", c), Item("nitrogen", a), Item("methane", b)), out _);
            Assert.Equal(one.MoleFractions[0], two.MoleFractions[1], 1e-14);
            Assert.Equal(1, one.MoleFractions.Sum(), 1e-14);
        });

    [Fact]
    public void AnyTextIsAMixtureOrProblems() =>
        Gen.String[Gen.Char["nitrogemhanR290 ,;=:%.-1e\n\0°"], 0, 40].Sample(text =>
        {
            var good = MixtureText.TryParse(text, false, MolarMass, out var mixture, out var problems, out _);
            Assert.Equal(good, mixture is not null);
            Assert.Equal(good, problems.Count == 0);
        }, iter: 5000);

    private static Composition Parse(string text, out IReadOnlyList<string> notes)
    {
        Assert.True(MixtureText.TryParse(text, false, MolarMass, out var mixture, out var problems, out notes), string.Join("; ", problems));
        return mixture;
    }

    private static double MolarMass(string name) => SubstanceCatalog.Get(name).MolarMass;
}
