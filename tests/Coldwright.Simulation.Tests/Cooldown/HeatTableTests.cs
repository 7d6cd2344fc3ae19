using Coldwright.Materials.Solids;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>Heat and temperature of a body.</summary>
public sealed class HeatTableTests
{
    /// <summary>74.96 kJ/kg between 300 and 77 K: integral of the NIST specific heat of OFHC copper (trc.nist.gov/cryogenics, log-polynomial); White and Collocott, J. Phys. Chem. Ref. Data 13 (1984) 1251, agree within 1 %.</summary>
    [Fact]
    public void A_kilogram_of_copper_gives_up_75_kilojoules()
    {
        var copper = HeatTable.Of(SolidLibrary.Default.Find("copper-ofhc-100"));
        double heat = (copper.Heat(300) - copper.Heat(77)) * copper.ReferenceCapacity;
        Assert.Equal(74.96e3, heat, 0.15e3);
    }

    [Fact]
    public void Heat_is_the_inverse_of_temperature()
    {
        var table = HeatTable.Of(SolidLibrary.Default.Find("copper-dhp"));
        for (double k = 15; k < 430; k += 3.7) Assert.Equal(k, table.Temperature(table.Heat(k)), 1e-9);
    }

    [Fact]
    public void Slope_is_one_over_the_heat_capacity()
    {
        var table = HeatTable.Of(SolidLibrary.Default.Find("copper-dhp"));
        for (double k = 70; k < 300; k += 7.3)
        {
            double h = table.Heat(k), slope = (table.Temperature(h + 1e-4) - table.Temperature(h - 1e-4)) / 2e-4;
            Assert.Equal(1 / table.Capacity(k), slope, 2e-3 / table.Capacity(k));
        }
    }
}
