using Coldwright.Fluids.EquationsOfState;
using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Charge;

/// <summary>A buffer at its steady state.</summary>
/// <param name="HighPa">High side at its valve, Pa absolute.</param>
/// <param name="PressurePa">In the buffer, Pa absolute.</param>
/// <param name="Opening">Of its valve, 0..1.</param>
/// <param name="BypassFlow">From the high side to suction, mol/s.</param>
/// <param name="Content">mol.</param>
public readonly record struct BufferState(double HighPa, double PressurePa, double Opening, double BypassFlow, double Content);

/// <summary>
/// The buffer as a loop's balances want it: a hair of opening lets a large valve fill a buffer against its small bleed, so that
/// the content hangs on the high pressure almost like a step. Along the measure used here both change smoothly: below 0 the valve
/// is shut and the high side stands at the opening pressure times e to the measure; from 0 on the buffer's own pressure rises from the
/// suction's, and the high side is what holds it there; once the valve is fully open the high side rises freely again.
/// Not thread-safe.
/// </summary>
public sealed class BufferInLoop
{
    private readonly BufferInput _input;
    private readonly BufferFlows _flows;

    /// <param name="input">Volume, valve, bleed.</param>
    /// <param name="model">Fluid model.</param>
    /// <param name="z">Mole fractions that circulate.</param>
    /// <param name="lowestPa">Lowest suction pressure that will be asked for, Pa.</param>
    /// <param name="highestPa">Highest pressure, Pa.</param>
    /// <param name="cancel">Cancels the work.</param>
    public BufferInLoop(BufferInput input, HelmholtzModel model, IReadOnlyList<double> z, double lowestPa, double highestPa, CancellationToken cancel)
    {
        input.Check();
        _input = input;
        _flows = new BufferFlows(input, new BufferContent(model, [.. z], input.TemperatureK, lowestPa, highestPa, cancel));
    }

    /// <summary>Measure of a high pressure, its valve shut or hardly open.</summary>
    /// <param name="highPa">Pa absolute.</param>
    public double Measure(double highPa) => Math.Min(Math.Log(highPa / _input.SetPressurePa), 0.5);

    /// <summary>Pressure from which heavy components condense in it, Pa; null when none do.</summary>
    public double? WetAbovePa => _flows.Gas.WetAbovePa;

    /// <summary>The state at a measure.</summary>
    /// <param name="measure">See the class.</param>
    /// <param name="suctionPa">Pa absolute.</param>
    public BufferState At(double measure, double suctionPa)
    {
        double set = _input.SetPressurePa;
        if (measure <= 0) return State(set * Math.Exp(measure), suctionPa, 0, suctionPa);
        // the measure is a share of the way in ln p from suction to the opening pressure, as long as a valve not fully open fills the buffer so far
        double buffer = suctionPa * Math.Pow(set / suctionPa, measure), leaves = _flows.Bleed(buffer, suctionPa), low = Math.Max(set, buffer), end = set + _input.FullyOpenAbovePa;
        double Surplus(double high) => (high - set) / _input.FullyOpenAbovePa * _flows.Fill(high, buffer, 1) - leaves;
        if (low < end && Surplus(end) > 0)
        {
            double held = Brent.Solve(Surplus, low, end, 1e-11 * end);
            return State(held, buffer, (held - set) / _input.FullyOpenAbovePa, suctionPa);
        }
        double top = end * Math.Exp(measure - Full(suctionPa));
        return State(top, Held(top, suctionPa), 1, suctionPa);
    }

    // the share at which the valve is just fully open
    private double Full(double suctionPa)
    {
        double set = _input.SetPressurePa, high = set + _input.FullyOpenAbovePa, held = Held(high, suctionPa);
        return Math.Log(held / suctionPa) / Math.Log(set / suctionPa);
    }

    private double Held(double highPa, double suctionPa) => Brent.Solve(p => _flows.Fill(highPa, p, 1) - _flows.Bleed(p, suctionPa), suctionPa, highPa, 1e-10 * suctionPa);

    private BufferState State(double high, double buffer, double opening, double suctionPa) =>
        new(high, buffer, opening, opening > 0 ? _flows.Bleed(buffer, suctionPa) : 0, _input.VolumeM3 * _flows.Gas.MolarDensity(buffer));
}
