namespace Coldwright.Simulation.ClosedLoop;

/// <summary>In what state a passage of the loop is full of mixture.</summary>
internal enum VolumeState
{
    /// <summary>Hot gas at the discharge pressure.</summary>
    Discharge,
    /// <summary>High side at the aftercooler's temperature.</summary>
    Aftercooled,
    /// <summary>High side as it enters the recuperator.</summary>
    Precooled,
    /// <summary>High side behind the recuperator.</summary>
    ColdHigh,
    /// <summary>Behind the throttle.</summary>
    Throttled,
    /// <summary>Between coil and recuperator.</summary>
    ColdLow,
    /// <summary>Returning gas and suction.</summary>
    Suction,
    /// <summary>The capillary itself.</summary>
    Capillary,
}

/// <summary>A passage with its volume, m3, its flow area (0: slow, no slip), m2.</summary>
internal sealed record LoopVolume(string Name, VolumeState State, double VolumeM3, double AreaM2);
