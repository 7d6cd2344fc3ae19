using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Oil;

/// <summary>A value with its low and high ends.</summary>
/// <param name="Low">Low end.</param>
/// <param name="Value">Middle.</param>
/// <param name="High">High end.</param>
public sealed record Banded(double Low, double Value, double High);

/// <summary>What the oil does.</summary>
public sealed record OilCircuitResult
{
    /// <summary>Oil leaving the compressor, kg/s.</summary>
    public required Banded OilFlow { get; init; }
    /// <summary>Oil caught by the separator, kg/s.</summary>
    public required double CaughtFlow { get; init; }
    /// <summary>Time for the used share of the sump to fill, s; a band of x2 either way covers circulation and separator.</summary>
    public required Banded FillTimeS { get; init; }
    /// <summary>Interval between openings to set on the timer, s: the short end of the fill time, so that the sump never overflows.</summary>
    public required double IntervalS { get; init; }
    /// <summary>Time for the used share of the sump to flow back, s; a band of x2 either way covers the oil's viscosity.</summary>
    public required Banded DrainTimeS { get; init; }
    /// <summary>Open time to set, s: the oil that the middle flow brings in one interval, at the slow end of the drain time.</summary>
    public required double OpenTimeS { get; init; }
    /// <summary>Oil through the return line, kg/s.</summary>
    public required double ReturnFlow { get; init; }
    /// <summary>Reynolds number of that oil.</summary>
    public required double ReturnReynolds { get; init; }
    /// <summary>Gas through the return line once it is dry, kg/s.</summary>
    public required double GasThroughLine { get; init; }
    /// <summary>Gas that goes back to suction per opening after the oil has gone, kg: at the middle drain time; the high end with the fast one.</summary>
    public required Banded GasPerOpeningKg { get; init; }
    /// <summary>That gas over all gas compressed: the share of capacity lost.</summary>
    public required Banded LostCapacityShare { get; init; }
    /// <summary>Time until half of the compressor's oil is gone when none returns, s.</summary>
    public required double HalfLostWithoutReturnS { get; init; }
    /// <summary>Oil that passes separator and trap to the cold end, kg/s.</summary>
    public required Banded ToColdEnd { get; init; }
    /// <summary>The same over gas flow by mass.</summary>
    public required Banded ToColdEndShare { get; init; }
    /// <summary>Oil that freezes to the wall at the cold end, kg/s; a factor of ten either way at the middle of what arrives.</summary>
    public required Banded FrozenFlow { get; init; }
    /// <summary>Time in which that closes the cold bore, s: an order of magnitude.</summary>
    public required Banded PlugTimeS { get; init; }
    /// <summary>(Oil out of the compressor - caught - trapped - passed)/oil out.</summary>
    public required double MassBalanceError { get; init; }
    /// <summary>Level in the sump over its volume against time, s, through three intervals: to draw.</summary>
    public required IReadOnlyList<(double TimeS, double LevelShare)> Level { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}

/// <summary>Oil in the loop: how fast the separator fills, how long the timed valve opens, what the cold end gets (docs/theory/oil.md).</summary>
public static class OilCircuit
{
    private const double Band = 2, SettlingBand = 10;

    /// <summary>The oil circuit in steady running.</summary>
    /// <param name="input">Flows, separator, return line.</param>
    public static OilCircuitResult Run(OilCircuitInput input)
    {
        input.Check();
        var usual = OilCircuitInput.UsualCirculation(input.Kind);
        double share = input.Circulation ?? usual.Middle;
        // a measured circulation is still no better than a factor
        var circulation = input.Circulation is null ? new Banded(usual.Low, share, usual.High) : new Banded(share / 1.5, share, share * 1.5);
        var oil = new Banded(circulation.Low * input.GasMassFlow, share * input.GasMassFlow, circulation.High * input.GasMassFlow);
        double caught = input.SeparatorEfficiency * oil.Value, passed = (1 - input.SeparatorEfficiency) * oil.Value;
        double trapped = input.ColdTrapEfficiency * passed, cold = passed - trapped;
        double used = input.UsedShare * input.SumpVolumeM3 * input.OilDensityKgPerM3;

        double fill = caught > 0 ? used / caught : double.PositiveInfinity, interval = fill / Band;
        var line = OilReturnLine.Flow(input.HighPressurePa - input.SuctionPressurePa, input.ReturnBoreM, input.ReturnLengthM, input.OilDensityKgPerM3, input.OilViscosityM2PerS);
        double drain = used / line.MassFlow;
        double perInterval = double.IsFinite(fill) ? caught * interval : 0;
        double middleOpen = perInterval / line.MassFlow, open = middleOpen * Band;
        double gas = OilReturnLine.GasFlow(input);
        // the line runs dry before the valve shuts: never, on the average, at the middle
        var perOpening = new Banded(0, (open - middleOpen) * gas, (open - middleOpen / Band) * gas);
        double compressed = input.GasMassFlow * interval;
        double Lost(double kg) => double.IsFinite(interval) ? Math.Min(kg / compressed, 1) : 0;
        double Low(double efficiency, double flow) => (1 - efficiency) * flow * (1 - input.ColdTrapEfficiency);
        var toCold = new Banded(Low(input.SeparatorEfficiencyHigh, oil.Low), cold, Low(input.SeparatorEfficiencyLow, oil.High));
        var frozen = new Banded(cold * input.SettlingShare / SettlingBand, cold * input.SettlingShare, cold * Math.Min(input.SettlingShare * SettlingBand, 1));
        double plug = Math.PI / 4 * input.ColdBoreM * input.ColdBoreM * input.PlugLengthM * input.OilDensityKgPerM3;
        double Plug(double flow) => flow > 0 ? plug / flow : double.PositiveInfinity;
        var result = new OilCircuitResult
        {
            OilFlow = oil,
            CaughtFlow = caught,
            FillTimeS = new Banded(fill / Band, fill, fill * Band),
            IntervalS = interval,
            DrainTimeS = new Banded(drain / Band, drain, drain * Band),
            OpenTimeS = open,
            ReturnFlow = line.MassFlow,
            ReturnReynolds = line.Reynolds,
            GasThroughLine = gas,
            GasPerOpeningKg = perOpening,
            LostCapacityShare = new Banded(0, Lost(perOpening.Value), Lost(perOpening.High)),
            HalfLostWithoutReturnS = 0.5 * input.OilChargeKg / oil.Value,
            ToColdEnd = toCold,
            ToColdEndShare = new Banded(toCold.Low / input.GasMassFlow, toCold.Value / input.GasMassFlow, toCold.High / input.GasMassFlow),
            FrozenFlow = frozen,
            PlugTimeS = new Banded(Plug(frozen.High), Plug(frozen.Value), Plug(frozen.Low)),
            MassBalanceError = (oil.Value - caught - trapped - cold) / oil.Value,
            Level = Levels(input, caught, line.MassFlow, interval, open),
            Warnings = [],
        };
        return result with { Warnings = Warnings(input, result, used) };
    }

    private static List<(double, double)> Levels(OilCircuitInput input, double caught, double back, double interval, double open)
    {
        var points = new List<(double, double)> { (0, 0) };
        if (!double.IsFinite(interval)) return points;
        double sump = input.SumpVolumeM3 * input.OilDensityKgPerM3, time = 0, level = 0;
        for (int i = 0; i < 3; i++)
        {
            level += caught * interval;
            points.Add((time += interval, level / sump));
            double empties = Math.Min(open, level / Math.Max(back - caught, 1e-300));
            level = Math.Max(0, level - (back - caught) * empties);
            points.Add((time += empties, level / sump));
            if (open > empties) points.Add((time += open - empties, 0));
        }
        return points;
    }

    private static List<string> Warnings(OilCircuitInput input, OilCircuitResult r, double usedKg)
    {
        var said = new List<string>
        {
            "oil: circulation, separator efficiency and what freezes are our assumptions; check interval and open time against a sight glass",
        };
        if (input.Circulation is null) said.Add(FormattableString.Invariant(
            $"oil: circulation of a {input.Kind.ToString().ToLowerInvariant()} machine taken as {100 * r.OilFlow.Value / input.GasMassFlow:0.##} % of the gas flow ({100 * r.OilFlow.Low / input.GasMassFlow:0.##} to {100 * r.OilFlow.High / input.GasMassFlow:0.##} %)"));
        if (r.ReturnFlow <= r.CaughtFlow) said.Add(FormattableString.Invariant(
            $"oil: the return line passes {1e3 * r.ReturnFlow:0.###} g/s, less than the {1e3 * r.CaughtFlow:0.###} g/s caught: the separator overflows even with the valve open; use a wider or shorter line"));
        else if (r.OpenTimeS < 0.2) said.Add(FormattableString.Invariant(
            $"oil: an open time of {r.OpenTimeS:0.###} s is shorter than a common solenoid valve keeps; use a narrower return line"));
        if (r.LostCapacityShare.Value > 0.03) said.Add(FormattableString.Invariant(
            $"oil: gas through the open return line costs about {100 * r.LostCapacityShare.Value:0.#} % of the flow (up to {100 * r.LostCapacityShare.High:0.#} %); use a narrower line"));
        if (usedKg > 0.4 * input.OilChargeKg) said.Add(FormattableString.Invariant(
            $"oil: the separator holds {1e3 * usedKg:0} g before it opens, {100 * usedKg / input.OilChargeKg:0} % of the compressor's charge; open earlier"));
        if (r.ToColdEnd.Value > 0) said.Add(FormattableString.Invariant(
            $"oil: about {1e6 * r.ToColdEndShare.Value:0} ppm by mass ({1e6 * r.ToColdEndShare.Low:0} to {1e6 * r.ToColdEndShare.High:0}) reaches the cold end; with {100 * input.SettlingShare:0.###} % of it freezing there (our guess, x10 either way) a bore of {1e3 * input.ColdBoreM:0.##} mm closes in about {Duration(r.PlugTimeS.Value)} ({Duration(r.PlugTimeS.Low)} to {Duration(r.PlugTimeS.High)})"));
        return said;
    }

    private static string Duration(double seconds) => seconds switch
    {
        < 120 => FormattableString.Invariant($"{seconds:0} s"),
        < 7200 => FormattableString.Invariant($"{seconds / 60:0} min"),
        < 172800 => FormattableString.Invariant($"{seconds / 3600:0} h"),
        _ => FormattableString.Invariant($"{seconds / 86400:0} d"),
    };
}
