using Coldwright.Quantities;
using Xunit;

namespace Coldwright.Quantities.Tests;

/// <summary>Texts and their SI values. Unit sizes: NIST SP 811 (2008), Appendix B; the rest follows by arithmetic.</summary>
public sealed class QuantityReadings
{
    private const double Room = 101325;

    public static TheoryData<string, string, double> Cases => new()
    {
        { "17 barg", "pressure", 17e5 + Room },
        { "17barg", "pressure", 17e5 + Room },
        { "17 BarG", "pressure", 17e5 + Room },
        { "17 bar(g)", "pressure", 17e5 + Room },
        { "17 bar gauge", "pressure", 17e5 + Room },
        { "0 barg", "pressure", Room },
        { "-0.5 barg", "pressure", Room - 0.5e5 },
        { "−0.5 barg", "pressure", Room - 0.5e5 },
        { "1.2 bara", "pressure", 1.2e5 },
        { "1.2 bar abs", "pressure", 1.2e5 },
        { "260 psig", "pressure", 260 * 6894.757293168361 + Room },
        { "14.7 PSIA", "pressure", 14.7 * 6894.757293168361 },
        { "1.8 MPaa", "pressure", 1.8e6 },
        { "250 kPag", "pressure", 2.5e5 + Room },
        { "1013 mbara", "absolute", 101300 },
        { "760 mmHg abs", "absolute", 760 * 133.322387415 },
        { "29.6 inHga", "absolute", 29.6 * 3386.389 },
        { "0.2 bar", "drop", 2e4 },
        { "3 psi", "drop", 3 * 6894.757293168361 },
        { "-19 °C", "temperature", 254.15 },
        { "−19 °C", "temperature", 254.15 },
        { "-19 C", "temperature", 254.15 },
        { "-19 ºC", "temperature", 254.15 },
        { "-19 ℃", "temperature", 254.15 },
        { "−19 °C", "temperature", 254.15 },
        { "70 °F", "temperature", 294.2611111111111 },
        { "-320.4 F", "temperature", 77.37222222222222 },
        { "77.355 K", "temperature", 77.355 },
        { "540 °R", "temperature", 300 },
        { "5 K", "difference", 5 },
        { "9 Δ°F", "difference", 5 },
        { "0.311 in", "length", 0.0078994 },
        { "1/4 in", "length", 0.00635 },
        { "1/4\"", "length", 0.00635 },
        { "2-1/8 in", "length", 0.053975 },
        { "2 1/8 in", "length", 0.053975 },
        { "1.2e3 mm", "length", 1.2 },
        { "6 ft", "length", 1.8288 },
        { "2.6 kW", "power", 2600 },
        { "8500 BTU/h", "power", 8500 * 1055.05585262 / 3600 },
        { "8500 btu/h", "power", 8500 * 1055.05585262 / 3600 },
        { "0.5 hp", "power", 0.5 * 745.69987158227022 },
        { "50 mW", "power", 0.05 },
        { "12.4 cm3", "volume", 12.4e-6 },
        { "12.4 cm³", "volume", 12.4e-6 },
        { "12.4 cm^3", "volume", 12.4e-6 },
        { "12.4 cc", "volume", 12.4e-6 },
        { "2 L", "volume", 2e-3 },
        { "500 ml", "volume", 5e-4 },
        { "12 W/K", "conductance", 12 },
        { "12 W/°C", "conductance", 12 },
        { "1.35 mg/s", "massflow", 1.35e-6 },
        { "2 kg/h", "massflow", 2.0 / 3600 },
        { "0.05 mol/s", "molarflow", 0.05 },
        { "30 L/min", "volumeflow", 5e-4 },
        { "2 1/h", "rate", 2.0 / 3600 },
        { "2/h", "rate", 2.0 / 3600 },
        { "2 per h", "rate", 2.0 / 3600 },
        { "2850 rpm", "speed", 47.5 },
        { "2 %", "fraction", 0.02 },
        { "0.02", "fraction", 0.02 },
        { "500 ppm", "fraction", 5e-4 },
        { "60 m2", "area", 60 },
        { "60 m²", "area", 60 },
        { "250 g", "mass", 0.25 },
        { "4 h", "time", 14400 },
        { "-35 J/(mol K)", "entropy", -35 },
        { "-1.2 kJ/mol", "enthalpy", -1200 },
        { "0.31 per kWh", "energyprice", 0.31 / 3.6e6 },
        { "4.20 per kg", "massprice", 4.2 },
        { "2.40/L", "volumeprice", 2400 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void TextGivesTheSiValue(string text, string kind, double expected)
    {
        Assert.True(Quantity.TryParse(text, Kinds.Named(kind), Room, out var value, out var problem), problem?.Message);
        Assert.Equal(expected, value, Math.Abs(expected) * 1e-12 + 1e-300);
    }

    [Fact]
    public void GaugeFollowsTheRoomsBarometer()
    {
        Assert.True(Quantity.TryParse("1 barg", QuantityKind.Pressure, 85000, out var value, out _));
        Assert.Equal(185000, value, 1e-6);
    }

    [Fact]
    public void BarePascalIsAbsoluteOnlyWhereThatIsAgreed()
    {
        Assert.True(Quantity.TryParse("1.8 MPa", QuantityKind.Pressure, Room, out var value, out _, plainPascalIsAbsolute: true));
        Assert.Equal(1.8e6, value, 1e-6);
        Assert.False(Quantity.TryParse("18 bar", QuantityKind.Pressure, Room, out _, out _, plainPascalIsAbsolute: true));
        Assert.False(Quantity.TryParse("1.8 MPa", QuantityKind.Pressure, Room, out _, out _));
    }

    [Fact]
    public void EveryKindReadsItsOwnExample()
    {
        foreach (var kind in Kinds.All)
            Assert.True(Quantity.TryParse(kind.Example, kind, Room, out _, out var problem), problem?.Message);
    }
}
