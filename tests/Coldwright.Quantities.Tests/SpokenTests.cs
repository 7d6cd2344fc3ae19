using System.Globalization;
using Xunit;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Quantities.Tests;

/// <summary>Sentences that keep their amounts: SI as plain text, the reader's own units through a face.</summary>
public sealed class SpokenTests
{
    private static readonly Spoken _sentence = Spoken.Of($"It stops at {Temperature(131.2)}, {Difference(2.04)} apart, at {Pressure(18.04e5)} less {PressureDifference(0.35e5)}; outside {Celsius(260.65)}.");

    [Fact]
    public void AsPlainTextItSpeaksSi() => Assert.Equal("It stops at 131.2 K, 2.0 K apart, at 18.0 bar absolute less 0.35 bar; outside -12.5 °C.", _sentence.ToString());

    [Fact]
    public void AFaceSaysEveryAmountAndTouchesNoWord() =>
        Assert.Equal("It stops at <Temperature 131.2>, <TemperatureDifference 2.04> apart, at <Pressure 1804000> less <PressureDifference 35000>; outside <Temperature 260.65>.",
            _sentence.With(a => string.Create(CultureInfo.InvariantCulture, $"<{a.Kind} {Math.Round(a.Value, 6)}>")));

    [Fact]
    public void SentencesStandInsideAndBehindOneAnother()
    {
        var inner = Spoken.Of($"at {Temperature(100)}");
        Assert.Equal("cold at *, and warm", (Spoken.Of($"cold {inner}") + ", and warm").With(_ => "*"));
        Assert.Equal("at *; at *; plain", Spoken.Join("; ", [inner, inner, "plain"]).With(_ => "*"));
        Assert.Equal(["a", "b"], Spoken.All(["a", "b"]).Select(s => s.ToString()));
    }

    [Fact]
    public void TheSameWordsAreTheSameSentence()
    {
        Assert.Equal(Spoken.Of($"at {Temperature(100)}"), (Spoken)"at 100.0 K");
        Assert.Single(new[] { Spoken.Of($"at {Temperature(100)}"), Spoken.Of($"at {Temperature(100)}") }.Distinct());
        Assert.NotEqual(Spoken.Of($"at {Temperature(100)}"), Spoken.Of($"at {Temperature(101)}"));
        Assert.True(((Spoken)"").IsEmpty);
        Assert.False(Spoken.Of($"{Temperature(100)}").IsEmpty);
    }

    [Fact]
    public void NumbersAreWrittenForNoCountry()
    {
        var before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        CultureInfo.CurrentCulture = comma;
        try
        {
            Assert.Equal("1234.5 W of 3 at 0.5 K", Spoken.Of($"{1234.5:0.0} W of {3} at {Difference(0.5)}").ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <summary>A text made where sentences are not known keeps its amounts, those of a text inside it too.</summary>
    [Fact]
    public void AmountsAreFoundInATextMadeElsewhere()
    {
        FormattableString inner = $"at {SpokenAmount.Pressure(2e5)} {1.0 / 3:0.00} is left";
        FormattableString outer = $"{SpokenAmount.Temperature(100)}: {inner}; {Spoken.Of($"not {SpokenAmount.Celsius(273.15)}")}, {3} times, {null}.";
        var sentence = Spoken.From(outer);
        Assert.Equal("100.0 K: at 2.0 bar absolute 0.33 is left; not 0 °C, 3 times, .", sentence.ToString());
        Assert.Equal("<100>: at <200000> 0.33 is left; not <273.15>, 3 times, .", sentence.With(a => FormattableString.Invariant($"<{a.Value}>")));
        Assert.Equal("plain", Spoken.From($"plain").ToString());
    }
}
