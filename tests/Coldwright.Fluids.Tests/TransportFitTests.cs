using System.Globalization;
using System.Text.Json;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;
using Coldwright.Fluids.Transport;
using Xunit;

namespace Coldwright.Fluids.Tests;

/// <summary>
/// Makes the numbers of data/transport/coldwright2026.json again and compares (<c>regression</c>: they are our own). Each test prints its entry in the
/// layout of the file: that is how the file was made and how it is renewed.
/// </summary>
public sealed class TransportFitTests(ITestOutputHelper output)
{
    private static readonly JsonElement File = Read();

    public static TheoryData<string> Viscosities => [.. Fitted("viscosity_scaling")];
    public static TheoryData<string> Conductivities => [.. Fitted("conductivity_scaling")];
    public static TheoryData<string> Parachors => [.. File.GetProperty("parachor").EnumerateArray().Select(e => e.GetProperty("name").GetString()!)];

    [Theory]
    [MemberData(nameof(Viscosities))]
    public void Viscosity_curve(string name)
    {
        var fluid = new Fluid(name);
        var points = new List<Point>();
        foreach (var (t, rho, s) in fluid.States())
        {
            double eta = fluid.Pure.Viscosity(t, rho), dilute = fluid.Pure.DiluteViscosity(t);
            double y = EntropyScaling.ViscosityY(eta - dilute, s, t, rho, fluid.Mass);
            // d ln eta/dY: least squares in relative viscosity; not less than 2 %, else a thin gas has no say at all
            double weight = Math.Exp(y) / (Math.Exp(y) - 1) * (eta - dilute) / eta;
            if (double.IsFinite(y)) points.Add(new Point(s, y, Math.Max(weight, 0.02), v => (dilute + EntropyScaling.Viscosity(v, s, t, rho, fluid.Mass)) / eta - 1));
        }
        Compare("viscosity_scaling", name, fluid, points);
    }

    [Theory]
    [MemberData(nameof(Conductivities))]
    public void Conductivity_curve(string name)
    {
        var fluid = new Fluid(name);
        var points = new List<Point>();
        foreach (var (t, rho, s) in fluid.States())
        {
            double lambda = fluid.Pure.ConductivityBackground(t, rho), dilute = fluid.Pure.DiluteConductivity(t, fluid.Pure.DiluteViscosity(t));
            double y = EntropyScaling.ConductivityY(lambda - dilute, s, t, rho, fluid.Mass);
            points.Add(new Point(s, y, EntropyScaling.Conductivity(1, s, t, rho, fluid.Mass) / lambda, v => (dilute + EntropyScaling.Conductivity(v, s, t, rho, fluid.Mass)) / lambda - 1));
        }
        Compare("conductivity_scaling", name, fluid, points);
    }

    /// <summary>Mean of sigma^(1/4)/(rho_liquid - rho_vapour) at 0.5, 0.55 ... 0.9 Tc, as far as above the triple point.</summary>
    [Theory]
    [MemberData(nameof(Parachors))]
    public void Parachor(string name)
    {
        var fluid = new Fluid(name);
        var values = new List<double>();
        for (int i = 10; i <= 18; i++)
        {
            double t = 0.05 * i * fluid.Substance.CriticalTemperatureK;
            if (t < fluid.Substance.TripleTemperatureK) continue;
            var q = PureSaturation.AtTemperature(fluid.Model, t);
            values.Add(Math.Pow(fluid.Pure.Data.SurfaceTension!.At(t), 0.25) / (q.LiquidDensity - q.VapourDensity));
        }
        double mean = values.Average();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{{\"name\": \"{name}\", \"parachor_SI\": {mean:g6}, \"spread_percent\": [{100 * (values.Min() / mean - 1):f1}, {100 * (values.Max() / mean - 1):f1}]}},"));
        Assert.Equal(mean, Entry("parachor", name).GetProperty("parachor_SI").GetDouble(), 1e-5 * mean);
    }

    private void Compare(string list, string name, Fluid fluid, List<Point> points)
    {
        double[] n = LeastSquares(points);
        double[] deviations = [.. points.Select(p => p.Deviation(Curve(n, p.S)))];
        double rms = 100 * Math.Sqrt(deviations.Average(d => d * d)), largest = 100 * deviations.Max(Math.Abs);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{{\"name\": \"{name}\", \"n\": [{string.Join(", ", n.Select(v => v.ToString("g6", CultureInfo.InvariantCulture)))}], \"maximum_entropy\": {fluid.MaximumEntropy:g6}, \"rms_percent\": {rms:f2}, \"largest_percent\": {largest:f1}}},"));
        var entry = Entry(list, name);
        double[] filed = [.. entry.GetProperty("n").EnumerateArray().Select(e => e.GetDouble())];
        Assert.Equal(fluid.MaximumEntropy, entry.GetProperty("maximum_entropy").GetDouble(), 1e-4);
        Assert.Equal(rms, entry.GetProperty("rms_percent").GetDouble(), 0.02);
        Assert.Equal(largest, entry.GetProperty("largest_percent").GetDouble(), 0.1);
        // the coefficients depend strongly on each other: the curve counts
        double scale = Math.Abs(Curve(n, fluid.MaximumEntropy));
        for (int i = 1; i <= 20; i++) Assert.Equal(Curve(n, fluid.MaximumEntropy * i / 20), Curve(filed, fluid.MaximumEntropy * i / 20), 1e-3 * scale);
    }

    private static double Curve(double[] n, double s)
    {
        double root = Math.Sqrt(s);
        return s * (n[0] + root * (n[1] + root * (n[2] + root * n[3])));
    }

    /// <summary>Weighted normal equations for s, s^1.5, s^2, s^2.5, by Gauss-Jordan elimination.</summary>
    private static double[] LeastSquares(List<Point> points)
    {
        var a = new double[4, 5];
        foreach (var p in points)
        {
            double root = Math.Sqrt(p.S), w = p.Weight * p.Weight;
            double[] basis = [p.S, p.S * root, p.S * p.S, p.S * p.S * root];
            for (int i = 0; i < 4; i++)
            {
                for (int j = 0; j < 4; j++) a[i, j] += w * basis[i] * basis[j];
                a[i, 4] += w * basis[i] * p.Y;
            }
        }
        for (int i = 0; i < 4; i++)
            for (int row = 0; row < 4; row++)
            {
                if (row == i) continue;
                double factor = a[row, i] / a[i, i];
                for (int c = i; c < 5; c++) a[row, c] -= factor * a[i, c];
            }
        return [.. Enumerable.Range(0, 4).Select(i => a[i, 4] / a[i, i])];
    }

    private static IEnumerable<string> Fitted(string list) =>
        File.GetProperty(list).EnumerateArray().Where(e => e.TryGetProperty("rms_percent", out _)).Select(e => e.GetProperty("name").GetString()!);

    private static JsonElement Entry(string list, string name) => File.GetProperty(list).EnumerateArray().Single(e => e.GetProperty("name").GetString() == name);

    private static JsonElement Read()
    {
        using var stream = typeof(Flash).Assembly.GetManifestResourceStream("transport/coldwright2026")!;
        using var document = JsonDocument.Parse(stream);
        return document.RootElement.Clone();
    }

    private sealed record Point(double S, double Y, double Weight, Func<double, double> Deviation);

    private sealed class Fluid
    {
        private readonly PhaseEvaluation _evaluation;

        public Fluid(string name)
        {
            Model = ReferenceModel.Create([name]);
            Substance = Model.Substances[0];
            Pure = new PureTransport(Substance);
            _evaluation = Model.CreateEvaluation();
            MaximumEntropy = Entropy(Substance.TripleTemperatureK, Substance.TripleLiquidDensity);
        }

        public MultiFluidModel Model { get; }
        public Substance Substance { get; }
        public PureTransport Pure { get; }
        public double MaximumEntropy { get; }
        public double Mass => Substance.MolarMass;

        /// <summary>-s_res/R.</summary>
        private double Entropy(double t, double rho)
        {
            _evaluation.SetIsotherm(t, [1]);
            _evaluation.Gradient(rho);
            return _evaluation.A + _evaluation.ATemperature;
        }

        /// <summary>
        /// Saturated liquid and vapour and liquid at 50 and 100 bar at 31 temperatures from the triple point to 0.99 Tc; isotherms at 1.1, 1.2, 1.5, 2 and
        /// 2.5 Tc (not above 500 K or the equation's range) from 0.1 to 2 critical densities; all with 0.02 &lt; s &lt; 1.02 of the triple-point liquid's.
        /// </summary>
        public List<(double T, double Rho, double S)> States()
        {
            var states = new List<(double T, double Rho)>();
            double low = Substance.TripleTemperatureK, critical = Substance.CriticalTemperatureK;
            var flash = new Flash(Model);
            for (int i = 0; i <= 30; i++)
            {
                double t = low + (0.99 * critical - low) * i / 30;
                var q = PureSaturation.AtTemperature(Model, t);
                states.Add((t, q.LiquidDensity));
                if (q.VapourDensity > 1) states.Add((t, q.VapourDensity));
                foreach (double p in (double[])[5e6, 1e7])
                    if (flash.TrySolve(t, p, [1.0])) states.Add((t, flash.Density()));
            }
            foreach (double f in (double[])[1.1, 1.2, 1.5, 2, 2.5])
                for (int k = 1; k <= 20 && f * critical <= Math.Min(Substance.MaximumTemperatureK, 500); k++) states.Add((f * critical, 0.1 * k * Substance.CriticalDensity));
            return [.. states.Select(v => (v.T, v.Rho, S: Entropy(v.T, v.Rho))).Where(v => v.S >= 0.02 && v.S <= 1.02 * MaximumEntropy)];
        }
    }
}
