using Coldwright.Blind;
using Coldwright.Blind.Physics;

namespace Coldwright.Benchmarks.Oracle;

/// <summary>
/// The generator's own runs that the oracle knows: the sound machine, each thing that is drawn one standard deviation off, each fault at both ends of its sizes, pairs of faults, faults with the
/// films, friction, compressor and precooler off, and machines drawn at random to see what all that leaves.
/// </summary>
internal sealed class OracleRuns
{
    private const int RandomSeed = 9001, SoundRandom = 15, FaultyRandom = 35;

    /// <summary>Things drawn for a sound machine, with their standard deviation: truth, moved by so many deviations.</summary>
    public static IReadOnlyList<(string Name, Func<Truth, double, Truth> Moved, Func<Truth, double> Of)> Doubts { get; } = MakeDoubts();

    /// <summary>Those that a fault's effect hangs on most.</summary>
    public static IReadOnlyList<string> Bending { get; } = ["high film", "low film", "friction", "compressor", "precooler"];

    public static Truth Sound { get; } = new() { Faults = [], HighFilm = Film, LowFilm = Film, CoilFilm = Film };
    private static double Film => 0.7 * Math.Sqrt(2);

    public required BlindCase Nominal { get; init; }
    public required IReadOnlyDictionary<string, (BlindCase Less, BlindCase More)> Scattered { get; init; }
    public required IReadOnlyDictionary<OracleFault, (BlindCase Near, BlindCase Far)> Faults { get; init; }
    public required IReadOnlyDictionary<(OracleFault, OracleFault), BlindCase> Pairs { get; init; }
    public required IReadOnlyDictionary<(OracleFault, string), BlindCase> Bent { get; init; }
    public required IReadOnlyList<BlindCase> Random { get; init; }

    /// <summary>Makes them all, two at a time.</summary>
    public static OracleRuns Make()
    {
        var wanted = new Dictionary<string, Truth>();
        string Want(string key, Truth truth)
        {
            wanted[key] = truth;
            return key;
        }

        Truth With(params (OracleFault Fault, double Size)[] faults) => Sound with { Faults = [.. faults.Select(f => (f.Fault.Id, f.Size))] };
        string Key(OracleFault f) => $"{f.Id}{(f.From < 0 ? "-" : "")}";
        Want("sound", Sound);
        foreach (var (name, moved, _) in Doubts)
        {
            Want($"less {name}", moved(Sound, -1));
            Want($"more {name}", moved(Sound, 1));
        }
        OracleFault[] run = [.. OracleFault.All.Where(f => !f.IsOfSensors)];
        foreach (var f in run)
        {
            Want($"near {Key(f)}", With((f, f.Near)));
            Want($"far {Key(f)}", With((f, f.Far)));
        }
        var pairs = run.SelectMany((a, i) => run.Skip(i + 1).Where(b => !(a.IsOfBatch && b.IsOfBatch)).Select(b => (A: a, B: b))).ToArray();
        foreach (var (a, b) in pairs) Want($"{Key(a)} and {Key(b)}", With((a, a.Middle), (b, b.Middle)));
        var bent = run.Where(f => !f.IsOfBatch).SelectMany(f => Bending.Select(d => (Fault: f, Doubt: d))).ToArray();
        foreach (var (f, d) in bent) Want($"{Key(f)} with {d}", Doubts.First(x => x.Name == d).Moved(With((f, f.Middle)), 1));
        var drawn = Enumerable.Range(0, 400).Select(i => CaseMaker.Drawn(RandomSeed, i)).ToArray();
        Truth[] random = [.. drawn.Where(t => t.Faults.Count > 0).Take(FaultyRandom), .. drawn.Skip(200).Take(SoundRandom).Select(t => t with { Faults = [] })];
        for (int i = 0; i < random.Length; i++) Want($"random {i}", random[i]);
        var made = wanted.AsParallel().WithDegreeOfParallelism(2).Select(w => (w.Key, Case: new BlindCase(0, w.Value, BlindMarch.Run(w.Value), new Dictionary<string, double>()))).ToDictionary(x => x.Key, x => x.Case);
        // a sensor that is wrong changes nothing of the machine
        BlindCase Of(OracleFault f, double size, string key) => f.IsOfSensors ? made["sound"] with { Truth = With((f, size)) } : made[key];
        return new OracleRuns
        {
            Nominal = made["sound"],
            Scattered = Doubts.ToDictionary(d => d.Name, d => (made[$"less {d.Name}"], made[$"more {d.Name}"])),
            Faults = OracleFault.All.ToDictionary(f => f, f => (Of(f, f.Near, $"near {Key(f)}"), Of(f, f.Far, $"far {Key(f)}"))),
            Pairs = pairs.ToDictionary(p => p, p => made[$"{Key(p.A)} and {Key(p.B)}"]),
            Bent = bent.ToDictionary(b => b, b => made[$"{Key(b.Fault)} with {b.Doubt}"]),
            Random = [.. random.Select((_, i) => made[$"random {i}"])],
        };
    }

    private static IReadOnlyList<(string, Func<Truth, double, Truth>, Func<Truth, double>)> MakeDoubts()
    {
        var (film, friction, part, substance) = CaseMaker.Spread;
        double two = part * Math.Sqrt(2);
        var list = new List<(string, Func<Truth, double, Truth>, Func<Truth, double>)>
        {
            ("high film", (t, s) => t with { HighFilm = t.HighFilm * Math.Exp(film * s) }, t => Math.Log(t.HighFilm / Film) / film),
            ("low film", (t, s) => t with { LowFilm = t.LowFilm * Math.Exp(film * s) }, t => Math.Log(t.LowFilm / Film) / film),
            ("coil film", (t, s) => t with { CoilFilm = t.CoilFilm * Math.Exp(film * s) }, t => Math.Log(t.CoilFilm / Film) / film),
            ("friction", (t, s) => t with { Friction = t.Friction + friction * s }, t => (t.Friction - 1) / friction),
            ("leak", (t, s) => t with { Leak = t.Leak * Math.Exp(two * s) }, t => Math.Log(t.Leak) / two),
            ("foam heat", (t, s) => t with { FoamHeat = t.FoamHeat * Math.Exp(two * s) }, t => Math.Log(t.FoamHeat) / two),
            ("compressor", (t, s) => t with { Compressor = t.Compressor * Math.Exp(part * s) }, t => Math.Log(t.Compressor) / part),
            ("efficiency", (t, s) => t with { Efficiency = t.Efficiency * Math.Exp(part * s) }, t => Math.Log(t.Efficiency) / part),
            ("precooler", (t, s) => t with { Precooler = t.Precooler * Math.Exp(part * s) }, t => Math.Log(t.Precooler) / part),
            ("exchanger mass", (t, s) => t with { ExchangerMass = t.ExchangerMass * Math.Exp(part * s) }, t => Math.Log(t.ExchangerMass) / part),
            ("load mass", (t, s) => t with { LoadMass = t.LoadMass * Math.Exp(part * s) }, t => Math.Log(t.LoadMass) / part),
            ("volume", (t, s) => t with { Volume = t.Volume * Math.Exp(part * s) }, t => Math.Log(t.Volume) / part),
            ("warm exchanger", (t, s) => t with { WarmExchanger = t.WarmExchanger * Math.Exp(part * s) }, t => Math.Log(t.WarmExchanger) / part),
            ("line heat", (t, s) => t with { LineHeat = t.LineHeat * Math.Exp(part * s) }, t => Math.Log(t.LineHeat) / part),
            ("flask heat", (t, s) => t with { FlaskHeat = t.FlaskHeat * Math.Exp(part * s) }, t => Math.Log(t.FlaskHeat) / part),
        };
        for (int i = 0; i < 5; i++)
        {
            int at = i;
            list.Add(($"substance {at}", (t, s) => t with { Charge = [.. t.Charge.Select((x, k) => k == at ? x * Math.Exp(substance * s) : x)] }, t => Math.Log(t.Charge[at]) / substance));
        }
        return list;
    }
}
