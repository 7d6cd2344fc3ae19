using Coldwright.Machine.Insulation;
using Coldwright.Materials.Solids;
using Coldwright.Numerics.Integration;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>Conduction into a slab whose inner face is suddenly cold, against the series solution.</summary>
public sealed class SlabTests
{
    private const double ThicknessM = 0.1, Conductivity = 0.03, Density = 40, SpecificHeat = 1200, RoomK = 300, ColdK = 200, FaceM2 = 2;

    private static MaterialProperty Property(string what, double value) => new(what, "constant, for the test", Provenance.Published, 0.05, "", [new PointsCurve([50, 400], [value, value])]);

    private static InsulationCells Slab(int cells)
    {
        var layer = new ConductingLayer("slab", ThicknessM, Property("conductivity of the slab", Conductivity), Moisture.None, Density, Property("specific heat of the slab", SpecificHeat), null);
        return new InsulationCells(new InsulatedEnclosure(new FlatWall(FaceM2), [layer], [], RoomK, 0.5, new FixedFilm(1e-4)), cells);
    }

    // heat into the inside at a time, W
    private static double Flow(InsulationCells slab, double timeS)
    {
        int n = slab.Count;
        double[] flow = new double[n + 1], t = new double[n], start = new double[n];
        for (int i = 0; i < n; i++) start[i] = slab.Heat[i].Heat(RoomK);
        bool Slope(double time, ReadOnlySpan<double> y, ReadOnlySpan<double> p, Span<double> dy)
        {
            for (int i = 0; i < n; i++) t[i] = slab.Heat[i].Temperature(y[i]);
            slab.Flows(ColdK, t, 1, flow);
            for (int i = 0; i < n; i++) dy[i] = (flow[i + 1] - flow[i]) / slab.ReferenceCapacity(i);
            return true;
        }

        var r = StiffIntegrator.Integrate(new InitialValueProblem(n, Slope) { Pattern = JacobianPattern.Banded(n, 1, 1) }, 0, start, timeS, new IntegrationOptions { RelativeTolerance = 1e-7, AbsoluteTolerances = new double[] { 1e-5 } }, cancel: TestContext.Current.CancellationToken).OrThrow();
        for (int i = 0; i < n; i++) t[i] = slab.Heat[i].Temperature(r.State[i]);
        slab.Flows(ColdK, t, 1, flow);
        return flow[0];
    }

    /// <summary>q(0, t) = k dT/L (1 + 2 sum exp(-n^2 pi^2 Fo)): H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd ed. (1959), section 3.4.</summary>
    private static double Exact(double fourier)
    {
        double sum = 1;
        for (int n = 1; n < 200; n++) sum += 2 * Math.Exp(-n * n * Math.PI * Math.PI * fourier);
        return FaceM2 * Conductivity * (RoomK - ColdK) / ThicknessM * sum;
    }

    [Theory]
    [InlineData(0.03, 0.03)]
    [InlineData(0.1, 0.01)]
    [InlineData(0.3, 0.005)]
    [InlineData(2, 0.002)]
    public void The_usual_grid_follows_the_series(double fourier, double tolerance)
    {
        double time = fourier * ThicknessM * ThicknessM * Density * SpecificHeat / Conductivity;
        Assert.Equal(1, Flow(Slab(14), time) / Exact(fourier), tolerance);
    }

    [Fact]
    public void Finer_grids_come_closer()
    {
        double time = 0.1 * ThicknessM * ThicknessM * Density * SpecificHeat / Conductivity;
        double[] error = [.. new[] { 7, 14, 28 }.Select(n => Math.Abs(Flow(Slab(n), time) / Exact(0.1) - 1))];
        Assert.True(error[1] < 0.6 * error[0] && error[2] < 0.6 * error[1], string.Join(' ', error));
    }

    [Fact]
    public void At_rest_the_cells_let_through_what_the_enclosure_finds()
    {
        var workshop = Coolers.Folder("workshop");
        var box = Simulation.Parts.BoxEnclosure.Of(workshop.Machine!, workshop.Layout!.ColdBox!, 240, []);
        var cells = new InsulationCells(box, 14);
        double[] t = cells.Settled(110), flow = new double[cells.Count + 1];
        cells.Flows(110, t, 1, flow);
        double wall = EnclosureSolver.Solve(box, 110).WallW;
        Assert.All(flow, f => Assert.Equal(1, f / wall, 2e-3));
    }
}
