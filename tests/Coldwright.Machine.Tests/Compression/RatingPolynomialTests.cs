using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Machine.Compression;
using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Machine.Tests.Compression;

/// <summary>Ten-coefficient rating polynomials: values by hand, then their translation.</summary>
public sealed class RatingPolynomialTests
{
    private static CancellationToken Stop => CompressorCases.Stop;

    /// <summary>
    /// S = 10 C, D = 50 C: 100 + 2 x 10 - 1 x 50 + 0.03 x 100 + 0.02 x 500 + 0.01 x 2500 + 0.001 x 1000 - 0.0002 x 50 x 100
    /// + 0.0003 x 10 x 2500 - 0.0001 x 125000 = 100 + 20 - 50 + 3 + 10 + 25 + 1 - 1 + 7.5 - 12.5 = 103.0.
    /// </summary>
    [Fact]
    public void CelsiusByHand()
    {
        double[] c = [100, 2, -1, 0.03, 0.02, 0.01, 0.001, -0.0002, 0.0003, -0.0001];
        Assert.Equal(103.0, new RatingPolynomial(c, DewPointScale.Celsius).At(283.15, 323.15), 1e-9);
        Assert.Equal(103.0 / 3600, RatingPolynomial.FlowInKilogramsPerHour(c).At(283.15, 323.15), 1e-12);
    }

    /// <summary>
    /// The same two dew points in F, S = 50, D = 122: 50 + 1 x 50 - 0.5 x 122 + 0.01 x 2500 + 0.02 x 6100 + 0.01 x 14884
    /// + 0.001 x 125000 - 0.0002 x 122 x 2500 + 0.0003 x 50 x 14884 - 0.0001 x 1815848
    /// = 50 + 50 - 61 + 25 + 122 + 148.84 + 125 - 61 + 223.26 - 181.5848 = 440.5152 lb/h; x 0.45359237/3600 = 0.0555037 kg/s.
    /// </summary>
    [Fact]
    public void FahrenheitByHand()
    {
        double[] c = [50, 1, -0.5, 0.01, 0.02, 0.01, 0.001, -0.0002, 0.0003, -0.0001];
        Assert.Equal(440.5152, new RatingPolynomial(c, DewPointScale.Fahrenheit).At(283.15, 323.15), 1e-8);
        Assert.Equal(440.5152 * 0.45359237 / 3600, RatingPolynomial.FlowInPoundsPerHour(c).At(283.15, 323.15), 1e-12);
    }

    /// <summary>Suction 10 % thinner than rated: m = m_map (1 + 0.75 x (0.9 - 1)) = 0.925 m_map (Dabiri and Rice 1981, factor from memory).</summary>
    [Fact]
    public void DensityCorrection() => Assert.Equal(0.925, RatingMap.CorrectForDensity(1, 0.9), 1e-12);

    /// <summary>Nine coefficients, or one that is no number, are refused.</summary>
    [Fact]
    public void BadCoefficients()
    {
        Assert.Contains("10 coefficients, got 9", Assert.Throws<ArgumentException>(() => new RatingPolynomial(new double[9], DewPointScale.Celsius)).Message);
        Assert.Contains("C3", Assert.Throws<ArgumentException>(() => new RatingPolynomial([1, 2, double.NaN, 0, 0, 0, 0, 0, 0, 0], DewPointScale.Celsius)).Message);
    }

    /// <summary>One point of the translation by its definition: m/rho and m w/(M P).</summary>
    [Fact]
    public void TranslationPointByPoint()
    {
        var map = Sheet();
        var translated = TranslatedMap.From(map, Stop);
        var cycle = new RatingCycle("R22");
        double te = map.Evaporating.LowK, tc = map.Condensing.LowK;
        var at = IsentropicPoint.Of(cycle.Model, cycle.Composition, map.SuctionK(te), cycle.DewPressure(te), cycle.DewPressure(tc));
        var point = translated.Points[0];
        double m = map.MassFlow.At(te, tc);
        Assert.Equal(cycle.DewPressure(tc) / cycle.DewPressure(te), point.Ratio, 1e-9);
        Assert.Equal(m / at.MassDensity, point.VolumeFlow, 1e-12);
        Assert.Equal(m / at.MolarMass * at.MolarWork / map.Power.At(te, tc), point.Isentropic, 1e-9);
        Assert.Equal(point.VolumeFlow, translated.VolumeFlow.At(point.Ratio), 0.05 * point.VolumeFlow);
    }

    /// <summary>
    /// Regression: a sheet made with the physical model on R22, translated, and used on a mixture, agrees with the physical model on that
    /// mixture within the band it states (two standard deviations); on R22 itself within its fit.
    /// </summary>
    [Fact]
    public void TranslatedSheetServesAMixture()
    {
        var translated = TranslatedMap.From(Sheet(), Stop);
        Assert.True(translated.VolumeFlow.RelativeRms < 0.02 && translated.OverallIsentropic.RelativeRms < 0.06, $"{translated.VolumeFlow.RelativeRms} {translated.OverallIsentropic.RelativeRms}");
        var machine = CompressorCases.Machine(CompressorKind.Reciprocating);
        var mapped = new MappedCompressor(translated, machine, ReferenceModel.Create(CompressorCases.MixtureNames), CompressorCases.Mixture);
        var duty = new CompressorDuty { SuctionTemperatureK = 295, SuctionPressurePa = 4e5, DischargePressurePa = 18e5 };
        var p = mapped.Run(duty, Stop);
        var physical = CompressorCases.OnMixture(machine, 4e5, 4.5);
        Assert.Equal(physical.MolarFlow, p.MolarFlow, 2 * p.FlowUncertainty * p.MolarFlow);
        Assert.Equal(physical.ElectricalPowerW, p.ElectricalPowerW, 2 * (p.PowerUncertainty + p.FlowUncertainty) * p.ElectricalPowerW);
        Assert.Equal(physical.Discharge.TemperatureK, p.Discharge.TemperatureK, 20.0);
        Assert.True(Math.Abs(p.EnergyBalanceError) < 1e-9, $"{p.EnergyBalanceError}");
        Assert.DoesNotContain(p.Warnings, w => w.Contains("outside the rating sheet"));
        Assert.Contains(mapped.Run(duty with { SuctionPressurePa = 0.9e5 }, Stop).Warnings, w => w.Contains("pressure ratio") && w.Contains("outside"));
    }

    /// <summary>A sheet in the wrong unit gives more than an ideal machine everywhere, and is refused with the advice to check units.</summary>
    [Fact]
    public void WrongUnitIsRefused()
    {
        var sheet = Sheet();
        var e = Assert.Throws<ArgumentException>(() => TranslatedMap.From(sheet with { MassFlow = new RatingPolynomial(sheet.MassFlow.Coefficients, DewPointScale.Celsius) }, Stop));
        Assert.Contains("units", e.Message);
    }

    // the physical model tabulated on R22 and fitted by the ten-term form, flow in kg/h
    private static RatingMap Sheet()
    {
        var cycle = new RatingCycle("R22");
        var compressor = new HermeticCompressor(CompressorCases.Machine(CompressorKind.Reciprocating), cycle.Model, cycle.Composition);
        var rows = new List<(double[] Terms, double Flow, double Power)>();
        for (double s = -15; s <= 11; s += 5)
            for (double d = 35; d <= 61; d += 5)
            {
                var p = compressor.Run(cycle.Duty(RatingConditions.Compressor with { EvaporatingK = s + 273.15, CondensingK = d + 273.15, UsefulGasK = 308.15, LiquidK = 300 }), Stop);
                rows.Add(([1, s, d, s * s, s * d, d * d, s * s * s, d * s * s, s * d * d, d * d * d], 3600 * p.MassFlow, p.ElectricalPowerW));
            }
        return new RatingMap
        {
            Refrigerant = "R22",
            MassFlow = RatingPolynomial.FlowInKilogramsPerHour(LeastSquares(rows.ConvertAll(r => (r.Terms, r.Flow)))),
            Power = new RatingPolynomial(LeastSquares(rows.ConvertAll(r => (r.Terms, r.Power))), DewPointScale.Celsius),
            Evaporating = (258.15, 283.15),
            Condensing = (308.15, 333.15),
            ReturnGasK = 308.15,
        };
    }

    private static double[] LeastSquares(List<(double[] Terms, double Value)> rows)
    {
        var scale = Enumerable.Range(0, 10).Select(j => rows.Max(r => Math.Abs(r.Terms[j]))).ToArray();
        double[] a = new double[100], b = new double[10];
        foreach (var (terms, value) in rows)
            for (int i = 0; i < 10; i++)
            {
                b[i] += terms[i] / scale[i] * value;
                for (int j = 0; j < 10; j++) a[i * 10 + j] += terms[i] / scale[i] * terms[j] / scale[j];
            }
        Assert.True(Dense.TryCholesky(a, 10));
        Dense.SolveCholesky(a, b, 10);
        return b.Select((v, i) => v / scale[i]).ToArray();
    }
}
