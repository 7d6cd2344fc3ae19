using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Everything that hangs on what circulates: property tables with their slopes along the composition, and the parts' maps brought into line with the parts' own models.</summary>
internal sealed record LoopMap
{
    /// <summary>At the composition in the middle.</summary>
    public required LoopTables Tables { get; init; }
    /// <summary>Tables about it; null: none could be made.</summary>
    public (StreamMover High, StreamMover Low)? Movers { get; init; }
    /// <summary>True: the composition stays in the middle.</summary>
    public bool IsHeld { get; init; }
    /// <summary>Load down to which the tables serve, K.</summary>
    public double LoadToK { get; init; }
    /// <summary>Whether the high side's tables still follow the phases; null: nothing moves.</summary>
    public BoilingWatch? Boiling { get; init; }
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
    /// <summary>How they answer to ln of the discharge and of the suction pressure.</summary>
    public LoopOffsets OffsetsByDischarge { get; init; }
    public LoopOffsets OffsetsBySuction { get; init; }
    /// <summary>Where they were found: ln of those pressures (Pa).</summary>
    public double LnDischarge { get; init; }
    public double LnSuction { get; init; }
    /// <summary>How ln of the throttle's flow over its map answers to the temperature before it, 1/K, and where that was found, K.</summary>
    public (double Slope, double AtK) ThrottleByK { get; init; }
    /// <summary>How ln of the molar density of the buffer's gas answers to the composition, 1/Pa: in proportion to its pressure; empty without a buffer.</summary>
    public double[] BufferSlopes { get; init; } = [];
    /// <summary>Of the oil in the compressor, K; 0 where what it dissolves is not known.</summary>
    public double OilK { get; init; }
    /// <summary>Conductance of the precooler's evaporator, W/K.</summary>
    public double PrecoolerWPerK { get; init; }
    /// <summary>The warm exchanger's heat over that of <see cref="WarmEnd"/>.</summary>
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

    /// <summary>What the parts' models give over their maps.</summary>
    /// <param name="step">Composition less that in the middle, ln(z_i/z_1).</param>
    /// <param name="dischargePa">Pa.</param>
    /// <param name="suctionPa">Pa.</param>
    public LoopOffsets OffsetsAt(ReadOnlySpan<double> step, double dischargePa, double suctionPa)
    {
        var o = Offsets + OffsetsByDischarge.Times(Held(Math.Log(dischargePa) - LnDischarge, MostLn)) + OffsetsBySuction.Times(Held(Math.Log(suctionPa) - LnSuction, MostLn));
        for (int i = 0; i < OffsetSlopes.Length; i++) o += OffsetSlopes[i].Times(step[i]);
        return o;
    }

    /// <summary>The same at a moment, of a composition ln(z_i/z_1).</summary>
    public LoopOffsets OffsetsOf(double[] xi, in PlantPoint at) => OffsetsAt([.. xi.Select((v, i) => v - Middle[i])], at.DischargePa, at.SuctionPa);

    /// <summary>What the throttle's slope adds at a temperature before it (K), ln of flow.</summary>
    public double ThrottleAt(double temperatureK) => ThrottleByK.Slope * Held(temperatureK - ThrottleByK.AtK, MostK);

    // slopes are good for the neighbourhood they were found in
    private static double Held(double off, double most) => most * Math.Tanh(off / most);

    private const double MostLn = 0.3, MostK = 4;

    /// <summary>Furthest that a composition lies from the middle, in ln(z_i/z_1).</summary>
    public double Distance(ReadOnlySpan<double> xi)
    {
        double most = 0;
        for (int i = 0; i < xi.Length; i++) most = Math.Max(most, Math.Abs(xi[i] - Middle[i]));
        return most;
    }

    /// <summary>How far boiling lies from where the tables' slopes put it, or one change of phases beyond the next, K.</summary>
    public double AstrayK(ReadOnlySpan<double> xi)
    {
        if (Boiling is not { } watch || Movers is not var (high, low)) return 0;
        Span<double> step = stackalloc double[xi.Length];
        for (int i = 0; i < xi.Length; i++) step[i] = xi[i] - Middle[i];
        double boiling = watch.AstrayK(step);
        low.At(step);
        return Math.Max(boiling, Math.Max(high.PushedK, low.PushedK));
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
