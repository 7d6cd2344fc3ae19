using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Streams;
using Coldwright.Numerics;

namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Solves an exchanger alone, from the conditions at its inlets: makes the property tables, as many isobars as the pressure drops
/// ask for, and widens them where a stream leaves them.
/// </summary>
public static class RecuperatorStudy
{
    // a pressure drop below this share moves boiling and dew points by less than about 0.05 K
    private const double SmallDrop = 0.005, MarginK = 4, WiderK = 15, Beyond = 1.2;

    /// <summary>Solves.</summary>
    /// <param name="recuperator">The exchanger.</param>
    /// <param name="flash">Flash of the streams' model.</param>
    /// <param name="transport">Transport properties of the same substances.</param>
    /// <param name="hot">Warm stream.</param>
    /// <param name="cold">Cold stream.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public static RecuperatorResult Solve(DistributedRecuperator recuperator, Flash flash, TransportModel transport, StreamCondition hot, StreamCondition cold, CancellationToken cancel = default)
    {
        double hotK = Temperature(flash, hot, "warm"), coldK = Temperature(flash, cold, "cold");
        double warmest = Math.Max(hotK, coldK), coldest = Math.Min(hotK, coldK);
        if (recuperator.Leak is { ConductancePerLength: > 0 } leak) (warmest, coldest) = (Math.Max(warmest, leak.EnvironmentK), Math.Min(coldest, leak.EnvironmentK));
        try
        {
            return Within(recuperator, flash, transport, hot, cold, coldest - MarginK, warmest + MarginK, cancel);
        }
        catch (SolveException e) when (e.Report.Status == SolveStatus.Outside)
        {
            // a large pressure drop cools a boiling stream below its inlet: once more with room for it
            return Within(recuperator, flash, transport, hot, cold, coldest - WiderK, warmest + WiderK, cancel);
        }
    }

    private static RecuperatorResult Within(DistributedRecuperator recuperator, Flash flash, TransportModel transport, StreamCondition hot, StreamCondition cold, double coldestK, double warmestK, CancellationToken cancel)
    {
        StreamTable Table(StreamCondition s) => StreamTable.Create(flash, transport, [.. s.Composition], [s.PressurePa], coldestK, warmestK, cancel: cancel);
        StreamTable hotTable = Table(hot), coldTable = Table(cold);
        var options = recuperator.Options;
        RecuperatorResult? first = null;
        if (options.PressureDrop)
        {
            var quick = new DistributedRecuperator(recuperator.Geometry, recuperator.Wall, recuperator.Leak, options with { Cells = Math.Max(8, options.Cells / 4 * 2), GridError = false, Band = false });
            first = quick.Solve(Inlet(hot, hotTable), Inlet(cold, coldTable), null, cancel);
            hotTable = Wider(hotTable, first.Hot);
            coldTable = Wider(coldTable, first.Cold);
        }
        return recuperator.Solve(Inlet(hot, hotTable), Inlet(cold, coldTable), first, cancel);

        StreamTable Wider(StreamTable table, RecuperatorStream stream)
        {
            double drop = stream.PressureDropPa, share = Math.Abs(drop) / stream.InletPressurePa;
            if (share < SmallDrop) return table;
            double end = stream.InletPressurePa - Math.Min(Beyond * drop, 0.75 * stream.InletPressurePa);
            table = table.WithIsobar(flash, transport, end, cancel);
            return share < 0.25 ? table : table.WithIsobar(flash, transport, Math.Sqrt(end * stream.InletPressurePa), cancel);
        }
    }

    private static StreamInlet Inlet(StreamCondition s, StreamTable table) => double.IsNaN(s.TemperatureK)
        ? new StreamInlet(table, s.MolarFlow, s.MolarEnthalpy, s.PressurePa)
        : StreamInlet.AtTemperature(table, s.MolarFlow, s.TemperatureK, s.PressurePa);

    private static double Temperature(Flash flash, StreamCondition s, string name)
    {
        if (s.Composition.Count != flash.Model.Count) throw new ArgumentException($"composition of the {name} stream needs {flash.Model.Count} mole fractions, got {s.Composition.Count}");
        GeometryGuard.Positive(s.PressurePa, $"pressure of the {name} stream", "Pa");
        GeometryGuard.Positive(s.MolarFlow, $"molar flow of the {name} stream", "mol/s");
        if (double.IsNaN(s.TemperatureK)) return flash.PressureEnthalpy(s.PressurePa, s.MolarEnthalpy, [.. s.Composition]).TemperatureK;
        GeometryGuard.Positive(s.TemperatureK, $"inlet temperature of the {name} stream", "K");
        return s.TemperatureK;
    }
}
