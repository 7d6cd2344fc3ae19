namespace Coldwright.Blind.SecondHand;

/// <summary>How one builder keeps a log. Drawn once for a case.</summary>
public sealed record Habits
{
    /// <summary>True: notes by hand, no logger.</summary>
    public bool ByHand { get; init; }
    /// <summary>Between samples, s.</summary>
    public double StepS { get; init; }
    /// <summary>Between cells.</summary>
    public char Delimiter { get; init; }
    /// <summary>True: 17,4.</summary>
    public bool DecimalComma { get; init; }
    /// <summary>Times.</summary>
    public ClockForm Form { get; init; }
    /// <summary>°C, K or °F.</summary>
    public string Temperature { get; init; } = "°C";
    /// <summary>barg, bara, psig or kPaa.</summary>
    public string Pressure { get; init; } = "barg";
    /// <summary>Noise.</summary>
    public NoiseKind Noise { get; init; }
    /// <summary>Channels that are written.</summary>
    public IReadOnlyList<string> Channels { get; init; } = [];
    /// <summary>Kind of the vessel's thermometer.</summary>
    public string VesselSensor { get; init; } = "thermocouple-K";
    /// <summary>Start of the log, s after the compressor's; mostly before it.</summary>
    public double FromS { get; init; }
    /// <summary>Whether start and stop of the compressor were noted.</summary>
    public bool NotesStart { get; init; }
    /// <summary>Whether its stop was noted.</summary>
    public bool NotesStop { get; init; }
    /// <summary>False: the log ends soon after the stop.</summary>
    public bool KeepsWarmUp { get; init; }
    /// <summary>How often the flask was weighed.</summary>
    public int Weighings { get; init; }
    /// <summary>Parts of the day without rows, s after the start.</summary>
    public IReadOnlyList<(double FromS, double ToS)> Gaps { get; init; } = [];
    /// <summary>Share of cells that are nonsense.</summary>
    public double Spikes { get; init; }
    /// <summary>A channel that stands still for a while; empty: none.</summary>
    public (string Channel, double FromS, double ToS) Frozen { get; init; } = ("", 0, 0);
    /// <summary>A jump of the logger's clock: when, and by how much, s.</summary>
    public (double AtS, double ByS) Jump { get; init; }
    /// <summary>The logger's clock is ahead by so much, s.</summary>
    public double AheadS { get; init; }
    /// <summary>Whether that was written down.</summary>
    public bool SaysAhead { get; init; }
    /// <summary>A preamble and a row of units.</summary>
    public bool Preamble { get; init; }
    /// <summary>Without headings, columns by number.</summary>
    public bool NoHeadings { get; init; }
    /// <summary>Pressures as 4 to 20 mA.</summary>
    public bool Milliamperes { get; init; }
    /// <summary>Room's temperature and pressure written down.</summary>
    public bool SaysRoom { get; init; }

    private static readonly string[] _full = ["vessel", "high", "low", "before-throttle", "precooled", "power", "coil-out", "return", "discharge", "compressor-power", "flow", "vessel-pressure", "bottle"];
    private static readonly string[] _usual = ["vessel", "high", "low", "before-throttle", "precooled", "power"];

    /// <summary>Draws a builder.</summary>
    public static Habits Draw(Random random, SensorSet set)
    {
        bool Chance(double p) => random.NextDouble() < p;
        T Of<T>(params T[] all) => all[random.Next(all.Length)];
        bool byHand = set == SensorSet.Bare && Chance(0.6), comma = Chance(0.35);
        string[] channels = set switch
        {
            SensorSet.Full => [.. _full.Where(c => c == "vessel" || !Chance(0.12))],
            SensorSet.Usual => Chance(0.08) ? ["vessel"] : [.. _usual.Where(c => c == "vessel" || !Chance(0.15))],
            _ => Chance(0.25) ? ["vessel"] : ["vessel", "high", "low"],
        };
        double day = SecondPlan.StopAtS, gapAt = 3000 + (day - 6000) * random.NextDouble(), stillAt = 3000 + 15000 * random.NextDouble(), jumpAt = 2000 + 22000 * random.NextDouble();
        var form = Of(Enum.GetValues<ClockForm>());
        return new Habits
        {
            ByHand = byHand,
            StepS = byHand ? Of(600.0, 600, 900) : Of(2.0, 5, 10, 10, 30, 60, 120),
            DecimalComma = comma,
            Delimiter = comma ? Of(';', '\t') : Of(',', ',', ';', '\t', '|'),
            Form = form,
            Temperature = Of("°C", "°C", "°C", "K", "°F"),
            Pressure = Of("barg", "barg", "bara", "psig", "kPaa"),
            Noise = Of(Enum.GetValues<NoiseKind>()),
            Channels = channels,
            VesselSensor = Of("thermocouple-K", "thermocouple-K", "thermocouple-T"),
            FromS = byHand ? -600 : Chance(0.15) ? 300 + 2700 * random.NextDouble() : -60 - (SecondPlan.RestS - 60) * random.NextDouble(),
            NotesStart = byHand || Chance(0.75),
            NotesStop = Chance(0.75),
            KeepsWarmUp = !byHand ? Chance(0.8) : Chance(0.5),
            Weighings = set == SensorSet.Bare ? 0 : set == SensorSet.Usual ? (Chance(0.8) ? 1 : 0) : Of(1, 2, 2, 2),
            Gaps = !byHand && Chance(0.25) ? [(gapAt, gapAt + 300 + 1800 * random.NextDouble())] : [],
            Spikes = !byHand && Chance(0.3) ? 0.0005 : 0,
            Frozen = !byHand && channels.Length > 1 && Chance(0.12) ? (Of(channels[1..]), stillAt, stillAt + 5400) : ("", 0, 0),
            Jump = !byHand && form != ClockForm.ElapsedMinutes && Chance(0.12) ? (jumpAt, Of(-3600.0, 3600, -420, 540)) : (0, 0),
            AheadS = !byHand && form != ClockForm.ElapsedMinutes && Chance(0.3) ? 60 * Of(-4, -2, 2, 3, 5) : 0,
            SaysAhead = Chance(0.6),
            Preamble = Chance(0.3),
            NoHeadings = Chance(0.1),
            Milliamperes = Chance(0.15),
            SaysRoom = Chance(0.8),
        };
    }
}
