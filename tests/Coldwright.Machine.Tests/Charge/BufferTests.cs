using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Charge;
using Coldwright.Machine.Tests.Compression;

namespace Coldwright.Machine.Tests.Charge;

/// <summary>Buffer and unloader: perfect-gas limit by closed formulas, real-gas amounts, balance.</summary>
public sealed class BufferTests
{
    private static readonly BufferInput Case = new()
    {
        VolumeM3 = 5e-3, TemperatureK = 300, SetPressurePa = 20e5, FullyOpenAbovePa = 2e5, ValveAreaM2 = 1e-6, Bleed = new BleedInput { BoreM = 0.4e-3 },
    };

    /// <summary>
    /// Argon near 1 bar, bleed choked: the time constant of the pressure is V/(Cd A sqrt(R T k/M) (2/(k+1))^((k+1)/(2(k-1)))), k = 5/3,
    /// and the bleed from p1 to p2 takes that times ln(p1/p2).
    /// </summary>
    [Fact]
    public void ChokedBleedOfAPerfectGas()
    {
        const double k = 5.0 / 3, r = 8.314462618, mass = 0.039948;
        var input = Case with { SetPressurePa = 1e5, Bleed = new BleedInput { BoreM = 0.4e-3, DischargeCoefficient = 0.8 } };
        double area = 0.8 * Math.PI / 4 * 0.16e-6;
        double constant = 5e-3 / (area * Math.Sqrt(r * 300 * k / mass) * Math.Pow(2 / (k + 1), (k + 1) / (2 * (k - 1))));
        // from 2 bar to 0.1 + 0.19 bar above a suction of 0.1 bar: choked all the way
        var result = new BufferModel(input, ReferenceModel.Create(["argon"]), [1]).Run(2e5, 0.1e5, CompressorCases.Stop);
        Assert.Equal(constant * Math.Log(2e5 / (0.1e5 + 0.19e5)), result.BleedTimeS, 3e-3 * result.BleedTimeS);
    }

    /// <summary>In equals out at the steady state, which lies between suction and high side; the content is the real gas's.</summary>
    [Fact]
    public void SteadyState()
    {
        var model = ReferenceModel.Create(CompressorCases.MixtureNames);
        var r = new BufferModel(Case, model, CompressorCases.Mixture).Run(21e5, 2e5, CompressorCases.Stop);
        Assert.Equal(0.5, r.ValveOpening, 1e-9);
        Assert.True(Math.Abs(r.MassBalanceError) < 1e-7, $"{r.MassBalanceError}");
        Assert.InRange(r.PressurePa, 2e5, 21e5);
        double real = 5e-3 * new Flash(model).TemperaturePressure(300, r.PressurePa, CompressorCases.Mixture).MolarDensity;
        Assert.Equal(real, r.Content, 1e-4 * real);
        Assert.True(r.Content > 1.05 * 5e-3 * r.PressurePa / (8.314462618 * 300));
        Assert.True(r.ContentAtSuction < r.Content && r.Content < r.ContentAtHighSide);
        Assert.True(double.IsFinite(r.TimeConstantS) && r.TimeConstantS > 0);
        Assert.Equal(r.PressurePa - 0.01 * (r.PressurePa - 2e5), r.Filling[^1].PressurePa, 1);
    }

    /// <summary>Below the set pressure the valve is shut: the buffer stands at suction and nothing passes; far above it is full open, and said.</summary>
    [Fact]
    public void ShutAndFullyOpen()
    {
        var model = new BufferModel(Case, ReferenceModel.Create(["nitrogen"]), [1]);
        var shut = model.Run(19e5, 2e5, CompressorCases.Stop);
        Assert.Equal(2e5, shut.PressurePa);
        Assert.Equal(0, shut.BypassFlow);
        Assert.Equal(shut.ContentAtSuction, shut.Content, 1e-12);
        Assert.Contains(model.Run(25e5, 2e5, CompressorCases.Stop).Warnings, w => w.Contains("fully open"));
    }

    /// <summary>A larger bleed lowers the buffer's pressure; a capillary passes less than an orifice of its bore.</summary>
    [Fact]
    public void Bleeds()
    {
        var model = ReferenceModel.Create(["nitrogen"]);
        double P(BleedInput bleed) => new BufferModel(Case with { Bleed = bleed }, model, [1]).Run(20.2e5, 2e5, CompressorCases.Stop).PressurePa;
        double small = P(new BleedInput { BoreM = 0.3e-3 }), large = P(new BleedInput { BoreM = 0.8e-3 }), capillary = P(new BleedInput { BoreM = 0.8e-3, LengthM = 1 });
        Assert.True(small > large && capillary > large);
    }

    /// <summary>Heavy components that condense in the buffer are said.</summary>
    [Fact]
    public void Condenses()
    {
        var r = new BufferModel(Case with { TemperatureK = 290 }, ReferenceModel.Create(["nitrogen", "propane", "isopentane"]), [0.3, 0.4, 0.3]).Run(21e5, 1e5, CompressorCases.Stop);
        Assert.Contains(r.Warnings, w => w.Contains("condense"));
    }

    /// <summary>Bad input is refused by name, value, limit and unit.</summary>
    [Fact]
    public void BadInput()
    {
        var model = ReferenceModel.Create(["nitrogen"]);
        void Refused(BufferInput input, string name) => Assert.Contains(name, Assert.Throws<ArgumentException>(() => new BufferModel(input, model, [1])).Message);
        Refused(Case with { VolumeM3 = 5 }, "VolumeM3");
        Refused(Case with { TemperatureK = 25 }, "TemperatureK");
        Refused(Case with { ValveAreaM2 = 0 }, "ValveAreaM2");
        Refused(Case with { Bleed = new BleedInput { BoreM = 1 } }, "BoreM");
        Assert.Contains("below", Assert.Throws<ArgumentException>(() => new BufferModel(Case, model, [1]).Run(1e5, 2e5, CompressorCases.Stop)).Message);
    }
}
