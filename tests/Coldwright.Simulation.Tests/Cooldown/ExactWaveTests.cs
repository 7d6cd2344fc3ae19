using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Numerics.Integration;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>Streams of constant properties on metal that stores heat, against exact solutions.</summary>
public sealed class ExactWaveTests
{
    private const double HotK = 300, ColdK = 200, Flow = 0.05, MolarMass = 0.028, HeatCapacity = 1040, PressurePa = 1e6;

    // a gas of constant properties, thin enough that friction does nothing
    private static StreamTable Gas() => StreamTable.Constant(new PhaseTransport(400, 1.5e-5, 0.02, HeatCapacity), MolarMass, PressurePa, 100, 400);

    private static double Rate => Flow * MolarMass * HeatCapacity;

    /// <summary>
    /// A gas enters a tube that is all at one temperature and changes it in a wave: with y = G/(n c) up to the place and z = G t over the wall's heat capacity, the wall is at
    /// exp(-y) times the integral from 0 to z of exp(-s) I0(2 (s y)^(1/2)) ds of the way: T. E. W. Schumann, J. Franklin Institute 208 (1929) 405.
    /// </summary>
    [Fact]
    public void The_cold_goes_through_the_metal_as_Schumann_says()
    {
        const int n = 80;
        var march = new WallMarch(new TubeInTubeGeometry(6.35e-3, 0.76e-3, 1, 15.9e-3, 1e-3, 8), true, n, _ => 350);
        double[] wall = [.. Enumerable.Repeat(HotK, n)];
        march.Run(StreamInlet.AtTemperature(Gas(), Flow, ColdK, PressurePa), wall, 0, HotK, new MarchScales(1, 1, 1), false);
        double g = march.Conductance.Sum(), metal = 500.0 / n, units = g / Rate, time = 1.2 * units * 500 / g;
        bool Slope(double t, ReadOnlySpan<double> y, ReadOnlySpan<double> p, Span<double> dy)
        {
            march.Run(StreamInlet.AtTemperature(Gas(), Flow, ColdK, PressurePa), y, 0, HotK, new MarchScales(1, 1, 1), false);
            for (int i = 0; i < n; i++) dy[i] = -march.HeatW[i] / metal;
            return true;
        }

        var r = StiffIntegrator.Integrate(new InitialValueProblem(n, Slope), 0, wall, time, new IntegrationOptions { RelativeTolerance = 1e-7, AbsoluteTolerances = new double[] { 1e-4 }, RelativeNoise = 1e-10 }, cancel: TestContext.Current.CancellationToken).OrThrow();
        double z = g * time / 500;
        for (int i = 10; i < n; i += 10)
        {
            double y = units * (i + 0.5) / n;
            // the share of the way to the gas's temperature
            Assert.Equal(Wall(y, z), (HotK - r.State[i]) / (HotK - ColdK), 4e-3);
        }
    }

    private static double Wall(double y, double z)
    {
        const int panels = 4000;
        double sum = 0;
        for (int i = 0; i <= panels; i++) sum += (i is 0 or panels ? 1 : i % 2 == 1 ? 4 : 2) * ScaledBessel(z * i / panels, y);
        return sum * z / panels / 3;
    }

    // exp(-s - z) I0(2 (s z)^(1/2)), the series term by term in logarithms
    private static double ScaledBessel(double s, double z)
    {
        double sum = 0, lnFactorial = 0, ln = s > 0 && z > 0 ? Math.Log(s * z) : double.NegativeInfinity;
        for (int k = 0; k < 400; k++)
        {
            if (k > 0) lnFactorial += Math.Log(k);
            double term = k == 0 ? Math.Exp(-s - z) : Math.Exp(k * ln - 2 * lnFactorial - s - z);
            sum += term;
            if (k > 2 * Math.Sqrt(s * z) + 20 && term < 1e-18) break;
        }
        return sum;
    }

    /// <summary>A lump in a stream cools as exp(-t/tau), tau = C/(n c (1 - exp(-UA/(n c)))): elementary.</summary>
    [Fact]
    public void A_lump_cooled_by_a_coil_and_warmed_again_follows_the_exponential()
    {
        var coil = new IsothermalCoil { BoreM = 4.8e-3, OutsideDiameterM = 6.35e-3, LengthM = 3, OutsideConductancePerLength = 20, Cells = 10 };
        const double capacity = 800;
        double conductance = coil.Solve(StreamInlet.AtTemperature(Gas(), Flow, ColdK, PressurePa), HotK).ConductanceWPerK, tau = capacity / (Rate * -double.ExpM1(-conductance / Rate));
        double After(double startK, double gasK, double timeS)
        {
            bool Slope(double t, ReadOnlySpan<double> y, ReadOnlySpan<double> p, Span<double> dy)
            {
                dy[0] = -coil.Solve(StreamInlet.AtTemperature(Gas(), Flow, gasK, PressurePa), y[0]).HeatW / capacity;
                return true;
            }

            return StiffIntegrator.Integrate(new InitialValueProblem(1, Slope), 0, [startK], timeS, new IntegrationOptions { RelativeTolerance = 1e-8 }, cancel: TestContext.Current.CancellationToken).OrThrow().State[0];
        }

        // the tube wall's conductivity changes a little with the load's temperature: nothing beside the films
        Assert.Equal(ColdK + (HotK - ColdK) * Math.Exp(-1.5), After(HotK, ColdK, 1.5 * tau), 0.02);
        Assert.Equal(HotK + (ColdK - HotK) * Math.Exp(-0.7), After(ColdK, HotK, 0.7 * tau), 0.02);
    }
}
