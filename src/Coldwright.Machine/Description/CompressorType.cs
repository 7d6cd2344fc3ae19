namespace Coldwright.Machine.Description;

/// <summary>Compressor construction.</summary>
public enum CompressorType
{
    /// <summary>Rolling piston.</summary>
    Rotary,
    /// <summary>Piston and crank.</summary>
    Reciprocating,
}
