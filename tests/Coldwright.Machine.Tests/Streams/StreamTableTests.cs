using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Tests.Streams;

/// <summary>Tables against direct flashes of the same model: the errors that the type states.</summary>
public class StreamTableTests
{
    private static readonly string[] Five = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] FiveZ = [0.30, 0.25, 0.18, 0.15, 0.12];

    public static TheoryData<string[], double[], double, double> Mixtures => new()
    {
        { Five, FiveZ, 18e5, 90 },
        { Five, FiveZ, 4.5e5, 90 },
        { ["nitrogen", "methane", "ethane", "propane"], [0.40, 0.25, 0.15, 0.20], 18e5, 90 },
        { ["argon", "R14", "R23"], [0.4, 0.3, 0.3], 4.5e5, 130 },
        { ["nitrogen", "oxygen"], [0.79, 0.21], 5e5, 75 },
    };

    /// <summary>
    /// A pure fluid has no node between liquid and vapour, yet boils there: heat of vaporisation of nitrogen at 1 atm 199.18 kJ/kg
    /// (the published value of LiquefactionTests), and two phases all the way across.
    /// </summary>
    [Fact]
    public void APureFluidBoilsAcrossItsGap()
    {
        var model = ReferenceModel.Create(["nitrogen"]);
        var table = StreamTable.Create(new Flash(model), new TransportModel(model), [1], [101325], 70, 120, cancel: TestContext.Current.CancellationToken);
        double liquid = table.Enthalpy(77.3, 101325), vapour = table.Enthalpy(77.42, 101325);
        foreach (double share in new[] { 0.05, 0.45, 0.55, 0.95 })
        {
            var point = table.At(liquid + share * (vapour - liquid), 101325);
            Assert.True(Math.Abs(point.PhaseEnthalpyDifference / 199.18e3 - 1) < 0.002, $"{point.PhaseEnthalpyDifference} J/kg at {share}");
            Assert.InRange(point.Quality, 0.01, 0.99);
            Assert.True(point.SurfaceTension > 0);
        }
    }

    [Theory, MemberData(nameof(Mixtures))]
    public void ErrsByLessThanItSays(string[] names, double[] z, double p, double coldestK)
    {
        var model = ReferenceModel.Create(names);
        var (flash, transport) = (new Flash(model), new TransportModel(model));
        var table = StreamTable.Create(flash, transport, z, [p], coldestK, 305, cancel: TestContext.Current.CancellationToken);
        // the cost: a table is to be made within about 30 ms, a certified flash takes 0.3 ms
        Assert.InRange(table.Flashes, 10, 110);
        double temperature = 0, quality = 0, relative = 0;
        void Compare(double tabled, double direct) => relative = Math.Max(relative, Math.Abs(tabled / direct - 1));
        for (double t = table.ColdestK + 0.3; t < 305; t += 1.37)
        {
            var state = transport.Add(flash.TemperaturePressure(t, p, z));
            var point = table.At(state.MolarEnthalpy, p);
            temperature = Math.Max(temperature, Math.Abs(point.TemperatureK - t));
            quality = Math.Max(quality, Math.Abs(point.Quality - state.Phases.Where(f => f.Kind == PhaseKind.Vapour).Sum(f => f.Fraction * f.MolarMass) / state.MolarMass));
            Compare(point.Density, state.MolarDensity * state.MolarMass);
            foreach (var phase in state.Phases)
            {
                if (phase.Kind != PhaseKind.Vapour && state.Phases.Count(f => f.Kind != PhaseKind.Vapour) > 1) continue;
                var tabled = phase.Kind == PhaseKind.Vapour ? point.Vapour : point.Liquid;
                Compare(tabled.Density, phase.MolarDensity * phase.MolarMass);
                Compare(tabled.Viscosity, phase.ViscosityPaS!.Value);
                Compare(tabled.Conductivity, phase.ConductivityWPerMK!.Value);
                Compare(tabled.HeatCapacity, phase.MolarHeatCapacity / phase.MolarMass);
            }
        }
        Assert.True(temperature < 0.03, $"temperature errs by {temperature} K");
        Assert.True(quality < 0.003, $"quality errs by {quality}");
        Assert.True(relative < 0.02, $"a property errs by {relative}");
    }

    [Theory]
    [InlineData(4.1e5)]
    [InlineData(4.3e5)]
    [InlineData(4.5e5)]
    public void BetweenIsobarsDewAndBubblePointsMove(double p)
    {
        var model = ReferenceModel.Create(Five);
        var flash = new Flash(model);
        var table = StreamTable.Create(flash, new TransportModel(model), FiveZ, [4.0e5, 4.6e5], 90, 305, cancel: TestContext.Current.CancellationToken);
        double temperature = 0, fraction = 0, density = 0;
        for (double t = table.ColdestK + 1; t < 304; t += 1.37)
        {
            Assert.True(flash.TrySolve(t, p, FiveZ, true));
            var point = table.At(flash.Enthalpy(), p);
            temperature = Math.Max(temperature, Math.Abs(point.TemperatureK - t));
            fraction = Math.Max(fraction, Math.Abs(point.VapourFraction - flash.VapourFraction()));
            density = Math.Max(density, Math.Abs(point.Density / (flash.Density() * table.MolarMass) - 1));
        }
        Assert.True(temperature < 0.05, $"temperature errs by {temperature} K");
        Assert.True(fraction < 0.005, $"vapour fraction errs by {fraction}");
        Assert.True(density < 0.02, $"density errs by {density}");
    }

    [Fact]
    public void SlopeIsThatOfTheTemperature()
    {
        var model = ReferenceModel.Create(Five);
        var table = StreamTable.Create(new Flash(model), new TransportModel(model), FiveZ, [4.0e5, 4.6e5], 90, 305, cancel: TestContext.Current.CancellationToken);
        var (low, high) = table.Range(4.2e5);
        for (int i = 1; i < 60; i++)
        {
            double h = low + (high - low) * (i + 0.3) / 61, step = 0.01;
            double by = (table.Temperature(h + step, 4.2e5, out _) - table.Temperature(h - step, 4.2e5, out _)) / (2 * step);
            table.Temperature(h, 4.2e5, out double slope);
            Assert.True(slope >= 0);
            Assert.Equal(by, slope, 1e-3 * Math.Max(by, 1e-4));
        }
    }

    [Fact]
    public void EnthalpyAndTemperatureAreInverse()
    {
        var model = ReferenceModel.Create(Five);
        var table = StreamTable.Create(new Flash(model), new TransportModel(model), FiveZ, [4.0e5, 4.6e5], 90, 305, cancel: TestContext.Current.CancellationToken);
        for (double t = 92; t < 304; t += 3.7) Assert.Equal(t, table.Temperature(table.Enthalpy(t, 4.3e5), 4.3e5, out _), 1e-7);
        Assert.Throws<ArgumentException>(() => table.Enthalpy(400, 4.3e5));
    }

    [Fact]
    public void PureFluidBoilsAtOneTemperature()
    {
        var model = ReferenceModel.Create(["nitrogen"]);
        var flash = new Flash(model);
        var table = StreamTable.Create(flash, new TransportModel(model), [1.0], [5e5], 70, 300, cancel: TestContext.Current.CancellationToken);
        var saturation = flash.PressureVapourFraction(5e5, 0.5, [1.0]);
        var middle = table.At(saturation.MolarEnthalpy, 5e5);
        Assert.Equal(saturation.TemperatureK, middle.TemperatureK, 0.02);
        Assert.Equal(0.5, middle.Quality, 2e-3);
        Assert.Equal("vapour+liquid", middle.Phases);
        Assert.True(middle.SurfaceTension >= 0 && middle.PhaseEnthalpyDifference >= 0);
    }

    [Fact]
    public void RefusesWhatItCannotMake()
    {
        var model = ReferenceModel.Create(["nitrogen"]);
        var (flash, transport) = (new Flash(model), new TransportModel(model));
        Assert.Contains("rise", Assert.Throws<ArgumentException>(() => StreamTable.Create(flash, transport, [1.0], [5e5, 4e5], 80, 300, cancel: TestContext.Current.CancellationToken)).Message);
        Assert.Contains("one to three", Assert.Throws<ArgumentException>(() => StreamTable.Create(flash, transport, [1.0], [], 80, 300, cancel: TestContext.Current.CancellationToken)).Message);
        Assert.Contains("-3", Assert.Throws<ArgumentException>(() => StreamTable.Create(flash, transport, [1.0], [-3.0], 80, 300, cancel: TestContext.Current.CancellationToken)).Message);
        Assert.Contains("300", Assert.Throws<ArgumentException>(() => StreamTable.Create(flash, transport, [1.0], [1e5], 300, 80, cancel: TestContext.Current.CancellationToken)).Message);
    }
}
