namespace Coldwright.Simulation.Cooldown;

/// <summary>What the machine does at one moment. W, K, Pa, mol/s.</summary>
internal record struct PlantPoint
{
    public double LoadK, HighPa, DischargePa, SuctionPa, CoilPa, SuctionK, Flow, CompressorFlow, Bypass, BufferPa, BufferContent, ThrottleFlow, ThrottleK, ThrottlePa, ThrottleEnthalpy, CoilOutEnthalpy, CoilOutPa;
    public double RecuperatorInlet, RecuperatorInletK, BeforePrecooler, ReturnEnthalpy, ReturnGas, DischargeK, Moles, ChargeError;
    public double CompressorW, PowerW, PrecoolingW, PrecoolerK, CoolingW, CoilW, WallLeakW, PenetrationLeakW, AlongLeakW, WarmEndLeakW, RecuperatorStoredW, LoadStoredW, InsulationStoredW, LoadW;

    /// <summary>Into the cold space from the room, W: at its outside, so that heat the insulation takes up or gives off is not in it.</summary>
    public readonly double LeakW => WallLeakW + PenetrationLeakW + AlongLeakW;
    /// <summary>Heat taken out of metal, load and insulation, W.</summary>
    public readonly double StoredW => RecuperatorStoredW + LoadStoredW + InsulationStoredW;
}
