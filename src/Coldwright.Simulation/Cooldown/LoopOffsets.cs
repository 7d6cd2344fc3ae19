namespace Coldwright.Simulation.Cooldown;

/// <summary>What the parts' own models give over their maps.</summary>
/// <param name="LnFlow">ln of the compressor's volume flow.</param>
/// <param name="LnWork">ln of its work.</param>
/// <param name="DischargeK">Of its discharge, K.</param>
/// <param name="LnThrottle">ln of the throttle's flow.</param>
internal readonly record struct LoopOffsets(double LnFlow, double LnWork, double DischargeK, double LnThrottle)
{
    public static LoopOffsets operator -(LoopOffsets a, LoopOffsets b) => new(a.LnFlow - b.LnFlow, a.LnWork - b.LnWork, a.DischargeK - b.DischargeK, a.LnThrottle - b.LnThrottle);

    public static LoopOffsets operator +(LoopOffsets a, LoopOffsets b) => new(a.LnFlow + b.LnFlow, a.LnWork + b.LnWork, a.DischargeK + b.DischargeK, a.LnThrottle + b.LnThrottle);

    /// <summary>All of them times a number.</summary>
    public LoopOffsets Times(double k) => new(k * LnFlow, k * LnWork, k * DischargeK, k * LnThrottle);
}
