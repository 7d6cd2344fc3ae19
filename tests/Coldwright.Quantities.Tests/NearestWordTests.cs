using Coldwright.Quantities;
using CsCheck;
using Xunit;

namespace Coldwright.Quantities.Tests;

public sealed class NearestWordTests
{
    private static readonly string[] _keys = ["length", "tube", "kind", "maximum-pressure", "displacement"];

    [Theory]
    [InlineData("legnth", "length")]
    [InlineData("Length", "length")]
    [InlineData("maximum_pressure", "maximum-pressure")]
    [InlineData("displacment", "displacement")]
    [InlineData("tubes", "tube")]
    public void AMisspeltWordFindsItsNeighbour(string word, string expected) => Assert.Equal([expected], NearestWord.Find(word, _keys));

    [Theory]
    [InlineData("colour")]
    [InlineData("")]
    [InlineData("xy")]
    public void AStrangeWordFindsNothing(string word) => Assert.Empty(NearestWord.Find(word, _keys));

    [Fact]
    public void DistanceIsSymmetricAndZeroOnlyForEqualWords() =>
        Gen.Select(Gen.String[Gen.Char["abc"], 0, 6], Gen.String[Gen.Char["abc"], 0, 6]).Sample((a, b) =>
        {
            Assert.Equal(NearestWord.Distance(a, b), NearestWord.Distance(b, a));
            Assert.Equal(a == b, NearestWord.Distance(a, b) == 0);
        });
}
