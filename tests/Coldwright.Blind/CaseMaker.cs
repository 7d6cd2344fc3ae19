using Coldwright.Blind.Physics;

namespace Coldwright.Blind;

/// <summary>A case: what the machine truly is, how its day went, and what each fault is worth.</summary>
/// <param name="Number">Number within the seed.</param>
/// <param name="Truth">The machine.</param>
/// <param name="Course">Its day.</param>
/// <param name="Worth">Share of the shortfall of each fault, 0..1.</param>
public sealed record BlindCase(int Number, Truth Truth, BlindCourse Course, IReadOnlyDictionary<string, double> Worth);

/// <summary>Draws cases from a seed.</summary>
public static class CaseMaker
{
    private const double Scatter = 0.05, NoneShare = 0.13, PairShare = 0.4;

    /// <summary>Fault ids and the range their size is drawn from.</summary>
    public static IReadOnlyList<(string Id, double From, double To)> Faults { get; } =
    [
        ("leak", 1.6, 3), ("wet-insulation", 0.04, 0.12), ("exchanger", 0.3, 0.55), ("coil", 0.04, 0.15), ("compressor-flow", 0.5, 0.78), ("capillary-blocked", 0.4, 0.7), ("light-gas-lost", 0.25, 0.6),
        ("heavy-held-up", 0.5, 0.95), ("precooler-weak", 0.25, 0.55), ("extra-metal", 1.2, 4), ("sensor-offset", 6, 15), ("cold-junction", 5, 12), ("freeze-plug", 0.4, 0.75),
        ("discharge-too-warm", 1, 1), ("line-loss", 7, 14), ("valve-leak", 2.5e-5, 6e-5), ("flask-warm", 2.5, 4), ("feed-impure", 0.01, 0.03),
    ];

    /// <summary>A case of a seed.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="number">Number, from 0.</param>
    /// <param name="cancel">Stops the work.</param>
    public static BlindCase Make(int seed, int number, CancellationToken cancel = default)
    {
        var random = new Random(unchecked(seed * 100_003 + number * 31 + 7));
        // a fault that costs nothing on this machine is no case: drawn again
        for (int attempt = 0; ; attempt++)
        {
            var one = Of(number, Draw(random), cancel);
            if (one.Truth.Faults.Count == 0 || one.Worth.Values.Max() > 0 || attempt > 20) return one;
        }
    }

    /// <summary>A machine as the cases are drawn, whatever its faults are worth.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="number">Number, from 0.</param>
    public static Truth Drawn(int seed, int number) => Draw(new Random(unchecked(seed * 100_003 + number * 31 + 7)));

    /// <summary>Standard deviations of what is drawn for a sound machine: of the logarithm of a film, of the friction, of a part listed nowhere, of a substance of the charge.</summary>
    public static (double Film, double Friction, double Part, double Substance) Spread { get; } = (Math.Log(2) / Math.Sqrt(12), 0.3 / Math.Sqrt(12), Scatter, 0.02);

    /// <summary>The case of a machine.</summary>
    public static BlindCase Of(int number, Truth truth, CancellationToken cancel = default)
    {
        var course = BlindMarch.Run(truth, cancel);
        var worth = new Dictionary<string, double>();
        if (truth.Faults.Count > 0)
        {
            double[] ill = Loss(course, truth), sound = Loss(BlindMarch.Run(truth with { Faults = [] }, cancel), truth with { Faults = [] });
            foreach (var (id, _) in truth.Faults)
            {
                var other = truth.Without(id);
                double[] without = truth.Faults.Count == 1 ? sound : Loss(BlindMarch.Run(other, cancel), other);
                double most = 0;
                for (int i = 0; i < ill.Length; i++)
                    if (ill[i] - sound[i] > _least[i]) most = Math.Max(most, (ill[i] - without[i]) / (ill[i] - sound[i]));
                worth[id] = Math.Clamp(most, 0, 1);
            }
        }
        return new BlindCase(number, truth, course, worth);
    }

    // below these nobody would look for a fault: kelvin, share of the time, kilograms
    private static readonly double[] _least = [4, 0.1, 0.04];

    // three losses: how warm it seems to stay, how late it is, what is missing in the flask
    private static double[] Loss(BlindCourse c, Truth truth)
    {
        var end = c.Moments.Last(m => m.TimeS <= BlindMarch.FeedOnS);
        var half = c.Moments.First(m => m.LoadK < c.Moments[0].LoadK - 0.7 * (c.Moments[0].LoadK - end.LoadK));
        double shown = truth.Of("sensor-offset", 0) + truth.Of("cold-junction", 0) * LogWriter.JunctionGain(end.LoadK);
        return [end.LoadK + Math.Abs(shown), Math.Log(half.TimeS), -c.CollectedKg];
    }

    private static Truth Draw(Random random)
    {
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double Near() => Math.Exp(Scatter * Normal());
        // correlations: 0.7 to 1.4, evenly in the logarithm
        double Film() => 0.7 * Math.Pow(2, random.NextDouble());
        int count = random.NextDouble() is var u && u < NoneShare ? 0 : u < NoneShare + PairShare ? 2 : 1;
        var faults = new List<(string, double)>();
        while (faults.Count < count)
        {
            var (id, from, to) = Faults[random.Next(Faults.Count)];
            if (faults.Any(f => f.Item1 == id)) continue;
            double size = from + (to - from) * random.NextDouble();
            if (id is "sensor-offset" or "cold-junction" && random.Next(2) == 0) size = -size;
            faults.Add((id, size));
        }
        return new Truth
        {
            Faults = faults, HighFilm = Film(), LowFilm = Film(), CoilFilm = Film(), Friction = 0.85 + 0.3 * random.NextDouble(), Leak = Near() * Near(), FoamHeat = Near() * Near(), Compressor = Near(), Efficiency = Near(),
            Precooler = Near(), ExchangerMass = Near(), LoadMass = Near(), Volume = Near(), WarmExchanger = Near(), Charge = [.. Enumerable.Range(0, 5).Select(_ => Math.Exp(0.02 * Normal()))], LineHeat = Near(), FlaskHeat = Near(),
        };
    }
}
