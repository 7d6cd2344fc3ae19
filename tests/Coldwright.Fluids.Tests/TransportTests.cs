using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;
using Coldwright.Fluids.Transport;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>Identities and sanity of viscosity, conductivity and surface tension. Comparison with the outside world: Coldwright.Verification.</summary>
public sealed class TransportTests
{
    public static TheoryData<string> Substances => [.. SubstanceCatalog.Names];

    [Theory]
    [MemberData(nameof(Substances))]
    public void A_mixture_of_one_component_is_that_component(string name)
    {
        string other = name == "nitrogen" ? "methane" : "nitrogen";
        var alone = new TransportModel(ReferenceModel.Create([name]));
        var mixed = new TransportModel(ReferenceModel.Create([other, name]));
        var s = alone.Model.Substances[0];
        double[] temperatures = [1.02 * s.TripleTemperatureK, 0.7 * s.CriticalTemperatureK, 0.95 * s.CriticalTemperatureK];
        foreach (double t in temperatures.Where(v => v > s.TripleTemperatureK))
        {
            var q = PureSaturation.AtTemperature(ReferenceModel.Create([name]), t);
            foreach (double rho in (double[])[0, q.VapourDensity, q.LiquidDensity])
            {
                var (a, b, near) = (alone.At(t, rho, [1]), mixed.At(t, rho, [0, 1]), mixed.At(t, rho, [1e-9, 1 - 1e-9]));
                Assert.True(a.Viscosity.Value > 0 && a.Conductivity.Value > 0, $"{t} K {rho} mol/m3");
                Assert.Equal(a.Viscosity.Value, b.Viscosity.Value, 1e-12 * a.Viscosity.Value);
                Assert.Equal(a.Conductivity.Value, b.Conductivity.Value, 1e-12 * a.Conductivity.Value);
                // a trace changes nothing
                Assert.Equal(a.Viscosity.Value, near.Viscosity.Value, 1e-5 * a.Viscosity.Value);
                Assert.Equal(a.Conductivity.Value, near.Conductivity.Value, 1e-5 * a.Conductivity.Value);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Substances))]
    public void Pure_values_are_finite_and_above_zero_over_the_whole_range(string name)
    {
        var model = ReferenceModel.Create([name]);
        var (transport, flash, s) = (new TransportModel(model), new Flash(model), model.Substances[0]);
        double low = Math.Max(s.TripleTemperatureK, Flash.LowestTemperatureK);
        for (int i = 0; i <= 40; i++)
        {
            double t = low * Math.Pow(s.MaximumTemperatureK / low, i / 40.0);
            foreach (double p in (double[])[1e3, 1e5, 3e6, 1e7])
            {
                Assert.True(flash.TrySolve(t, p, [1.0]));
                var found = transport.At(t, flash.Density(), [1]);
                Assert.True(found.Viscosity.Value is > 1e-7 and < 1, $"{name} {t} K {p} Pa: {found.Viscosity.Value} Pa s");
                Assert.True(found.Conductivity.Value is > 1e-4 and < 20, $"{name} {t} K {p} Pa: {found.Conductivity.Value} W/(m K)");
            }
        }
    }

    /// <summary>Random phases of random mixtures, down to far below triple points: every value exists, the order of components does not matter.</summary>
    [Fact]
    public void Mixtures_always_have_values_and_the_order_does_not_matter()
    {
        var random = new Random(4711);
        string[] all = [.. SubstanceCatalog.Names.Where(n => n != "water")];
        for (int trial = 0; trial < 150; trial++)
        {
            string[] names = [.. all.OrderBy(_ => random.Next()).Take(random.Next(2, 6))];
            double[] x = [.. names.Select(_ => Math.Pow(10, -3 * random.NextDouble()))];
            if (trial % 3 == 0) x[0] = 60;
            double sum = x.Sum();
            x = [.. x.Select(v => v / sum)];
            var model = ReferenceModel.Create(names);
            var (transport, flash) = (new TransportModel(model), new Flash(model));
            var turned = new TransportModel(ReferenceModel.Create([.. names.Reverse()]));
            double t = 75 + 300 * random.NextDouble();
            string where = $"{string.Join("+", names.Zip(x, (n, v) => $"{n} {v:g3}"))} {t} K";
            if (!flash.TrySolve(t, 1e5 * Math.Pow(10, 1.8 * random.NextDouble()), x)) continue;
            var state = transport.Complete(flash.State());
            Assert.All(state.State.Phases, p =>
            {
                Assert.True(p.ViscosityPaS is > 5e-7 and < 1e6 && p.ConductivityWPerMK is > 1e-4 and < 20, $"{where}: {p.Kind} {p.ViscosityPaS} Pa s, {p.ConductivityWPerMK} W/(m K)");
                var other = turned.At(t, p.MolarDensity, [.. p.Composition.Reverse()]);
                Assert.Equal(p.ViscosityPaS.Value, other.Viscosity.Value, 1e-9 * p.ViscosityPaS.Value);
                Assert.Equal(p.ConductivityWPerMK.Value, other.Conductivity.Value, 1e-9 * p.ConductivityWPerMK.Value);
            });
            Assert.True(state.SurfaceTensionNPerM is null or (>= 0 and < 0.2), $"{where}: {state.SurfaceTensionNPerM} N/m");
        }
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.97)]
    [InlineData(0.4)]
    public void Nothing_is_allocated(double main)
    {
        var transport = new TransportModel(ReferenceModel.Create(["methane", "nitrogen", "carbon-dioxide", "hydrogen"]));
        double[] x = [main, (1 - main) / 2, (1 - main) / 3, (1 - main) / 6];
        double sum = 0;
        void Walk()
        {
            for (double rho = 10; rho < 26000; rho += 500) sum += transport.Viscosity(150, rho, x).Value + transport.Conductivity(150, rho, x).Value;
        }
        Walk();
        Walk();
        long before = GC.GetAllocatedBytesForCurrentThread();
        Walk();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(double.IsFinite(sum));
    }

    [Fact]
    public void A_value_names_its_source_and_warns_outside_the_range()
    {
        var isobutane = new TransportModel(ReferenceModel.Create(["isobutane"]));
        var inside = isobutane.Conductivity(300, 10, [1]);
        Assert.Contains("Perkins", inside.Method.Source, StringComparison.Ordinal);
        Assert.Null(inside.Warning);
        Assert.Contains("114 to 600 K", isobutane.Conductivity(113.8, 10, [1]).Warning, StringComparison.Ordinal);
        var cold = ReferenceModel.Create(["propane", "isobutane"]);
        double density = new Flash(cold).TemperaturePressure(90, 5e5, [0.3, 0.7]).MolarDensity;
        Assert.Contains("triple points", new TransportModel(cold).Viscosity(90, density, [0.3, 0.7]).Warning, StringComparison.Ordinal);
    }

    [Fact]
    public void The_cubic_model_says_whose_entropy_it_uses()
    {
        var model = CubicModel.Create(["propane", "isobutane"]);
        var state = new TransportModel(model).Complete(new Flash(model).TemperaturePressure(150, 5e5, [0.5, 0.5]));
        Assert.Contains(state.Warnings, w => w.Contains("density of the cubic model", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(-1, 100, 1)]
    [InlineData(double.NaN, 100, 1)]
    [InlineData(300, -1, 1)]
    [InlineData(300, 100, 0)]
    [InlineData(300, 100, double.NaN)]
    public void Nonsense_is_refused(double t, double rho, double x) =>
        Assert.ThrowsAny<ArgumentException>(() => new TransportModel(ReferenceModel.Create(["nitrogen"])).Viscosity(t, rho, [x]));
}
