using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Everything that hangs on what circulates: property tables with their slopes along the composition, and the parts' maps brought into line with the parts' own models.</summary>
internal sealed record LoopMap
{
    /// <summary>At the composition in the middle.</summary>
    public required LoopTables Tables { get; init; }
    /// <summary>Tables about it; null: none could be made, or every property is a flash.</summary>
    public (StreamMover High, StreamMover Low)? Movers { get; init; }
    /// <summary>Properties of any composition by flashes; null: by tables.</summary>
    public Func<double[], StreamTable>? Direct { get; init; }
    /// <summary>True: the composition stays in the middle.</summary>
    public bool Held { get; init; }
    /// <summary>Load down to which the tables serve, K.</summary>
    public double LoadToK { get; init; }
    /// <summary>The composition in the middle, ln(z_i/z_1) from the second substance on.</summary>
    public required double[] Middle { get; init; }
    /// <summary>Films, friction and hold-up on these tables.</summary>
    public required PlantPassages Passages { get; init; }
    /// <summary>The throttle's map next to boiling.</summary>
    public ThrottleMap.Nodes Throttle { get; } = [];
    /// <summary>Exact runs over the maps, in the middle.</summary>
    public LoopOffsets Offsets { get; init; }
    /// <summary>How those answer to the composition; empty: taken not to.</summary>
    public LoopOffsets[] OffsetSlopes { get; init; } = [];
    /// <summary>Conductance of the precooler's evaporator, W/K.</summary>
    public double PrecoolerWPerK { get; init; }
    /// <summary>The warm exchanger's heat over that of one with constant heat capacities.</summary>
    public double WarmExchanger { get; init; } = 1;
    /// <summary>Density of the discharge gas over that scaled from the aftercooler's as a perfect gas.</summary>
    public double HotGas { get; init; } = 1;
    /// <summary>Enthalpy at the aftercooler's outlet, and of room-warm suction gas: value and two slopes with ln p at <see cref="LnHigh"/>, <see cref="LnLow"/>; then how each answers to the composition.</summary>
    public required (double C0, double C1, double C2) Aftercooled { get; init; }
    public required (double C0, double C1, double C2) RoomWarm { get; init; }
    public (double C0, double C1, double C2)[] AftercooledSlopes { get; init; } = [];
    public (double C0, double C1, double C2)[] RoomWarmSlopes { get; init; } = [];
    public required double LnHigh { get; init; }
    public required double LnLow { get; init; }

    /// <summary>Furthest that a composition lies from the middle, in ln(z_i/z_1).</summary>
    public double Distance(ReadOnlySpan<double> xi)
    {
        double most = 0;
        for (int i = 0; i < xi.Length; i++) most = Math.Max(most, Math.Abs(xi[i] - Middle[i]));
        return most;
    }

    /// <summary>ln(z_i/z_1) from the second substance on.</summary>
    public static double[] Xi(IReadOnlyList<double> z) => [.. z.Skip(1).Select(v => Math.Log(v / z[0]))];

    /// <summary>Mole fractions.</summary>
    public static double[] Fractions(ReadOnlySpan<double> xi)
    {
        var z = new double[xi.Length + 1];
        double sum = z[0] = 1;
        for (int i = 0; i < xi.Length; i++) sum += z[i + 1] = Math.Exp(xi[i]);
        for (int i = 0; i < z.Length; i++) z[i] /= sum;
        return z;
    }

    /// <summary>Coefficients at a distance from the middle.</summary>
    public static (double, double, double) Moved((double C0, double C1, double C2) c, (double C0, double C1, double C2)[] slopes, ReadOnlySpan<double> step)
    {
        for (int i = 0; i < slopes.Length; i++) c = (c.C0 + step[i] * slopes[i].C0, c.C1 + step[i] * slopes[i].C1, c.C2 + step[i] * slopes[i].C2);
        return c;
    }

    /// <summary>The enthalpies of a temperature over a band of pressure, against ln p from the middle of the band.</summary>
    public static ((double, double, double) Coefficients, double Ln) Fit(StreamTable table, double temperatureK, double fromPa, double toPa)
    {
        double middle = 0.5 * (Math.Log(fromPa) + Math.Log(toPa)), half = 0.5 * (Math.Log(toPa) - Math.Log(fromPa)), t = Math.Clamp(temperatureK, table.ColdestK, table.WarmestK);
        double a = table.Enthalpy(t, fromPa), b = table.Enthalpy(t, Math.Exp(middle)), c = table.Enthalpy(t, toPa);
        return ((b, (c - a) / (2 * half), (a + c - 2 * b) / (2 * half * half)), middle);
    }

    /// <summary>How those enthalpies answer to the composition.</summary>
    public static (double, double, double)[] FitSlopes(StreamMover mover, double temperatureK, double fromPa, double toPa)
    {
        var slopes = new (double, double, double)[mover.Middle.Composition.Count - 1];
        double[] step = new double[slopes.Length];
        var ((m0, m1, m2), _) = Fit(mover.Middle, temperatureK, fromPa, toPa);
        for (int d = 0; d < slopes.Length; d++)
        {
            step[d] = StreamMover.NeighbourStep;
            var ((c0, c1, c2), _) = Fit(mover.At(step), temperatureK, fromPa, toPa);
            slopes[d] = ((c0 - m0) / StreamMover.NeighbourStep, (c1 - m1) / StreamMover.NeighbourStep, (c2 - m2) / StreamMover.NeighbourStep);
            step[d] = 0;
        }
        return slopes;
    }
}
