using Coldwright.Fluids.Substances;

namespace Coldwright.Design.Charging;

/// <summary>How a loop is to be filled. SI, pressures absolute.</summary>
public sealed record ChargeOptions
{
    /// <summary>What is to be charged; null: what the file says.</summary>
    public Composition? Mixture { get; init; }
    /// <summary>How much, kg; null: what the file says, by weight or by its standstill pressure.</summary>
    public double? MassKg { get; init; }
    /// <summary>Pressure that the pump leaves, Pa; null: what the file says, else <see cref="UsualVacuumPa"/>.</summary>
    public double? VacuumPa { get; init; }
    /// <summary>Rinses with dry gas, each followed by evacuation, 0..10; null: as many as bring air below <see cref="AllowedAir"/>.</summary>
    public int? Rinses { get; init; }
    /// <summary>Pressure of the gas let in for a rinse, Pa; null: 0.5 bar above the room's.</summary>
    public double? RinsePa { get; init; }
    /// <summary>Standard deviation of the scale, kg, above 0 to 1.</summary>
    public double ScaleKg { get; init; } = 1e-3;
    /// <summary>Standard deviation of the gauge, Pa, above 0 to 1e6.</summary>
    public double GaugePa { get; init; } = 5e3;
    /// <summary>Standard deviation of the temperature that the gas has taken when the gauge is read, K, 0..20.</summary>
    public double GasTemperatureK { get; init; } = 1;
    /// <summary>What a mole fraction may be off in the end, 1e-4..0.1.</summary>
    public double AllowedFraction { get; init; } = 0.005;
    /// <summary>Mass lost by a leak since it was filled, kg; null: none, or told by <see cref="NowPa"/>.</summary>
    public double? LostKg { get; init; }
    /// <summary>Standstill pressure now, everything warm, Pa; null: not read.</summary>
    public double? NowPa { get; init; }
    /// <summary>True: the loop is closed with this charge to see what circulates once it is cold.</summary>
    public bool Circulation { get; init; } = true;

    // Our assumptions: what a two-stage pump leaves in a tight, dry loop; a hundred-thousandth of air is no longer seen in the charge.
    internal const double UsualVacuumPa = 50, AllowedAir = 1e-5, RinseOverRoomPa = 5e4;

    internal void Check(double roomPa)
    {
        Within(MassKg, 1e-3, 100, "kg", "mass");
        Within(VacuumPa, 0.01, 0.5 * roomPa, "Pa", "vacuum");
        Within(RinsePa, 0.5 * roomPa, 2e6, "Pa", "rinse pressure");
        if (Rinses is < 0 or > 10) throw new ArgumentException($"rinses: {Rinses}; 0 to 10 are expected", nameof(Rinses));
        Within(ScaleKg, 1e-6, 1, "kg", "scale");
        Within(GaugePa, 1, 1e6, "Pa", "gauge");
        Within(GasTemperatureK, 0, 20, "K", "gas temperature");
        Within(AllowedFraction, 1e-4, 0.1, "mol/mol", "allowed fraction");
        Within(LostKg, 1e-6, 100, "kg", "lost mass");
        Within(NowPa, roomPa * 0.1, 1e8, "Pa", "standstill pressure now");
    }

    private static void Within(double? value, double low, double high, string unit, string name)
    {
        if (value is { } v && !(v >= low && v <= high)) throw new ArgumentException(FormattableString.Invariant($"{name} is {v} {unit}; {low} to {high} {unit} are expected"), name);
    }
}
