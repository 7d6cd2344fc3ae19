using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Every state round a closed loop, each from its own flash at the pressure and enthalpy that the balances found.</summary>
internal sealed record ClosedStates
{
    public required FluidState Suction { get; init; }
    public required FluidState Discharge { get; init; }
    public required FluidState Aftercooled { get; init; }
    public required FluidState BeforePrecooler { get; init; }
    public required FluidState RecuperatorInlet { get; init; }
    public required FluidState ThrottleInlet { get; init; }
    public required FluidState ThrottleOutlet { get; init; }
    public required FluidState CoilOutlet { get; init; }
    public required FluidState LowOutlet { get; init; }
    /// <summary>After the tubes that end at the recuperator's warm end.</summary>
    public required FluidState Returned { get; init; }
    public required FluidState AfterWarmExchanger { get; init; }
    /// <summary>Gas from the buffer before it joins the suction; null without one.</summary>
    public FluidState? Bypass { get; init; }

    public static ClosedStates Of(LoopPass p, Flash flash)
    {
        var z = p.Tables.Z;
        FluidState High(double h, double pa) => flash.PressureEnthalpy(pa, h, z, p.Tables.High.Temperature(h, pa, out _));
        FluidState Low(double h, double pa) => flash.PressureEnthalpy(pa, h, z, p.Tables.Low.Temperature(h, pa, out _));
        double lowEnd = p.Recuperator.Cold.OutletPressurePa;
        return new ClosedStates
        {
            Suction = Low(p.State.SuctionEnthalpy, p.State.SuctionPa),
            Discharge = p.Compressor.Discharge,
            Aftercooled = High(p.Aftercooled, p.AftercooledPa),
            BeforePrecooler = High(p.BeforePrecooler, p.AftercooledPa),
            RecuperatorInlet = High(p.RecuperatorInlet, p.AftercooledPa),
            ThrottleInlet = High(p.State.ThrottleEnthalpy, p.Recuperator.Hot.OutletPressurePa),
            ThrottleOutlet = Low(p.State.ThrottleEnthalpy, p.State.CoilPa),
            CoilOutlet = Low(p.CoilOutlet, p.CoilOutletPa),
            LowOutlet = Low(p.Recuperator.Cold.OutletEnthalpy, lowEnd),
            Returned = Low(p.ReturnGas, lowEnd),
            AfterWarmExchanger = Low(p.AfterWarmExchanger, p.State.SuctionPa),
            Bypass = p.Buffer is null ? null : Low(p.BypassEnthalpy, p.State.SuctionPa),
        };
    }
}
