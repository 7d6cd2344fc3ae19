using Coldwright.Fluids.Substances;
using Coldwright.Safety.Flammability;
using Xunit;

namespace Coldwright.Safety.Tests.Flammability;

/// <summary>Charge limits and ignition temperatures.</summary>
public sealed class ChargeLimitTests
{
    // ISO 817, propane, from memory.
    private const double Propane = 0.038;

    /// <summary>IEC 60335-2-40 Annex GG, propane: m1 0.152, m2 0.988, m3 4.94 kg; 9, 16, 25 m2: 0.226, 0.302, 0.377 kg at 1.8 m and 0.075, 0.101, 0.126 kg at 0.6 m (formula by hand).</summary>
    [Fact]
    public void Propane_in_rooms()
    {
        Assert.Equal(0.152, ChargeLimits.M1Kg(Propane), 1e-9);
        Assert.Equal(0.988, ChargeLimits.M2Kg(Propane), 1e-9);
        Assert.Equal(4.94, ChargeLimits.M3Kg(Propane), 1e-9);
        foreach (var (height, floor, kg) in ((double, double, double)[])[(1.8, 9, 0.226), (1.8, 16, 0.302), (1.8, 25, 0.377), (0.6, 9, 0.075), (0.6, 16, 0.101), (0.6, 25, 0.126)])
            Assert.Equal(kg, ChargeLimits.ByRoomKg(Propane, height, floor), 6e-4);
        Assert.Equal(0.152, ChargeLimits.AllowedKg(Propane, 0.6, 9), 1e-9);
        Assert.Equal(0.988, ChargeLimits.AllowedKg(Propane, 2.2, 900), 1e-9);
    }

    [Fact]
    public void Floor_and_charge_are_inverse()
    {
        Assert.Equal(40, ChargeLimits.FloorM2(ChargeLimits.ByRoomKg(Propane, 1.8, 40), Propane, 1.8), 1e-9);
        Assert.Equal(0, ChargeLimits.FloorM2(0.15, Propane, 0.6));
    }

    /// <summary>IEC 60079-20-1:2010: butane 372 °C, propane 450 °C, methane 600 °C.</summary>
    [Fact]
    public void Lowest_ignition_temperature_of_a_mixture()
    {
        Assert.Equal(450 + 273.15, IgnitionTemperatures.LowestOf(new Composition(["methane", "propane", "butane"], [0.5, 0.5, 0]))!.Value, 1e-9);
        Assert.Equal(372 + 273.15, IgnitionTemperatures.LowestOf(new Composition(["methane", "butane"], [0.5, 0.5]))!.Value, 1e-9);
        Assert.Null(IgnitionTemperatures.LowestOf(new Composition(["nitrogen"], [1])));
    }
}
