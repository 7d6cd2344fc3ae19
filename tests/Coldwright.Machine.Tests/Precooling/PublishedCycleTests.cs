using Coldwright.Machine.Precooling;

namespace Coldwright.Machine.Tests.Precooling;

/// <summary>The loop without its losses against worked examples of textbooks.</summary>
public class PublishedCycleTests
{
    // Cengel, Boles, Thermodynamics: An Engineering Approach, Example 11-1: R134a between 0.14 and 0.8 MPa, saturated vapour and liquid, 0.05 kg/s:
    // h1 239.16, h2 275.39, h3 95.47 kJ/kg; 7.18 kW, 1.81 kW, 9.0 kW rejected, COP 3.97 (figures read in a public transcription of the book's examples)
    [Fact]
    public void CengelBolesExample11_1()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Ideal, "R134a", PrecoolerCases.Stop);
        var row = loop.Between(loop.Saturation(0.14e6).DewK, loop.Saturation(0.8e6).DewK, 0, PrecoolerCases.Room, PrecoolerCases.Stop);
        double toBook = 0.05 / row.MassFlow;
        Assert.Equal(7.18e3, row.CoolingW * toBook, 0.01e3);
        Assert.Equal(1.81e3, row.CompressorPowerW * toBook, 0.01e3);
        Assert.Equal(9.0e3, row.CondenserHeatW * toBook, 0.02e3);
        Assert.Equal(3.97, row.CoolingW / row.CompressorPowerW, 0.02);
        // T-s: h2 = 275.39 is at 0.8 MPa, s = 0.94456
        Assert.Equal(275.39 - 239.16, row.CompressorPowerW / row.MassFlow / 1e3, 0.15);
    }

    // R134a, evaporating -5 C, condensing 35 C: h 249.7, 395.6, 422.5 kJ/kg, COP 5.4 (Hundy, Trott, Welch, Refrigeration, Air Conditioning and Heat Pumps,
    // Example 2.1; title from memory, figures read in a public transcription of the book's examples)
    [Fact]
    public void HundyExample2_1()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Ideal, "R134a", PrecoolerCases.Stop);
        var row = loop.Between(268.15, 308.15, 0, PrecoolerCases.Room, PrecoolerCases.Stop);
        Assert.Equal(395.6 - 248.9, row.CoolingW / row.MassFlow / 1e3, 1.5);
        Assert.Equal(422.5 - 395.6, row.CompressorPowerW / row.MassFlow / 1e3, 0.5);
        Assert.Equal(5.4, row.CoolingW / row.CompressorPowerW, 0.12);
    }

    // R22, evaporating -15 C, condensing 20 C: h1 244.13, h2s 271.92, h3 68.67 kJ/kg; with 75 % isentropic efficiency COP 4.74 (Balmer, Modern Engineering
    // Thermodynamics, Example 14.4; title from memory, figures read in a public transcription)
    [Fact]
    public void BalmerExample14_4()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Ideal, "R22", PrecoolerCases.Stop);
        var row = loop.Between(258.15, 293.15, 0, PrecoolerCases.Room, PrecoolerCases.Stop);
        Assert.Equal(244.13 - 68.67, row.CoolingW / row.MassFlow / 1e3, 0.6);
        Assert.Equal(271.92 - 244.13, row.CompressorPowerW / row.MassFlow / 1e3, 0.3);
        Assert.Equal(4.74, 0.75 * row.CoolingW / row.CompressorPowerW, 0.05);
    }

    // ANSI/ASHRAE Standard 34 (from memory): R407C at 101.325 kPa bubble -43.8 C, dew -36.7 C; a maker's service table (R407C, liquid) as read: 10.0 C 664 kPa,
    // 40.0 C 1624 kPa gauge
    [Fact]
    public void GlideOfR407C()
    {
        var loop = PrecoolerLoop.Create(PrecoolerCases.Small, "R407C", PrecoolerCases.Stop);
        var (bubble, dew) = loop.Saturation(101325);
        Assert.Equal(-43.8, bubble - 273.15, 0.4);
        Assert.Equal(-36.7, dew - 273.15, 0.4);
        Assert.Equal(10.0, loop.Saturation(664e3 + 101325).BubbleK - 273.15, 0.6);
        Assert.Equal(40.0, loop.Saturation(1624e3 + 101325).BubbleK - 273.15, 0.6);
    }
}
