using Coldwright.Fluids.Substances;
using Coldwright.Machine.Oil;
using Coldwright.Numerics;

namespace Coldwright.Machine.Tests.Oil;

/// <summary>Gas in oil: Raoult's law, its limit, and gases in hexadecane.</summary>
public sealed class DissolvedGasTests
{
    // mole fractions at 101.325 kPa and 298.15 K, from memory (gas solubility in n-hexadecane); the law's own deviation is what is stated in docs/theory/oil.md
    [Theory]
    [InlineData("methane", 0.0051, 0.55, 0.65)]
    [InlineData("ethane", 0.029, 0.78, 0.88)]
    [InlineData("propane", 0.115, 0.88, 1.0)]
    public void GasesInHexadecaneWithinTheStatedFactor(string name, double measured, double least, double most)
    {
        var moles = new double[1];
        DissolvedGas.Add([SubstanceCatalog.Get(name)], [1], 101325, 298.15, 1, moles);
        Assert.InRange(moles[0] / (1 + moles[0]) / measured, least, most);
    }

    // Wilson's equation meets the critical point, and the pressure at a reduced temperature of 0.7 that defines the acentric factor, by its making
    [Theory]
    [InlineData("propane")]
    [InlineData("isobutane")]
    public void TheVapourPressureMeetsCriticalPointAndAcentricFactor(string name)
    {
        var s = SubstanceCatalog.Get(name);
        Assert.Equal(s.CriticalPressurePa, DissolvedGas.VapourPressurePa(s, s.CriticalTemperatureK), 1e-6 * s.CriticalPressurePa);
        double reduced = DissolvedGas.VapourPressurePa(s, 0.7 * s.CriticalTemperatureK) / s.CriticalPressurePa;
        Assert.Equal(-1 - s.AcentricFactor, Math.Log10(reduced), 0.01);
    }

    [Fact]
    public void LittleGasDissolvesInProportionToItsPressure()
    {
        double Of(double pa)
        {
            var moles = new double[1];
            DissolvedGas.Add([SubstanceCatalog.Get("isobutane")], [1], pa, 330, 0.7, moles);
            return moles[0] / pa;
        }
        Assert.Equal(1, Of(10) / Of(1), 1e-4);
    }

    [Fact]
    public void GasThatWouldCondenseIsRefused()
    {
        var refused = Assert.Throws<SolveException>(() => DissolvedGas.Add([SubstanceCatalog.Get("isobutane")], [1], 5e5, 295, 1, new double[1]));
        Assert.Contains("condense into the compressor's oil", refused.Message, StringComparison.Ordinal);
    }
}
