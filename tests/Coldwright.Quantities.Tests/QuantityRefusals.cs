using Coldwright.Quantities;
using Xunit;

namespace Coldwright.Quantities.Tests;

/// <summary>Wrong texts and what the message must say: value, limit, unit, what to write instead.</summary>
public sealed class QuantityRefusals
{
    private const double Room = 101325;

    [Theory]
    [InlineData("17 bar", "pressure", "17 barg", "17 bara")]
    [InlineData("260 psi", "pressure", "260 psig", "260 psia")]
    [InlineData("250 kPa", "pressure", "250 kPag", "250 kPaa")]
    [InlineData("101325 Pa", "pressure", "gauge", "absolute")]
    [InlineData("1013 mbar", "absolute", "absolute", "1013 mbara")]
    [InlineData("0 barg", "absolute", "gauge", "absolute")]
    [InlineData("0.2 barg", "drop", "neither gauge nor absolute", "0.2 bar")]
    [InlineData("-1.2 barg", "pressure", "full vacuum", "-1.01325 barg")]
    [InlineData("0 bara", "pressure", "full vacuum", "0 bara")]
    [InlineData("-300 °C", "temperature", "absolute zero", "-273.15 °C")]
    [InlineData("-500 °F", "temperature", "absolute zero", "-459.67 °F")]
    [InlineData("0 K", "temperature", "absolute zero", "0 K")]
    [InlineData("5 °C", "difference", "5 K", "difference")]
    [InlineData("9 °F", "difference", "5 K", "difference")]
    [InlineData("5 Δ°C", "temperature", "difference", "-19 °C")]
    [InlineData("12,4 cm3", "volume", "comma", "point")]
    [InlineData("1,013 mbara", "absolute", "comma", "1013")]
    [InlineData("1 013 mbara", "absolute", "gap", "1013 mbara")]
    [InlineData("12.4", "volume", "no unit", "2 L")]
    [InlineData("12.4 kg", "length", "not a length", "1.2 m")]
    [InlineData("17 bagr", "pressure", "no known unit", "'barg'")]
    [InlineData("12 W/Q", "conductance", "no known unit", "W/K")]
    [InlineData("12 W/m K", "conductance", "no known unit", "W/K")]
    [InlineData("2.6 kWh", "power", "not a power", "2.6 kW")]
    [InlineData("130 %", "fraction", "at most", "100 %")]
    [InlineData("1.3", "fraction", "at most", "1")]
    [InlineData("-2 %", "fraction", "at least", "0 %")]
    [InlineData("1e999 m", "length", "too large", "m")]
    [InlineData("1e300 km", "length", "", "km")]
    [InlineData("1/0 in", "length", "zero", "1.2 m")]
    [InlineData("", "length", "nothing", "1.2 m")]
    [InlineData("long", "length", "number", "1.2 m")]
    [InlineData("NaN m", "length", "number", "1.2 m")]
    [InlineData("0.31", "energyprice", "no unit", "0.31 per kWh")]
    public void TheMessageSaysWhatAndWhatInstead(string text, string kind, string what, string instead)
    {
        if (Quantity.TryParse(text, Kinds.Named(kind), Room, out var value, out var problem))
        {
            // The only huge number that may pass is one that stays finite in SI.
            Assert.True(double.IsFinite(value) && text == "1e300 km");
            return;
        }
        Assert.Contains(what, problem.Message, StringComparison.Ordinal);
        Assert.Contains(instead, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AProblemCarriesValueLimitAndUnit()
    {
        Assert.False(Quantity.TryParse("-300 °C", QuantityKind.Temperature, Room, out var value, out var problem));
        Assert.True(double.IsNaN(value));
        Assert.Equal(-300, problem.Value);
        Assert.Equal(-273.15, problem.Limit!.Value, 1e-9);
        Assert.Equal("°C", problem.Unit);
    }

    [Fact]
    public void AKindCanBeNarrowed()
    {
        var kind = QuantityKind.Length.Above(0, 100);
        Assert.False(Quantity.TryParse("-3 mm", kind, Room, out _, out var negative));
        Assert.Equal("-3 mm is too small: a length here must be more than 0 mm", negative.Message);
        Assert.False(Quantity.TryParse("0 m", kind, Room, out _, out _));
        Assert.False(Quantity.TryParse("1 km", kind, Room, out _, out var large));
        Assert.Equal("1 km is too large: a length here must be at most 0.1 km", large.Message);
    }

    [Fact]
    public void AVeryLongTextIsCutShortInTheMessage()
    {
        Assert.False(Quantity.TryParse(new string('9', 5000), QuantityKind.Length, Room, out _, out var problem));
        Assert.Contains("5000 characters", problem.Message, StringComparison.Ordinal);
        Assert.True(problem.Message.Length < 300);
    }
}
