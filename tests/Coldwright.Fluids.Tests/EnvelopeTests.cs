using System.Globalization;
using Coldwright.Fluids.Envelopes;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>Envelopes against measurements, against tabulated saturation points and against themselves.</summary>
public sealed class EnvelopeTests
{
    private static EnvelopeResult Trace(string[] names, double[] z, bool cubic = false, int scans = 18) =>
        EnvelopeTracer.Trace(cubic ? (HelmholtzModel)CubicModel.Create(names) : ReferenceModel.Create(names), z, new EnvelopeWindow { Scans = scans, Freezing = false });

    /// <summary>
    /// Measured critical points collected by C. P. Hicks and C. L. Young, Chem. Rev. 75 (1975) 119, as digitised in a public
    /// data set. Methane + ethane scatters by 2 K among its authors; the tolerance is that.
    /// </summary>
    [Theory]
    [InlineData("ethane", 0.05, 302.0, 51.1)]
    [InlineData("ethane", 0.5002, 263.1, 67.6)]
    [InlineData("ethane", 0.70, 238.0, 67.3)]
    [InlineData("ethane", 0.925, 204.3, 54.0)]
    [InlineData("nitrogen", 0.4912, 159.6, 49.23)]
    [InlineData("nitrogen", 0.7121, 174.2, 50.68)]
    public void Critical_points_of_methane_mixtures_are_where_they_were_measured(string other, double methane, double temperatureK, double bar)
    {
        var critical = Assert.Single(Trace(["methane", other], [methane, 1 - methane], scans: 8).CriticalPoints);
        Assert.Equal(temperatureK, critical.TemperatureK, 2.0);
        Assert.Equal(bar, critical.PressurePa / 1e5, 2.0);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Bubble_and_dew_line_meet_in_the_critical_point(bool cubic)
    {
        var envelope = Trace(["methane", "ethane"], [0.5, 0.5], cubic);
        var critical = Assert.Single(envelope.CriticalPoints);
        var ends = envelope.Lines.SelectMany(l => new[] { l.Points[0], l.Points[^1] }).Where(p => Math.Abs(p.TemperatureK - critical.TemperatureK) < 1e-6).ToArray();
        Assert.Equal(2, envelope.Lines.Count);
        Assert.Equal(2, ends.Length);
        Assert.All(ends, p => Assert.Equal(critical.PressurePa, p.PressurePa, 1.0));
        Assert.True(envelope.HighestPressure!.Value.PressurePa >= critical.PressurePa);
        Assert.True(envelope.HighestTemperature!.Value.TemperatureK > critical.TemperatureK);
    }

    /// <summary>tests/data/binary_vle_reference.csv (source in its first line): another program's saturation points of the same model.</summary>
    [Theory]
    [InlineData("nitrogen", "methane", 0.3)]
    [InlineData("nitrogen", "oxygen", 0.8)]
    [InlineData("methane", "ethane", 0.4)]
    [InlineData("methane", "propane", 0.4)]
    [InlineData("nitrogen", "propane", 0.2)]
    [InlineData("ethylene", "propane", 0.5)]
    public void Tabulated_saturation_points_lie_on_the_lines(string first, string second, double z1)
    {
        var envelope = Trace([first, second], [z1, 1 - z1], scans: 10);
        int compared = 0;
        foreach (var (bubble, z, temperatureK, pressurePa) in Table(first, second))
        {
            if (Math.Abs(z - z1) > 1e-9 || !(pressurePa > envelope.Window.LowestPa && temperatureK > envelope.Window.ColdestK)) continue;
            var on = envelope.TemperaturesAt(pressurePa, l => bubble ? l.Kind is BoundaryKind.Bubble or BoundaryKind.LiquidLiquid : l.Kind == BoundaryKind.Dew);
            Assert.Contains(on, t => Math.Abs(t / temperatureK - 1) < 3e-4);
            compared++;
        }
        Assert.True(compared > 0, "no tabulated point of this mixture lies inside the window");
    }

    /// <summary>
    /// Nitrogen + ethane: three phases at 120.342 K and 23.211 bar, at 29.0 bar and 125.14 K, and an upper end near 135.95 K and
    /// 45.8 bar: the same model in other hands, see docs/validation.md.
    /// </summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.8)]
    public void The_three_phase_line_of_a_binary_is_one_line_up_to_its_end(double nitrogen)
    {
        var envelope = Trace(["nitrogen", "ethane"], [nitrogen, 1 - nitrogen]);
        var line = Assert.Single(envelope.Lines, l => l.Kind == BoundaryKind.ThreePhase);
        var top = line.Points.MaxBy(p => p.TemperatureK);
        Assert.Equal(135.95, top.TemperatureK, 0.1);
        Assert.Equal(45.85, top.PressurePa / 1e5, 0.15);
        Assert.Equal(125.147, Assert.Single(envelope.TemperaturesAt(29e5, l => l == line)), 0.02);
        Assert.Equal(120.342, Assert.Single(envelope.TemperaturesAt(23.211e5, l => l == line)), 0.02);
        Assert.Contains(envelope.Notes, n => n.ToString().Contains("three-phase line ends"));
    }

    /// <summary>Phases on either side of a line, a little away from it, are the ones the line names.</summary>
    [Theory]
    [InlineData(new[] { "nitrogen", "methane", "ethane" }, new[] { 0.3, 0.4, 0.3 })]
    [InlineData(new[] { "argon", "methane", "ethane" }, new[] { 0.4, 0.3, 0.3 })]
    [InlineData(new[] { "R32", "R125" }, new[] { 0.6976, 0.3024 })]
    [InlineData(new[] { "nitrogen", "oxygen", "argon" }, new[] { 0.7812, 0.2096, 0.0092 })]
    public void Lines_separate_what_they_say(string[] names, double[] z)
    {
        HelmholtzModel model = ReferenceModel.Create(names);
        var flash = new Flash(model);
        foreach (var line in EnvelopeTracer.Trace(model, z, new EnvelopeWindow { Freezing = false }, TestContext.Current.CancellationToken).Lines)
        {
            int[] promised = [.. line.Between.Split(" | ").Select(side => side.Split('+').Length).Order()];
            // not near the ends, where lines meet and the regions between them are thin
            for (int i = line.Points.Count / 4; i < line.Points.Count * 3 / 5; i += 3)
            {
                var p = line.Points[i];
                int[] found = [.. new[] { -0.006, 0.006 }.Select(d => flash.TemperaturePressure(p.TemperatureK + d, p.PressurePa, z).Phases.Count).Order()];
                Assert.Equal(promised, found);
            }
        }
    }

    /// <summary>The lines do not depend on how finely they were looked for.</summary>
    [Theory]
    [InlineData(new[] { "nitrogen", "methane", "ethane" }, new[] { 0.3, 0.4, 0.3 })]
    [InlineData(new[] { "nitrogen", "methane", "ethane", "propane", "isobutane" }, new[] { 0.29, 0.40, 0.18, 0.08, 0.05 })]
    [InlineData(new[] { "nitrogen", "ethane" }, new[] { 0.97, 0.03 })]
    [InlineData(new[] { "carbon-dioxide", "methane" }, new[] { 0.3, 0.7 })]
    public void Coarse_and_fine_scans_find_the_same_lines(string[] names, double[] z)
    {
        var (coarse, fine) = (Trace(names, z, cubic: true, scans: 9), Trace(names, z, cubic: true, scans: 30));
        Assert.Equal(fine.Lines.Select(l => (l.Kind, l.Between)).Order(), coarse.Lines.Select(l => (l.Kind, l.Between)).Order());
        foreach (double bar in (double[])[1, 2, 5, 10, 20, 30])
        {
            Close(coarse.BubbleTemperatureK(bar * 1e5), fine.BubbleTemperatureK(bar * 1e5));
            Close(coarse.DewTemperatureK(bar * 1e5), fine.DewTemperatureK(bar * 1e5));
        }
        static void Close(double? a, double? b)
        {
            Assert.Equal(a is null, b is null);
            if (a is { } x) Assert.Equal(x, b!.Value, 0.02);
        }
    }

    /// <summary>No line jumps: neighbours lie close, in the measure of the picture.</summary>
    [Theory]
    [InlineData(new[] { "nitrogen", "R14", "propane" }, new[] { 0.4, 0.3, 0.3 }, true)]
    [InlineData(new[] { "nitrogen", "ethane" }, new[] { 0.97, 0.03 }, false)]
    [InlineData(new[] { "carbon-dioxide", "ethane" }, new[] { 0.5, 0.5 }, true)]
    public void Lines_do_not_jump(string[] names, double[] z, bool cubic)
    {
        var envelope = Trace(names, z, cubic);
        double spanT = envelope.Window.WarmestK!.Value - envelope.Window.ColdestK!.Value, spanP = Math.Log(envelope.Window.HighestPa / envelope.Window.LowestPa);
        foreach (var line in envelope.Lines)
            foreach (var (a, b) in line.Points.Zip(line.Points.Skip(1)))
                Assert.InRange(Math.Sqrt(Math.Pow((a.TemperatureK - b.TemperatureK) / spanT, 2) + Math.Pow(Math.Log(a.PressurePa / b.PressurePa) / spanP, 2)), 0, 0.05);
    }

    /// <summary>
    /// The freezing line is the answer of FreezingModel at every pressure of the window: carbon dioxide freezes out of the
    /// vapour at low pressures and out of the liquid at high ones.
    /// </summary>
    [Fact]
    public void The_freezing_line_is_the_first_solid()
    {
        var model = CubicModel.Create(["carbon-dioxide", "methane"]);
        double[] z = [0.3, 0.7];
        var lines = EnvelopeTracer.Trace(model, z, new EnvelopeWindow { Scans = 8 }, TestContext.Current.CancellationToken).Lines.Where(l => l.Kind == BoundaryKind.Freezing).ToArray();
        var line = Assert.Single(lines);
        Assert.Equal("fluid | solid carbon-dioxide", line.Between);
        var freezing = new Coldwright.Fluids.Freezing.FreezingModel(model);
        foreach (var p in line.Points.Where((_, i) => i % 4 == 0))
            Assert.Equal(freezing.FreezingTemperature(p.PressurePa, z)!.TemperatureK, p.TemperatureK, 1e-6);
        Assert.Equal(0.2e5, line.Points[0].PressurePa, 1);
        Assert.Equal(150e5, line.Points[^1].PressurePa, 1);
    }

    [Fact]
    public void A_pure_substance_has_no_envelope()
    {
        var error = Assert.Throws<ArgumentException>(() => Trace(["nitrogen", "methane"], [1, 0], cubic: true));
        Assert.Contains("saturation line", error.Message);
    }

    [Fact]
    public void Tracing_stops_when_asked()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => EnvelopeTracer.Trace(CubicModel.Create(["nitrogen", "methane"]), [0.5, 0.5], cancel: stop.Token));
    }

    private static IEnumerable<(bool Bubble, double Z, double TemperatureK, double PressurePa)> Table(string first, string second)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent!;
        foreach (var line in File.ReadLines(Path.Combine(folder.FullName, "tests", "data", "binary_vle_reference.csv")))
        {
            var cells = line.Split(',');
            if (cells.Length == 13 && cells[1] == first && cells[2] == second && cells[12] == "VLE")
                yield return (cells[0] == "bubble", Number(cells[4]), Number(cells[3]), Number(cells[5]));
        }
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
