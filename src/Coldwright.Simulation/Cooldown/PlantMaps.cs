namespace Coldwright.Simulation.Cooldown;

/// <summary>The maps of the parts, made once for a machine and a fluid model.</summary>
internal sealed record PlantMaps(CompressorMap Compressor, ThrottleMap Throttle, PrecoolerMap? Precooler);
