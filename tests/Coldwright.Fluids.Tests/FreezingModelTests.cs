using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Freezing;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>Freezing against identities that hold for every model.</summary>
public sealed class FreezingModelTests
{
    private static readonly string[] Names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] Z = [0.30, 0.30, 0.20, 0.12, 0.08];

    private static HelmholtzModel Create(string model, params string[] names) => model == "reference" ? ReferenceModel.Create(names) : CubicModel.Create(names);

    public static TheoryData<string, string> Pures()
    {
        var data = new TheoryData<string, string>();
        foreach (var name in SolidCatalog.Names.Where(n => SolidCatalog.Find(n)!.Sublimation is null))
        {
            data.Add("reference", name);
            data.Add("cubic", name);
        }
        return data;
    }

    /// <summary>With a heat of fusion the pure limit is exact in every model: margin 1 and freezing at the triple temperature.</summary>
    [Theory]
    [MemberData(nameof(Pures))]
    public void A_pure_liquid_freezes_at_its_triple_temperature(string model, string name)
    {
        var m = Create(model, name);
        var freezing = new FreezingModel(m);
        double triple = SolidCatalog.Find(name)!.TripleTemperatureK;
        Assert.Equal(triple, freezing.FreezingTemperature(2e5, [1.0], triple - 3)!.TemperatureK, 9);
        var margin = Assert.Single(freezing.At(new Flash(m).TemperaturePressure(triple, 2e5, [1.0]), searchTemperatures: false));
        Assert.Equal(1, margin.Margin!.Value, 9);
        Assert.Equal(1, margin.IdealSolubility!.Value, 9);
    }

    /// <summary>
    /// With a sublimation equation the pure limit rests on two independent publications: the equation of state and the
    /// sublimation pressure. They meet to a few parts in 1e5.
    /// </summary>
    [Theory]
    [InlineData("carbon-dioxide", 5.2e5)]
    [InlineData("water", 611.7)]
    public void Solid_and_liquid_of_different_papers_meet_at_the_triple_point(string name, double pressurePa)
    {
        var m = Create("reference", name);
        var freezing = new FreezingModel(m);
        double triple = SolidCatalog.Find(name)!.TripleTemperatureK;
        var margin = Assert.Single(freezing.At(new Flash(m).TemperaturePressure(triple, pressurePa, [1.0]), searchTemperatures: false));
        Assert.Equal(1, margin.Margin!.Value, 4);
        Assert.Empty(freezing.Warnings);
        // the cubic's liquid water has the wrong vapour pressure at its triple point, and the person is told
        if (name == "water") Assert.Contains(new FreezingModel(Create("cubic", name)).Warnings, w => w.Contains("water", StringComparison.Ordinal));
    }

    /// <summary>At the freezing temperature the margin is 1, above it more, below it less, and the solubility is the composition.</summary>
    [Theory]
    [InlineData("reference", 2e5)]
    [InlineData("reference", 17e5)]
    [InlineData("cubic", 17e5)]
    public void The_margin_passes_through_one_at_the_freezing_temperature(string model, double pressurePa)
    {
        var m = Create(model, Names);
        var freezing = new FreezingModel(m);
        var first = freezing.FreezingTemperature(pressurePa, Z)!;
        Assert.Equal("isobutane", first.Component);
        Assert.Equal(first, freezing.FreezingTemperatures(pressurePa, Z)[0]);
        FreezingMargin At(double t) => freezing.At(new Flash(m).TemperaturePressure(t, pressurePa, Z), searchTemperatures: false)[4];
        var exact = At(first.TemperatureK);
        Assert.Equal(1, exact.Margin!.Value, 6);
        Assert.All(exact.Solubilities, s => Assert.Equal(1, s.Margin!.Value, 5));
        Assert.True(At(first.TemperatureK + 0.01).Margin > 1);
        Assert.True(At(first.TemperatureK - 0.01).Freezes);
    }

    [Fact]
    public void The_margin_falls_steadily_on_cooling_a_liquid()
    {
        var m = Create("reference", "propane", "isobutane");
        var freezing = new FreezingModel(m);
        double before = double.PositiveInfinity;
        for (double t = 113; t > 80; t -= 0.5)
        {
            double now = freezing.At(new Flash(m).TemperaturePressure(t, 5e5, [0.8, 0.2]), searchTemperatures: false)[1].Margin!.Value;
            Assert.True(now < before, $"{now} after {before} at {t} K");
            before = now;
        }
    }

    /// <summary>
    /// More of a component freezes earlier, and less of it lets the solvent freeze first; component order and an absent
    /// component change nothing.
    /// </summary>
    [Fact]
    public void Freezing_temperatures_order_as_they_must()
    {
        static double Of(string component, string[] names, params double[] z) =>
            new FreezingModel(Create("reference", names)).FreezingTemperatures(5e5, z).Single(p => p.Component == component).TemperatureK;
        string[] both = ["propane", "isobutane"];
        double[] shares = [0.05, 0.1, 0.2, 0.4, 0.8, 0.999];
        double[] isobutane = [.. shares.Select(x => Of("isobutane", both, 1 - x, x))], propane = [.. shares[..4].Select(x => Of("propane", both, 1 - x, x))];
        Assert.Equal(isobutane.Order(), isobutane);
        Assert.Equal(propane.OrderDescending(), propane);
        Assert.True(propane[0] > isobutane[0] && propane[3] < isobutane[3]);
        Assert.Equal(isobutane[2], Of("isobutane", ["isobutane", "propane"], 0.2, 0.8), 6);
        Assert.Equal(isobutane[2], Of("isobutane", ["argon", "propane", "isobutane"], 0, 0.8, 0.2), 6);
    }

    [Fact]
    public void A_path_names_the_first_component_its_place_and_the_least_margin()
    {
        var freezing = new FreezingModel(Create("reference", Names));
        var liquidus = freezing.FreezingTemperature(17e5, Z)!;
        var path = Enumerable.Range(0, 25).Select(k => (T: 300.0 - 9 * k, P: 17e5)).ToArray();
        var result = freezing.AlongPath(path, Z);
        Assert.Equal("isobutane", result.First!.Component);
        Assert.InRange(result.First.TemperatureK, liquidus.TemperatureK - 1, liquidus.TemperatureK + 1);
        Assert.Equal((300 - result.First.TemperatureK) / 9, result.First.Place, 6);
        Assert.Equal(24, result.Least!.Place);
        Assert.True(result.Least.Margin < 1);
        var safe = freezing.AlongPath(path.Where(point => point.T > liquidus.TemperatureK + 1), Z);
        Assert.Null(safe.First);
        Assert.True(safe.Least!.Margin > 1);
        Assert.Null(freezing.AlongPath([(300, 17e5), (200, 17e5)], Z).Least);
    }

    [Fact]
    public void A_component_without_data_is_reported_and_not_passed_over()
    {
        var m = Create("reference", "R134a", "propane");
        var freezing = new FreezingModel(m);
        var cold = freezing.At(new Flash(m).TemperaturePressure(150, 5e5, [0.1, 0.9]))[0];
        Assert.Equal(FreezingStatus.NoData, cold.Status);
        Assert.Null(cold.Margin);
        var warm = freezing.At(new Flash(m).TemperaturePressure(250, 5e5, [0.1, 0.9]))[0];
        Assert.Equal(FreezingStatus.AboveTriplePoint, warm.Status);
        Assert.Contains(freezing.Warnings, w => w.Contains("R134a", StringComparison.Ordinal));
        Assert.Contains(freezing.AlongPath([(250, 5e5), (150, 5e5)], [0.1, 0.9]).Warnings, w => w.Contains("R134a", StringComparison.Ordinal));
        Assert.DoesNotContain(freezing.AlongPath([(250, 5e5), (200, 5e5)], [0.1, 0.9]).Warnings, w => w.Contains("R134a is not", StringComparison.Ordinal));
    }

    [Fact]
    public void An_absent_component_has_no_margin()
    {
        var m = Create("reference", "isobutane", "propane");
        var margins = new FreezingModel(m).At(new Flash(m).TemperaturePressure(100, 5e5, [0, 1]), searchTemperatures: false);
        Assert.Equal(FreezingStatus.Absent, margins[0].Status);
        Assert.Equal(FreezingStatus.AboveTriplePoint, margins[1].Status);
    }

    /// <summary>Margins are the same in every phase: fugacities of phases in equilibrium are equal.</summary>
    [Fact]
    public void Two_liquids_agree_on_the_margin()
    {
        var m = Create("reference", Names);
        var state = new Flash(m).TemperaturePressure(95, 17e5, Z);
        Assert.Equal("liquid+second_liquid", state.PhaseNames);
        var isobutane = new FreezingModel(m).At(state, searchTemperatures: false)[4];
        Assert.Equal(2, isobutane.Solubilities.Count);
        Assert.All(isobutane.Solubilities, s => Assert.True(s.Margin > 1 && s.Kind is PhaseKind.Liquid or PhaseKind.SecondLiquid));
        var dilute = isobutane.Solubilities.MinBy(s => s.Actual)!;
        Assert.InRange(dilute.Margin!.Value / isobutane.Margin!.Value, 0.8, 1.2);
    }
}
