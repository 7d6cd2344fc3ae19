using Coldwright.Materials.Solids;
using Xunit;

namespace Coldwright.Materials.Tests;

/// <summary>Conductivities against values evaluated independently from the published NIST fits (see data/materials for the citations).</summary>
public sealed class ConductivityTests
{
    private static readonly SolidLibrary Library = SolidLibrary.Default;

    /// <summary>
    /// k at 77, 150 and 293 K in W/(m K) and the integral 77 to 300 K in W/m. NIST cryogenic material fits, evaluated
    /// by a second program (regression values, no measurements).
    /// NaN marks a figure outside the fit's range or not tabulated.
    /// </summary>
    [Theory]
    [InlineData("stainless-304", 7.921, 11.165, 15.123, 2705)]
    [InlineData("aluminium-1100", 290.17, 219.82, 211.82, 49886)]
    [InlineData("aluminium-3003", 139.3, 157.2, 177.3, 36250)]
    [InlineData("aluminium-5083", 55.28, 85.12, 118.1, 20830)]
    [InlineData("aluminium-6061", 83.53, 120.4, 154.4, 28680)]
    [InlineData("aluminium-6063", 251.6, 220.3, 260.8, double.NaN)]
    [InlineData("brass", 39.80, double.NaN, 120, double.NaN)]
    [InlineData("g10-normal", 0.2800, 0.3737, 0.5958, 96.7)]
    [InlineData("g10-warp", 0.3858, 0.5677, 0.8512, 143.2)]
    [InlineData("ptfe", 0.23239, 0.2586, 0.27259, 58.3)]
    [InlineData("nylon", 0.2933, 0.3389, 0.3376, 74.8)]
    [InlineData("polyurethane-foam-freon", 0.00688, 0.01019, 0.01176, 2.39)]
    [InlineData("polyurethane-foam-carbon-dioxide", double.NaN, 0.01465, 0.02585, double.NaN)]
    [InlineData("polyurethane-foam-helium", 0.01652, 0.02445, 0.03531, 6.18)]
    [InlineData("polystyrene-foam-3.12", 0.00731, 0.01113, 0.02427, 3.28)]
    [InlineData("polystyrene-foam-6.24", 0.01220, 0.01796, 0.03919, 5.18)]
    [InlineData("pvc-foam", double.NaN, 0.0254, 0.0500, double.NaN)]
    [InlineData("balsa", double.NaN, 0.0245, 0.0519, double.NaN)]
    [InlineData("copper-ofhc-50", 515.1, 408.4, double.NaN, 91690)]
    [InlineData("copper-ofhc-100", 547.2, double.NaN, double.NaN, 93790)]
    [InlineData("copper-ofhc-150", 555.8, double.NaN, double.NaN, double.NaN)]
    [InlineData("copper-ofhc-300", 572.1, double.NaN, double.NaN, double.NaN)]
    [InlineData("copper-ofhc-500", 579.0, double.NaN, double.NaN, double.NaN)]
    public void Agrees_with_the_published_fits(string name, double at77, double at150, double at293, double integral)
    {
        var solid = Library.Find(name);
        Close(at77, solid.Conductivity(77));
        Close(at150, solid.Conductivity(150));
        Close(at293, solid.Conductivity(293));
        Close(integral, solid.Integral(77, 300));
    }

    /// <summary>Points at 20, 90, 100, 300 K of the same sources.</summary>
    [Theory]
    [InlineData("brass", 100, 47.45)]
    [InlineData("polyurethane-foam-carbon-dioxide", 100, 0.0100)]
    [InlineData("pvc-foam", 100, 0.0209)]
    [InlineData("balsa", 90, 0.0142)]
    [InlineData("copper-ofhc-50", 20, 1368)]
    [InlineData("copper-ofhc-50", 300, 392.4)]
    [InlineData("copper-ofhc-100", 20, 2423)]
    [InlineData("copper-ofhc-100", 100, 461.5)]
    [InlineData("copper-ofhc-100", 300, 396.3)]
    public void Agrees_at_other_temperatures(string name, double temperatureK, double expected) => Close(expected, Library.Find(name).Conductivity(temperatureK));

    /// <summary>An identity: the tabulated integral equals a fine Simpson sum of the conductivity.</summary>
    [Fact]
    public void The_integral_is_the_integral_of_the_conductivity()
    {
        (double, double)[] spans = [(0, 1), (0.013, 0.51), (0.3, 0.31), (0.62, 0.97)];
        foreach (var solid in Library.Materials)
            foreach (var (from, to) in spans)
            {
                var low = Math.Max(20, solid.MinimumK);
                var a = low + from * (solid.MaximumK - low);
                var b = low + to * (solid.MaximumK - low);
                var expected = Simpson(t => solid.Conductivity(t).Value, a, b, 20000);
                // Kinks of the point tables fall between Simpson nodes, hence not tighter.
                Assert.Equal(1, solid.Integral(a, b).Value / expected, 1e-6);
            }
    }

    [Fact]
    public void Outside_the_range_the_end_is_held_and_a_warning_given()
    {
        foreach (var solid in Library.Materials)
        {
            Assert.Null(solid.Conductivity(solid.MaximumK).Warning);
            var above = solid.Conductivity(solid.MaximumK + 20);
            Assert.Equal(solid.Conductivity(solid.MaximumK).Value, above.Value, 1e-12);
            Assert.Contains("K", above.Warning);
            var below = solid.Conductivity(solid.MinimumK / 2);
            Assert.Equal(solid.Conductivity(solid.MinimumK).Value, below.Value, 1e-12);
            Assert.NotNull(below.Warning);
            var integral = solid.Integral(solid.MaximumK, solid.MaximumK + 20);
            Assert.Equal(20 * above.Value, integral.Value, 1e-9 * Math.Abs(integral.Value) + 1e-12);
            Assert.NotNull(integral.Warning);
        }
    }

    [Fact]
    public void Every_solid_conducts_and_names_its_source()
    {
        foreach (var solid in Library.Materials)
        {
            Assert.NotEmpty(solid.Source);
            for (var t = solid.MinimumK; t <= solid.MaximumK; t += 1)
                Assert.InRange(solid.Conductivity(t).Value, 1e-4, 2e4);
            Assert.Equal(solid.Provenance == Provenance.FromMemory, solid.Caveat is not null);
        }
    }

    /// <summary>A design value from memory must at least lie between the published fits for carbon dioxide and for helium in the cells.</summary>
    [Fact]
    public void Aged_polyurethane_lies_between_two_published_fills()
    {
        double Mean(string name) => Library.Find(name).Integral(100, 300).Value / 200;
        Assert.InRange(Mean("polyurethane-foam"), Mean("polyurethane-foam-carbon-dioxide"), Mean("polyurethane-foam-helium"));
        Assert.InRange(Library.Find("polyurethane-foam").Integral(77, 300).Value / 223, 0.022, 0.025);
    }

    /// <summary>Tube copper is no oxygen-free copper: three to four times worse at the cold end (figures for C12200 from memory).</summary>
    [Fact]
    public void Tube_copper_conducts_far_less_than_oxygen_free_copper_when_cold()
    {
        var tube = Library.Find("copper");
        Assert.Equal("copper-dhp", tube.Name);
        Assert.Equal(Provenance.FromMemory, tube.Provenance);
        Assert.InRange(Library.Find("copper-ofhc").Conductivity(77).Value / tube.Conductivity(77).Value, 3, 4.5);
    }

    [Fact]
    public void A_name_nobody_knows_is_refused_with_the_known_names()
    {
        var error = Assert.Throws<ArgumentException>(() => Library.Find("unobtainium"));
        Assert.Contains("glass-wool", error.Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Library.Find("nylon").Conductivity(-3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Library.Find("nylon").Integral(77, double.NaN));
    }

    /// <summary>Within 0.5 %.</summary>
    private static void Close(double expected, MaterialValue actual)
    {
        if (double.IsNaN(expected)) return;
        Assert.Null(actual.Warning);
        Assert.InRange(actual.Value / expected, 0.995, 1.005);
    }

    private static double Simpson(Func<double, double> f, double a, double b, int n)
    {
        var h = (b - a) / n;
        var sum = f(a) + f(b);
        for (var i = 1; i < n; i++) sum += (i % 2 == 1 ? 4 : 2) * f(a + i * h);
        return sum * h / 3;
    }
}
