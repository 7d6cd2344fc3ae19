namespace Coldwright.Machine.Description;

/// <summary>Where a part or line stands.</summary>
public enum Place
{
    /// <summary>In the room.</summary>
    Room,
    /// <summary>In the cold box.</summary>
    ColdBox,
}
