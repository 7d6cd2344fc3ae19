namespace Coldwright.Blind.SecondHand;

/// <summary>What a sensor's noise is like.</summary>
public enum NoiseKind
{
    /// <summary>Every sample for itself.</summary>
    White,
    /// <summary>Terminals that warm and cool drag all thermocouples along within half an hour.</summary>
    Wandering,
    /// <summary>Few digits.</summary>
    Coarse,
    /// <summary>Bursts, when a motor nearby starts.</summary>
    Bursts,
}
