using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using CsCheck;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>Properties every flash must have, on random mixtures of the gases of these coolers (90 to 330 K, 1 to 60 bar).</summary>
public sealed class FlashProperties
{
    private static readonly string[] Gases = ["nitrogen", "argon", "methane", "ethane", "ethylene", "propane", "propylene", "isobutane", "R14", "krypton"];

    /// <summary>A mixture and state.</summary>
    public sealed record Case(bool Reference, string[] Names, double[] Z, double T, double P)
    {
        internal HelmholtzModel Model(string[] names) => Reference ? ReferenceModel.Create(names) : CubicModel.Create(names);

        internal FluidState Solve() => new Flash(Model(Names)).TemperaturePressure(T, P, Z);

        public override string ToString() => FormattableString.Invariant($"{(Reference ? "reference" : "cubic")} {T:R} K {P:R} Pa {string.Join(";", Names.Zip(Z, (n, x) => FormattableString.Invariant($"{n}={x:R}")))}");
    }

    private static readonly Gen<Case> Cases =
        from reference in Gen.Bool
        from order in Gen.Shuffle(Gases)
        from amounts in Gen.Double[0.02, 1.0].Array[2, 5]
        from t in Gen.Double[90, 330]
        from lnP in Gen.Double[0, Math.Log(60)]
        select new Case(reference, order.Take(amounts.Length).ToArray(), amounts.Select(a => a / amounts.Sum()).ToArray(), t, 1e5 * Math.Exp(lnP));

    private static void Same(FluidState a, FluidState b, double tolerance, string what)
    {
        Assert.True(a.PhaseNames == b.PhaseNames, $"{what}: {a.PhaseNames} and {b.PhaseNames}");
        Assert.True(Math.Abs(a.MolarEnthalpy - b.MolarEnthalpy) < tolerance, $"{what}: {a.MolarEnthalpy} and {b.MolarEnthalpy} J/mol");
        Assert.True(Math.Abs(a.VapourFraction - b.VapourFraction) < tolerance * 1e-3, $"{what}: vapour fraction {a.VapourFraction} and {b.VapourFraction}");
    }

    [Fact]
    public void The_order_of_the_components_does_not_matter() => Cases.Sample(c =>
    {
        string[] names = c.Names.Reverse().ToArray();
        double[] z = c.Z.Reverse().ToArray();
        Same(c.Solve(), new Flash(c.Model(names)).TemperaturePressure(c.T, c.P, z), 1e-3, c.ToString());
    }, iter: 150);

    [Fact]
    public void Adding_a_component_with_nothing_of_it_changes_nothing() => Cases.Sample(c =>
    {
        string[] names = [.. c.Names, Gases.First(g => !c.Names.Contains(g))];
        Same(c.Solve(), new Flash(c.Model(names)).TemperaturePressure(c.T, c.P, [.. c.Z, 0]), 1e-3, c.ToString());
    }, iter: 150);

    [Fact]
    public void Temperature_comes_back_from_pressure_and_enthalpy() => Cases.Sample(c =>
    {
        var flash = new Flash(c.Model(c.Names));
        var state = flash.TemperaturePressure(c.T, c.P, c.Z);
        var back = flash.PressureEnthalpy(c.P, state.MolarEnthalpy, c.Z);
        Assert.True(Math.Abs(back.TemperatureK - c.T) < 1e-6 * c.T, $"{c}: {back.TemperatureK} K");
        Same(state, back, 1e-3, c.ToString());
    }, iter: 60);

    /// <summary>Along small temperature steps the enthalpy moves by cp times the step at most where the phases stay the same.</summary>
    [Fact]
    public void A_small_step_in_makes_a_small_step_out() => Cases.Sample(c =>
    {
        var flash = new Flash(c.Model(c.Names));
        FluidState a = flash.TemperaturePressure(c.T, c.P, c.Z), b = flash.TemperaturePressure(c.T + 1e-4, c.P, c.Z);
        if (a.PhaseNames != b.PhaseNames) return;
        double rise = b.MolarEnthalpy - a.MolarEnthalpy;
        // the effective heat capacity within two phases, up to 1 MJ/(mol K) in a near-azeotrope
        Assert.True(rise > 0 && rise < 100, $"{c}: {rise} J/mol for 0.1 mK");
        var warm = flash.TrySolve(c.T, c.P, c.Z, warm: true);
        Assert.True(warm && Math.Abs(flash.Enthalpy() - a.MolarEnthalpy) < 1e-3, $"{c}: a warm start gives {flash.Enthalpy()} for {a.MolarEnthalpy} J/mol");
    }, iter: 150);

    /// <summary>The inner loops' enthalpy, entropy and density are those of the full state.</summary>
    [Fact]
    public void Overall_values_are_those_of_the_state() => Cases.Sample(c =>
    {
        var flash = new Flash(c.Model(c.Names));
        if (!flash.TrySolve(c.T, c.P, c.Z)) Assert.Fail($"{c}: no answer");
        var (h, s, rho) = (flash.Enthalpy(), flash.Entropy(), flash.Density());
        var state = flash.State();
        Assert.True(Math.Abs(h - state.MolarEnthalpy) < 1e-7, $"{c}: {h} and {state.MolarEnthalpy} J/mol");
        Assert.True(Math.Abs(s - state.MolarEntropy) < 1e-9, $"{c}: {s} and {state.MolarEntropy} J/(mol K)");
        Assert.True(Math.Abs(rho / state.MolarDensity - 1) < 1e-12, $"{c}: {rho} and {state.MolarDensity} mol/m3");
    }, iter: 300);

    /// <summary>A substance that is pure, or pure but for a trace, boils at its saturation line whatever other names stand in the list.</summary>
    [Theory]
    [InlineData("nitrogen", "methane", 95, 0.0)]
    [InlineData("nitrogen", "methane", 95, 1e-9)]
    [InlineData("methane", "propane", 130, 0.0)]
    [InlineData("R134a", "R32", 260, 1e-9)]
    [InlineData("argon", "hydrogen", 100, 0.0)]
    public void A_pure_substance_boils_at_its_saturation_line(string name, string other, double temperatureK, double trace)
    {
        var expected = PureSaturation.AtTemperature(ReferenceModel.Create([name]), temperatureK);
        var flash = new Flash(ReferenceModel.Create([name, other]));
        double[] z = [1 - trace, trace];
        foreach (double fraction in (double[])[0, 0.3, 1])
        {
            var atT = flash.TemperatureVapourFraction(temperatureK, fraction, z);
            var atP = flash.PressureVapourFraction(expected.PressurePa, fraction, z);
            // a mixture's gas constant differs from the pure fluid's paper by up to 6e-6 (docs/theory/caloric-zero.md)
            Assert.Equal(expected.PressurePa, atT.PressurePa, 1e-5 * expected.PressurePa);
            Assert.Equal(temperatureK, atP.TemperatureK, 2e-4);
            Assert.Equal(fraction, atT.VapourFraction, 1e-5);
            Assert.Equal(fraction, atP.VapourFraction, 1e-5);
        }
    }
}
