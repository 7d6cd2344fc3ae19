using Coldwright.Fluids.Freezing;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>Water and carbon dioxide as traces.</summary>
public sealed class FreezingContaminantTests
{
    private static readonly string[] Names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] Z = [0.30, 0.30, 0.20, 0.12, 0.08];

    [Theory]
    [InlineData("water", 1e-6)]
    [InlineData("water", 1e-4)]
    [InlineData("carbon-dioxide", 1e-5)]
    [InlineData("carbon-dioxide", 1e-3)]
    public void The_allowed_fraction_at_the_plug_temperature_is_the_fraction(string contaminant, double moleFraction)
    {
        var c = Contaminants.InReferenceModel(Names, contaminant);
        var plug = c.PlugTemperature(contaminant, moleFraction, 17e5, Z)!;
        Assert.Equal(1, c.AllowedMoleFraction(contaminant, plug.TemperatureK, 17e5, Z)!.Value / moleFraction, 6);
        Assert.True(c.AllowedMoleFraction(contaminant, plug.TemperatureK + 1, 17e5, Z) > moleFraction);
        Assert.True(plug.TemperatureK < plug.GasFrostPointK, "gas and liquid only dissolve more than a vacuum");
    }

    [Fact]
    public void More_of_a_contaminant_plugs_warmer()
    {
        var c = Contaminants.InReferenceModel(Names, "water", "carbon-dioxide");
        foreach (var name in (string[])["water", "carbon-dioxide"])
        {
            double[] t = [.. new[] { 1e-6, 1e-5, 1e-4 }.Select(x => c.PlugTemperature(name, x, 17e5, Z)!.TemperatureK)];
            Assert.Equal(t.Order(), t);
        }
    }

    /// <summary>In a dilute gas the frost point is where the partial pressure meets the sublimation pressure; at 0.1 bar the gas lowers it by some hundredths of a kelvin.</summary>
    [Theory]
    [InlineData("water", 1e-5)]
    [InlineData("carbon-dioxide", 1e-4)]
    public void In_thin_gas_the_frost_point_is_the_sublimation_line(string contaminant, double moleFraction)
    {
        var c = Contaminants.InReferenceModel(["nitrogen"], contaminant);
        var plug = c.PlugTemperature(contaminant, moleFraction, 1e4, [1.0])!;
        Assert.InRange(plug.GasFrostPointK!.Value - plug.TemperatureK, 0, 0.05);
    }

    /// <summary>
    /// Liquid nitrogen dissolves far more carbon dioxide than the gas next to it can hold: 1 ppm freezes out of the cold
    /// gas and dissolves again when it condenses.
    /// </summary>
    [Fact]
    public void A_trace_that_froze_from_gas_dissolves_in_the_liquid()
    {
        var plug = Contaminants.InReferenceModel(["nitrogen"], "carbon-dioxide").PlugTemperature("carbon-dioxide", 1e-6, 1e5, [1.0])!;
        Assert.InRange(plug.TemperatureK, 100, 110);
        Assert.InRange(plug.ClearsBelowK!.Value, 77, 77.4);
    }

    /// <summary>A trace through the infinite-dilution route and as a component of the full flash agree.</summary>
    [Fact]
    public void The_trace_agrees_with_the_full_flash()
    {
        var c = Contaminants.InReferenceModel(Names, "carbon-dioxide");
        var plug = c.PlugTemperature("carbon-dioxide", 1e-4, 17e5, Z)!;
        double[] full = [.. Z.Select(z => z * (1 - 1e-4)), 1e-4];
        var first = new FreezingModel(c.Model).FreezingTemperature(17e5, full)!;
        Assert.Equal("carbon-dioxide", first.Component);
        Assert.Equal(plug.TemperatureK, first.TemperatureK, 1);
    }

    [Fact]
    public void What_is_left_out_is_said()
    {
        var c = Contaminants.InReferenceModel(["methane", "R14"], "water");
        Assert.Contains(c.Warnings, w => w.Contains("hydrates", StringComparison.Ordinal));
        Assert.Contains(c.Warnings, w => w.Contains("R14", StringComparison.Ordinal));
    }

    [Fact]
    public void Bad_input_names_itself()
    {
        var c = Contaminants.InReferenceModel(["nitrogen", "R134a"], "water");
        Assert.Throws<ArgumentOutOfRangeException>(() => c.PlugTemperature("water", 0.5, 1e5, [1.0]));
        Assert.Contains("R134a", Assert.Throws<ArgumentException>(() => c.PlugTemperature("R134a", 1e-5, 1e5, [1.0])).Message);
        Assert.Contains("xenon", Assert.Throws<ArgumentException>(() => c.AllowedMoleFraction("xenon", 100, 1e5, [1.0])).Message);
        Assert.Null(c.AllowedMoleFraction("water", 300, 1e5, [1.0]));
    }
}
