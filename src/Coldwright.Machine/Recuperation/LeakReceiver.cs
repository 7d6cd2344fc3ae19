namespace Coldwright.Machine.Recuperation;

/// <summary>Where heat from the room arrives.</summary>
public enum LeakReceiver
{
    /// <summary>The warm stream: it flows in the outer passage.</summary>
    Hot,
    /// <summary>The cold stream: it flows in the outer passage.</summary>
    Cold,
    /// <summary>The metal: both tubes lie open to the insulation.</summary>
    Wall,
}
