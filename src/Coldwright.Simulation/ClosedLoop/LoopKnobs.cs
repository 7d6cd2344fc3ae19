namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Factors on what the parts' correlations give, each 1: shifted to carry a correlation's uncertainty to a result, or to ask what a better part would bring.</summary>
internal sealed record LoopKnobs
{
    public double CompressorFlow { get; init; } = 1;
    public double CompressorPower { get; init; } = 1;
    public double HighFilm { get; init; } = 1;
    public double LowFilm { get; init; } = 1;
    public double HighFriction { get; init; } = 1;
    public double LowFriction { get; init; } = 1;
    public double ThrottleFlow { get; init; } = 1;
    public double CoilFilm { get; init; } = 1;
    public double Leak { get; init; } = 1;
    public double PrecoolerConductance { get; init; } = 1;
    public double PrecoolerFlow { get; init; } = 1;
    public double LiquidHoldUp { get; init; } = 1;
}
