using Coldwright.Fluids.EquationsOfState;
using Coldwright.Numerics;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Why a loop does not close: which balance cannot be met, and which part is short.</summary>
internal static class WhyNot
{
    public static string Closed(Hardware h, HelmholtzModel model, LoopTarget target, SolveReport report, CancellationToken cancel)
    {
        string found = report.Advice;
        try
        {
            var (pressure, liquid) = Standstill.Of(h, model, h.ChargeMol);
            double litres = 1e3 * Standstill.VolumeM3(h);
            string rest = FormattableString.Invariant($"at rest and warm the charge of {h.ChargeMol:0.##} mol stands at {pressure / 1e5:0.#} bar absolute in {litres:0.#} L");
            if (liquid > 0.02) return FormattableString.Invariant($"{rest}, {100 * liquid:0} % of it liquid: the charge is too large for the loop, or lacks a buffer; {found}");
            if (pressure < 1.5e5) return $"{rest}: the charge is too small for the compressor to build up pressures; {found}";
            return WarmStart.TooNarrow(h, model, target, cancel) is { } narrow ? $"{narrow} ({rest})" : $"{found} ({rest})";
        }
        catch (SolveException)
        {
            return FormattableString.Invariant($"the charge of {h.ChargeMol:0.##} mol does not fit into the {1e3 * Standstill.VolumeM3(h):0.#} L of the loop as gas; {found}");
        }
    }
}
