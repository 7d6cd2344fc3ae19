using System.Globalization;

namespace Coldwright.Machine.Compression;

/// <summary>One limit and where the machine stands.</summary>
/// <param name="Name">What is limited.</param>
/// <param name="Value">Where it stands.</param>
/// <param name="Limit">Highest allowed.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="Reason">Why there is a limit, and where its value comes from.</param>
public sealed record LimitFinding(string Name, double Value, double Limit, string Unit, string Reason)
{
    /// <summary>Above the limit.</summary>
    public bool Exceeded => Value > Limit;

    /// <summary>One sentence without its full stop.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Name} {Value:0.###}{Space}{Unit}, limit {Limit:0.###}{Space}{Unit}{(Exceeded ? ": exceeded" : "")} ({Reason})");

    private string Space => Unit.Length > 0 ? " " : "";
}

/// <summary>What a compressor may do. Null: not known, so not judged.</summary>
public sealed record CompressorLimits
{
    /// <summary>Gas in the discharge line 150 mm from the shell, K, 300..500. 107 C (225 F) is common practice.</summary>
    public double? DischargeLineK { get; init; } = 380.15;
    /// <summary>Gas at the discharge valve, K, 300..600. 150 C (300 F) is common practice; oil breaks down near 175 C.</summary>
    public double? DischargeValveK { get; init; } = 423.15;
    /// <summary>Shell, K, 300..500; a thermal protector usually opens near 120 C (common practice).</summary>
    public double? ShellK { get; init; } = 393.15;
    /// <summary>High side, Pa absolute, 1e5..2e8; from the nameplate.</summary>
    public double? DischargePressurePa { get; init; }
    /// <summary>Pressure on a shell that stands at suction pressure, Pa absolute, 1e5..2e8; from the nameplate.</summary>
    public double? SuctionPressurePa { get; init; }
    /// <summary>Discharge over suction, 1.5..100. 10 is common practice for one stage.</summary>
    public double? PressureRatio { get; init; } = 10;
    /// <summary>Electrical input, W, 5..1e5.</summary>
    public double? ElectricalPowerW { get; init; }
    /// <summary>A, 0.05..500.</summary>
    public double? CurrentA { get; init; }
    /// <summary>Shaft power over rated shaft power, 0.5..3. 1.25 is common practice for steady running.</summary>
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
        void Add(string name, double? value, double? limit, string unit, double offset, double scale, string reason)
        {
            if (value is { } v && limit is { } l && double.IsFinite(v)) found.Add(new LimitFinding(name, (v - offset) / scale, (l - offset) / scale, unit, reason));
        }
        const double zero = 273.15;
        Add("discharge line temperature", lineK, DischargeLineK, "C", zero, 1, "hotter than about 107 C on the line means the valve is near 150 C; common practice, no published source");
        Add("discharge valve temperature", valveK, DischargeValveK, "C", zero, 1, "oil cokes on the valve from about 150 C and mineral oil breaks down near 175 C; common practice, no published source");
        Add("shell temperature", shellK, ShellK, "C", zero, 1, "the motor protector opens and winding insulation ages; common practice, no published source");
        Add("discharge pressure", dischargePa, DischargePressurePa, "bar absolute", 0, 1e5, "stamped on the machine or given by its maker");
        Add("suction pressure", suctionPa, SuctionPressurePa, "bar absolute", 0, 1e5, "a shell at suction pressure is a thinner vessel; stamped on the machine or given by its maker");
        Add("pressure ratio", dischargePa / suctionPa, PressureRatio, "", 0, 1, "one stage delivers little and runs hot beyond it; common practice, no published source");
        Add("electrical power", electricalW, ElectricalPowerW, "W", 0, 1, "rated by the maker");
        Add("current", currentA, CurrentA, "A", 0, 1, "the motor protector or the wiring; rated by the maker");
        Add("motor load", motorLoad, MotorLoad, "", 0, 1, "shaft power over rated shaft power; the winding overheats when it stays above; common practice, no published source");
        return found;
    }
}
