using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Everything that hangs on what circulates: property tables, and the parts' maps brought into line with the parts' own models. Immutable.</summary>
internal sealed record LoopMap
{
    public required LoopTables Tables { get; init; }
    /// <summary>Films, friction and hold-up on these tables.</summary>
    public required PlantPassages Passages { get; init; }
    /// <summary>Exact runs over the maps.</summary>
    public (double LnFlow, double LnWork, double DischargeK) Compressor { get; init; }
    public double LnThrottle { get; init; }
    /// <summary>Conductance of the precooler's evaporator, W/K.</summary>
    public double PrecoolerWPerK { get; init; }
    /// <summary>The warm exchanger's heat over that of one with constant heat capacities.</summary>
    public double WarmExchanger { get; init; } = 1;
    /// <summary>Density of the discharge gas over that scaled from the aftercooler's as a perfect gas.</summary>
    public double HotGas { get; init; } = 1;
    /// <summary>Enthalpy at the aftercooler's outlet, and of room-warm suction gas: value and two slopes with ln p at <see cref="LnHigh"/>, <see cref="LnLow"/>.</summary>
    public required (double C0, double C1, double C2) Aftercooled { get; init; }
    public required (double C0, double C1, double C2) RoomWarm { get; init; }
    public required double LnHigh { get; init; }
    public required double LnLow { get; init; }

    public double AftercooledEnthalpy(double pressurePa) => Along(Aftercooled, Math.Log(pressurePa) - LnHigh);
    public double RoomWarmEnthalpy(double pressurePa) => Along(RoomWarm, Math.Log(pressurePa) - LnLow);

    private static double Along((double C0, double C1, double C2) c, double x) => c.C0 + x * (c.C1 + x * c.C2);

    /// <summary>The enthalpies of a temperature over a band of pressure.</summary>
    public static ((double, double, double) Coefficients, double Ln) Fit(Machine.Streams.StreamTable table, double temperatureK, double fromPa, double toPa)
    {
        double middle = 0.5 * (Math.Log(fromPa) + Math.Log(toPa)), half = 0.5 * (Math.Log(toPa) - Math.Log(fromPa)), t = Math.Clamp(temperatureK, table.ColdestK, table.WarmestK);
        double a = table.Enthalpy(t, fromPa), b = table.Enthalpy(t, Math.Exp(middle)), c = table.Enthalpy(t, toPa);
        return ((b, (c - a) / (2 * half), (a + c - 2 * b) / (2 * half * half)), middle);
    }
}
