namespace Coldwright.Machine.Description;

/// <summary>What cools a compressor's shell.</summary>
public enum ShellCoolingWord
{
    /// <summary>Still room air.</summary>
    StillAir,
    /// <summary>A fan that blows on it.</summary>
    Fan,
}
