using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Charge;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Properties of one circulating composition along the isobars of both sides, and the compressor's model on it.</summary>
internal sealed record LoopTables
{
    /// <summary>Mole fractions that circulate.</summary>
    public required double[] Z { get; init; }
    public required StreamTable High { get; init; }
    public required StreamTable Low { get; init; }
    public required Func<CompressorDuty, CompressorPerformance> Compressor { get; init; }
    /// <summary>The buffer on this gas; null without one.</summary>
    public BufferInLoop? Buffer { get; init; }
    /// <summary>The bands of pressure and the cold end that they were made for.</summary>
    public required TableFrame Frame { get; init; }
    /// <summary>Both tables' slopes along the composition, from which neighbours follow without a flash; null where not made.</summary>
    public (StreamFamily High, StreamFamily Low)? Family { get; init; }

    /// <summary>Furthest that a composition lies from where the slopes were made, as ln of a fraction over the first one's.</summary>
    public double FromFamily(double[] z) => Family is { } f ? f.High.Distance(z) : double.PositiveInfinity;
}

/// <summary>Pressures (Pa) and coldest temperature (K) that tables are made for.</summary>
internal readonly record struct TableFrame(double HighFromPa, double HighToPa, double LowFromPa, double LowToPa, double ColdestK, double WarmestK)
{
    // isobars this far from where the solution is thought to be; between them the tables follow the phases
    private const double Reach = 1.4, Slack = 0.3;

    /// <summary>Coldest temperature of the high side where that is known to end warmer, K; null: <see cref="ColdestK"/>.</summary>
    public double? HighColdestK { get; init; }

    /// <summary>Around the pressures of a guess.</summary>
    public static TableFrame Around(double highPa, double lowOutPa, double lowInPa, double coldestK, double warmestK) =>
        new(highPa / Reach, highPa * Reach, Math.Min(lowOutPa, lowInPa) / (Reach * Reach), Math.Max(lowOutPa, lowInPa) * Reach, coldestK, warmestK);

    /// <summary>True when the pressures of a state lie within, or so little beyond that the tables still answer.</summary>
    public bool Holds(double highOutPa, double highInPa, double lowOutPa, double lowInPa, double slack = Slack) =>
        Within(highOutPa, HighFromPa, HighToPa, slack) && Within(highInPa, HighFromPa, HighToPa, slack) && Within(lowOutPa, LowFromPa, LowToPa, slack) && Within(lowInPa, LowFromPa, LowToPa, slack);

    private static bool Within(double p, double from, double to, double slack)
    {
        double place = Math.Log(p / from) / Math.Log(to / from);
        return place > -slack && place < 1 + slack;
    }
}

/// <summary>Makes tables; two threads, each with its own flash, share the work. Not thread-safe itself.</summary>
internal sealed class LoopTablesMaker(HelmholtzModel model, Hardware hardware, StreamTableOptions usual, CancellationToken cancel, StreamTableOptions? coarse = null)
{
    private readonly Flash _first = new(model), _second = new(model);
    private readonly TransportModel _firstTransport = new(model), _secondTransport = new(model);

    private HermeticCompressor? _compressor;

    /// <summary>Tables made so far.</summary>
    public int Made { get; private set; }

    /// <summary>Tables made afresh, coarser ones on the way to an answer.</summary>
    public LoopTables Make(double[] z, TableFrame f, bool rough = false)
    {
        Made++;
        var options = rough && coarse is not null ? coarse : usual;
        var (high, low) = Both(
            (flash, transport) => StreamTable.Create(flash, transport, z, [f.HighFromPa, f.HighToPa], f.HighColdestK ?? f.ColdestK, f.WarmestK, options, cancel),
            (flash, transport) => StreamTable.Create(flash, transport, z, [f.LowFromPa, f.LowToPa], f.ColdestK, f.WarmestK, options, cancel));
        return new LoopTables { Z = z, High = high, Low = low, Compressor = Compressor(z), Frame = f, Buffer = Buffer(z, f) };
    }

    /// <summary>The tables with their slopes along the composition; null where phases appear or vanish too near for slopes.</summary>
    public LoopTables? WithSlopes(LoopTables t)
    {
        if (t.Family is { } own && own.High.Distance(t.Z) == 0) return t;
        var (high, low) = Both((flash, transport) => StreamFamily.Create(t.High, flash, transport, cancel), (flash, transport) => StreamFamily.Create(t.Low, flash, transport, cancel));
        return high is null || low is null ? null : t with { Family = (high, low) };
    }

    /// <summary>Tables of another composition along the slopes; null where none were made.</summary>
    public LoopTables? Along(LoopTables near, double[] z)
    {
        if (near.Family is not { } family) return null;
        return new LoopTables { Z = z, High = family.High.At(z), Low = family.Low.At(z), Compressor = Compressor(z), Frame = near.Frame, Buffer = Buffer(z, near.Frame), Family = family };
    }

    private (T High, T Low) Both<T>(Func<Flash, TransportModel, T> high, Func<Flash, TransportModel, T> low)
    {
        T highSide = default!, lowSide;
        var work = Task.Run(() => highSide = high(_second, _secondTransport), cancel);
        try
        {
            lowSide = low(_first, _firstTransport);
        }
        finally
        {
            // whatever happened here, the other thread is done with its flash before it is used again
            ((IAsyncResult)work).AsyncWaitHandle.WaitOne();
        }
        work.GetAwaiter().GetResult();
        return (highSide, lowSide);
    }

    /// <summary>The same tables with this hardware's buffer.</summary>
    public LoopTables WithBuffer(LoopTables t) => t with { Buffer = Buffer(t.Z, t.Frame) };

    private BufferInLoop? Buffer(double[] z, TableFrame f) => hardware.Buffer is not { } input ? null
        : new BufferInLoop(input, model, z, 0.3 * f.LowFromPa, 1.5 * Math.Max(f.HighToPa, input.SetPressurePa + input.FullyOpenAbovePa), cancel);

    /// <summary>The compressor's model on a gas of a composition (mole fractions).</summary>
    public Func<CompressorDuty, CompressorPerformance> Compressor(double[] z)
    {
        if (hardware.Compressor.Map is { } map)
        {
            var mapped = new MappedCompressor(map, hardware.Compressor.Machine, model, z);
            return duty => mapped.Run(duty, cancel);
        }
        var hermetic = _compressor = _compressor?.With(z) ?? new HermeticCompressor(hardware.Compressor.Machine, model, z);
        return duty => hermetic.Run(duty, cancel);
    }
}
