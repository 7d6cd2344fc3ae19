using System.Text;
using Coldwright.Blind;
using Coldwright.Machine.Files;
using Coldwright.Runs;
using Coldwright.Runs.Explain;

namespace Coldwright.Benchmarks.Oracle;

/// <summary>What the oracle's runs look like through one set of sensors: figures of the sound machine, and how each thing moves them.</summary>
internal sealed class OracleSight
{
    // sensors' lasting errors come first among a log's draws; logs of noise alone; least doubts of a figure: kelvin, logarithm
    private const int LastingDraws = 36, NoiseLogs = 12;
    private const double LeastK = 0.15, LeastLog = 0.004;

    private readonly MachineFolder _folder;
    private readonly SensorSet _set;
    private readonly BatchModel _batch;
    private readonly Dictionary<Feature, int> _at;
    private readonly Dictionary<OracleFault, (double[] Near, double[] Far)> _faults = [];
    private readonly Dictionary<(OracleFault, OracleFault), double[]> _pairs = [];
    private readonly Dictionary<(OracleFault, string), double[]> _bent = [];

    public OracleSight(OracleRuns runs, SensorSet set, MachineFolder folder)
    {
        (_folder, _set, _batch) = (folder, set, BatchModel.Of(folder.Machine!, folder.Layout!)!);
        var sound = Figures(runs.Nominal, () => 0);
        Features = [.. sound.Keys];
        _at = Features.Select((f, i) => (f, i)).ToDictionary(x => x.f, x => x.i);
        Sound = [.. Features.Select(f => sound[f])];
        double[] Change(BlindCase c) => Less(Seen(c), Sound);
        Doubts = [.. OracleRuns.Doubts.Select(d => (d.Name, Less(Seen(runs.Scattered[d.Name].More), Seen(runs.Scattered[d.Name].Less), 0.5)))];
        foreach (var (f, (near, far)) in runs.Faults) _faults[f] = (Change(near), Change(far));
        foreach (var ((a, b), c) in runs.Pairs) _pairs[(a, b)] = Less(Less(Change(c), Effect(a, a.Middle)), Effect(b, b.Middle));
        foreach (var ((f, d), c) in runs.Bent) _bent[(f, d)] = Less(Less(Change(c), Effect(f, f.Middle)), Doubts.First(x => x.Name == d).Shift);
        (Lasting, Noise) = Sensors(runs.Nominal);
        Remainder = [.. Enumerable.Range(0, 3).Select(k => Rest(runs, k))];
    }

    public IReadOnlyList<Feature> Features { get; }
    /// <summary>Figures of the sound machine.</summary>
    public double[] Sound { get; }
    /// <summary>Shift of each thing drawn for a sound machine, for one standard deviation.</summary>
    public IReadOnlyList<(string Name, double[] Shift)> Doubts { get; }
    /// <summary>Shifts by the sensors' lasting errors.</summary>
    public IReadOnlyList<double[]> Lasting { get; }
    /// <summary>Variance by noise.</summary>
    public double[] Noise { get; }
    /// <summary>Variance that straight lines and pairs leave, with none, one or two faults.</summary>
    public IReadOnlyList<double[]> Remainder { get; }

    /// <summary>What a fault of a size changes.</summary>
    public double[] Effect(OracleFault f, double size)
    {
        var (a, b) = f.Weights(size);
        var (near, far) = _faults[f];
        return [.. near.Select((v, i) => a * v + b * far[i])];
    }

    /// <summary>What two faults in their middle change beyond each alone.</summary>
    public double[] Together(OracleFault a, OracleFault b) => _pairs.GetValueOrDefault((a, b)) ?? _pairs.GetValueOrDefault((b, a)) ?? new double[Sound.Length];

    /// <summary>What a fault in its middle adds to a doubt's shift.</summary>
    public double[]? Bent(OracleFault f, string doubt) => _bent.GetValueOrDefault((f, doubt));

    /// <summary>Figures of a log, not a number where it gives none.</summary>
    public double[] Read(string run, string log)
    {
        var seen = Figures(run, log);
        return [.. Features.Select(f => seen.GetValueOrDefault(f, double.NaN))];
    }

    private double[] Seen(BlindCase c)
    {
        var seen = Figures(c, () => 0);
        return [.. Features.Select((f, i) => seen.GetValueOrDefault(f, Sound[i]))];
    }

    private Dictionary<Feature, double> Figures(BlindCase c, Func<double> errors)
    {
        var (run, log) = LogWriter.Write(c, _set, 0, errors: errors);
        return Figures(run, log);
    }

    private Dictionary<Feature, double> Figures(string run, string log)
    {
        var record = RunImporter.ReadTexts(run, _set == SensorSet.Bare ? null : Encoding.UTF8.GetBytes(log)).Record! with { Machine = _folder.Machine };
        var trace = Observer.Read(record, _folder.Layout!).Trace;
        var figures = FeatureReader.Of(trace).ToDictionary(f => f, f => FeatureReader.Value(trace, f)!.Value);
        if (trace.Batch is { } batch && _batch.Measured(batch) is var b)
        {
            // where both were weighed, the flask's content is told as what is missing of what was fed: a full vessel's figures bend less then
            if (b is { FedKg: { } fed, CollectedKg: { } collected, OpeningK: { } openK }) b = b with { CollectedKg = collected - fed * (1 - _batch.Flashed(openK)) };
            for (int i = 0; i < BatchFigures.Count; i++) if (b[i] is { } v) figures[new Feature(FeatureKind.Batch, Observable.Load, i)] = v;
        }
        return figures;
    }

    private (IReadOnlyList<double[]>, double[]) Sensors(BlindCase nominal)
    {
        var lasting = new List<double[]>();
        for (int k = 0; k < LastingDraws; k++)
        {
            int draw = 0, which = k;
            double[] shift = Less(Of(() => draw++ == which ? 1 : 0), Sound);
            if (shift.Any(v => Math.Abs(v) > 1e-9)) lasting.Add(shift);
        }
        var variance = new double[Sound.Length];
        for (int k = 0; k < NoiseLogs; k++)
        {
            var random = new Random(77 + k);
            int draw = 0;
            double[] off = Less(Of(() => draw++ < LastingDraws ? 0 : Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())), Sound);
            for (int i = 0; i < off.Length; i++) variance[i] += off[i] * off[i] / NoiseLogs;
        }
        return (lasting, variance);
        double[] Of(Func<double> errors)
        {
            var seen = Figures(nominal, errors);
            return [.. Features.Select((f, i) => seen.GetValueOrDefault(f, Sound[i]))];
        }
    }

    // what is left of machines drawn at random once their truth is told, by the number of their faults
    private double[] Rest(OracleRuns runs, int count)
    {
        var rows = new List<double[]>();
        foreach (var c in runs.Random.Where(c => c.Truth.Faults.Count(f => f.Id is not ("sensor-offset" or "cold-junction")) == count))
        {
            var faults = c.Truth.Faults.Select(f => (Fault: OracleFault.All.First(o => o.Id == f.Id && o.From < 0 == f.Size < 0), f.Size)).ToArray();
            var seen = Figures(c, () => 0);
            double[] left = [.. Features.Select((f, i) => seen.TryGetValue(f, out double v) ? v - Sound[i] : double.NaN)];
            void Take(double[] x, double by = 1)
            {
                for (int i = 0; i < left.Length; i++) left[i] -= by * x[i];
            }

            foreach (var (f, size) in faults) Take(Effect(f, size));
            if (faults is [var a, var b]) Take(Together(a.Fault, b.Fault), a.Fault.On(a.Size) / a.Fault.On(a.Fault.Middle) * b.Fault.On(b.Size) / b.Fault.On(b.Fault.Middle));
            foreach (var (d, (_, shift)) in OracleRuns.Doubts.Zip(Doubts))
            {
                double by = d.Of(c.Truth);
                Take(shift, by);
                foreach (var (f, size) in faults) if (Bent(f, d.Name) is { } bent) Take(bent, by * f.On(size) / f.On(f.Middle));
            }
            rows.Add(left);
        }
        return [.. Features.Select((f, i) =>
        {
            // the worst tenth is left out: a run that tips over is no measure of the others
            double[] squares = [.. rows.Select(r => r[i]).Where(double.IsFinite).Select(v => v * v).Order()];
            double[] kept = squares.Length > 5 ? squares[..(int)(0.9 * squares.Length)] : squares, least = [f.IsLog || f.Kind == FeatureKind.LateChange && f.What >= Observable.HighPressure ? LeastLog : f.Kind == FeatureKind.Batch && f.At < 2 ? 0.001 : LeastK];
            return (kept.Length == 0 ? 0 : kept.Average()) + least[0] * least[0];
        })];
    }

    private static double[] Less(double[] a, double[] b, double by = 1) => [.. a.Select((v, i) => by * (v - b[i]))];
}
