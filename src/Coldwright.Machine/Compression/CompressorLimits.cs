using Coldwright.Quantities;

namespace Coldwright.Machine.Compression;

/// <summary>One limit and where the machine stands.</summary>
/// <param name="Name">What is limited.</param>
/// <param name="Value">Where it stands.</param>
/// <param name="Limit">Highest allowed.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="Reason">Why there is a limit, and where its value comes from.</param>
public sealed record LimitFinding(string Name, double Value, double Limit, string Unit, Spoken Reason)
{
    /// <summary>Above the limit.</summary>
    public bool Exceeded => Value > Limit;

    /// <summary>One sentence without its full stop.</summary>
    public Spoken Sentence => Spoken.Of($"{Name} {Amount(Value)}, limit {Amount(Limit)}{(Exceeded ? ": exceeded" : "")} ({Reason})");

    /// <summary>The sentence in SI.</summary>
    public override string ToString() => Sentence.ToString();

    private Spoken Amount(double value) => Unit switch
    {
        "C" => Spoken.Of($"{SpokenAmount.Celsius(value + 273.15)}"),
        "bar absolute" => Spoken.Of($"{SpokenAmount.Pressure(value * 1e5, "0.##")}"),
        "" => Spoken.Of($"{value:0.##}"),
        _ => Spoken.Of($"{value:0.##} {Unit}"),
    };
}

/// <summary>What a compressor may do. Null: not known, so not judged.</summary>
public sealed record CompressorLimits
{
    private const double UsualLineK = 380.15, UsualValveK = 423.15;

    /// <summary>Gas in the discharge line 150 mm from the shell, K, 300..500. 107 C (225 F): our assumption.</summary>
    public double? DischargeLineK { get; init; } = UsualLineK;
    /// <summary>Gas at the discharge valve, K, 300..600. 150 C (300 F): our assumption; oil breaks down near 175 C.</summary>
    public double? DischargeValveK { get; init; } = UsualValveK;
    /// <summary>Shell, K, 300..500; a thermal protector usually opens near 120 C (our assumption).</summary>
    public double? ShellK { get; init; } = 393.15;
    /// <summary>High side, Pa absolute, 1e5..2e8; from the nameplate.</summary>
    public double? DischargePressurePa { get; init; }
    /// <summary>Pressure on a shell that stands at suction pressure, Pa absolute, 1e5..2e8; from the nameplate.</summary>
    public double? SuctionPressurePa { get; init; }
    /// <summary>Discharge over suction, 1.5..100. 10 for one stage: our assumption.</summary>
    public double? PressureRatio { get; init; } = 10;
    /// <summary>Electrical input, W, 5..1e5.</summary>
    public double? ElectricalPowerW { get; init; }
    /// <summary>A, 0.05..500.</summary>
    public double? CurrentA { get; init; }
    /// <summary>Shaft power over rated shaft power, 0.5..3. 1.25 for steady running: our assumption.</summary>
    public double? MotorLoad { get; init; } = 1.25;

    internal void Check()
    {
        InputCheck.Optional(DischargeLineK, 300, 500, "K", nameof(DischargeLineK));
        InputCheck.Optional(DischargeValveK, 300, 600, "K", nameof(DischargeValveK));
        InputCheck.Optional(ShellK, 300, 500, "K", nameof(ShellK));
        InputCheck.Optional(DischargePressurePa, 1e5, 2e8, "Pa", nameof(DischargePressurePa));
        InputCheck.Optional(SuctionPressurePa, 1e5, 2e8, "Pa", nameof(SuctionPressurePa));
        InputCheck.Optional(PressureRatio, 1.5, 100, "", nameof(PressureRatio));
        InputCheck.Optional(ElectricalPowerW, 5, 1e5, "W", nameof(ElectricalPowerW));
        InputCheck.Optional(CurrentA, 0.05, 500, "A", nameof(CurrentA));
        InputCheck.Optional(MotorLoad, 0.5, 3, "", nameof(MotorLoad));
    }

    /// <summary>Every limit that is known, against a working point.</summary>
    /// <param name="lineK">Gas at the discharge port, K.</param>
    /// <param name="valveK">Gas at the discharge valve, K; NaN leaves it out.</param>
    /// <param name="shellK">Shell, K.</param>
    /// <param name="suctionPa">Pa absolute.</param>
    /// <param name="dischargePa">Pa absolute.</param>
    /// <param name="electricalW">W.</param>
    /// <param name="currentA">A; null leaves it out.</param>
    /// <param name="motorLoad">Shaft over rated power; null leaves it out.</param>
    public IReadOnlyList<LimitFinding> Judge(double lineK, double valveK, double shellK, double suctionPa, double dischargePa, double electricalW, double? currentA, double? motorLoad)
    {
        var found = new List<LimitFinding>();
        void Add(string name, double? value, double? limit, string unit, double offset, double scale, Spoken reason)
        {
            if (value is { } v && limit is { } l && double.IsFinite(v)) found.Add(new LimitFinding(name, (v - offset) / scale, (l - offset) / scale, unit, reason));
        }
        const double zero = 273.15;
        Add("discharge line temperature", lineK, DischargeLineK, "C", zero, 1, Spoken.Of($"hotter than about {SpokenAmount.Celsius(UsualLineK, "0")} on the line means the valve is near {SpokenAmount.Celsius(UsualValveK, "0")}; our assumption"));
        Add("discharge valve temperature", valveK, DischargeValveK, "C", zero, 1, Spoken.Of($"oil cokes on the valve from about {SpokenAmount.Celsius(UsualValveK, "0")} and mineral oil breaks down near {SpokenAmount.Celsius(448.15, "0")}; our assumption"));
        Add("shell temperature", shellK, ShellK, "C", zero, 1, "the motor protector opens and winding insulation ages; our assumption");
        Add("discharge pressure", dischargePa, DischargePressurePa, "bar absolute", 0, 1e5, "stamped on the machine or given by its maker");
        Add("suction pressure", suctionPa, SuctionPressurePa, "bar absolute", 0, 1e5, "a shell at suction pressure is a thinner vessel; stamped on the machine or given by its maker");
        Add("pressure ratio", dischargePa / suctionPa, PressureRatio, "", 0, 1, "one stage delivers little and runs hot beyond it; our assumption");
        Add("electrical power", electricalW, ElectricalPowerW, "W", 0, 1, "rated by the maker");
        Add("current", currentA, CurrentA, "A", 0, 1, "the motor protector or the wiring; rated by the maker");
        Add("motor load", motorLoad, MotorLoad, "", 0, 1, "shaft power over rated shaft power; the winding overheats when it stays above; our assumption");
        return found;
    }
}
