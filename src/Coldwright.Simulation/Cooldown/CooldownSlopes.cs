namespace Coldwright.Simulation.Cooldown;

/// <summary>What of a running cooler a sensor may read or a person may ask for. SI, pressures absolute.</summary>
public enum CooldownQuantity
{
    /// <summary>Load, K.</summary>
    LoadK,
    /// <summary>Before the throttle, K; the load's while the compressor stands still.</summary>
    ThrottleInletK,
    /// <summary>Behind the coil, K; the load's while it stands still.</summary>
    CoilOutletK,
    /// <summary>Behind the precooler, K; the room's while it stands still.</summary>
    PrecooledK,
    /// <summary>Returning gas where it leaves the recuperator, K; the room's while it stands still.</summary>
    ReturnK,
    /// <summary>Suction of the compressor, K; the room's while it stands still.</summary>
    SuctionK,
    /// <summary>Discharge of the compressor, K; the room's while it stands still.</summary>
    DischargeK,
    /// <summary>High side, Pa; 0 while it stands still.</summary>
    HighPressurePa,
    /// <summary>Suction, Pa; 0 while it stands still.</summary>
    LowPressurePa,
    /// <summary>Through the throttle, kg/s.</summary>
    MassFlow,
    /// <summary>The compressor's electricity, W.</summary>
    CompressorW,
    /// <summary>All electricity, W.</summary>
    PowerW,
    /// <summary>Carried off by the streams, W.</summary>
    CoolingW,
    /// <summary>From the room into the cold, W.</summary>
    LeakW,
}

/// <summary>
/// Values and derivatives of a run's quantities at asked times. What a parameter does to the composition that circulates is in the
/// derivatives. Immutable.
/// </summary>
public sealed class CooldownSlopes
{
    private readonly double[][] _values;
    private readonly double[][][] _slopes;

    internal CooldownSlopes(double[] timeS, double[][] values, double[][][] slopes) => (TimeS, _values, _slopes) = (timeS, values, slopes);

    /// <summary>Keys of the parameters, all factors on what the parts' models give: <see cref="CourseFactors"/>.</summary>
    public IReadOnlyList<string> Parameters { get; } = PlantParameters.Ids;
    /// <summary>s from the start, rising.</summary>
    public IReadOnlyList<double> TimeS { get; }

    /// <summary>A quantity at the time of an index, in its unit.</summary>
    public double Value(CooldownQuantity quantity, int time) => _values[time][(int)quantity];

    /// <summary>Derivative of a quantity at the time of an index, in its unit, by the factor of a parameter's index in <see cref="Parameters"/>.</summary>
    public double By(int parameter, CooldownQuantity quantity, int time) => _slopes[time][parameter][(int)quantity];
}
