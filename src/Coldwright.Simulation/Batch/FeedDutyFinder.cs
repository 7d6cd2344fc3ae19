using Coldwright.Machine.Feed;

namespace Coldwright.Simulation.Batch;

/// <summary>How long the feed compressor may run and must rest, from its heat.</summary>
internal static class FeedDutyFinder
{
    private const double RestBelowK = 25;
    private const int Slices = 60;

    public static FeedDuty? Of(BatchCooler cooler, double dischargePa)
    {
        if (cooler.Compressor is not { } description || cooler.SuctionPa is null) return null;
        var machine = new FeedCompressor(description, cooler.Product.Fork().Phase, cooler.RoomK);
        double suction = cooler.Receiver?.PressurePa ?? cooler.SuctionPa.Value;
        double steady = machine.SteadyShellK(cooler.RoomK, suction, dischargePa), shell = Math.Min(steady, machine.MaximumShellK);
        // the gas may be too hot before the shell is
        double limit = machine.MaximumShellK;
        while (limit > cooler.RoomK + RestBelowK && machine.At(cooler.RoomK, suction, dischargePa, limit).DischargeK > machine.MaximumDischargeK) limit -= 1;
        bool limited = steady > limit;
        var at = machine.At(cooler.RoomK, suction, dischargePa, limited ? limit : shell);
        double? run = null, rest = null;
        if (limited)
        {
            double low = Math.Max(cooler.RoomK + 1, limit - RestBelowK), slice = (limit - low) / Slices, up = 0, down = 0;
            for (int i = 0; i < Slices; i++)
            {
                var p = machine.At(cooler.RoomK, suction, dischargePa, low + (i + 0.5) * slice);
                up += machine.HeatCapacityJPerK * slice / (p.ShellGainW - p.ShellLossW);
                down += machine.HeatCapacityJPerK * slice / p.ShellLossW;
            }
            (run, rest) = (up, down);
        }
        return new(steady, machine.MaximumShellK, limited ? run!.Value / (run.Value + rest!.Value) : 1, run, rest, at.FlowKgPerS, at.DischargeK, machine.MaximumDischargeK, at.VolumetricEfficiency);
    }
}
