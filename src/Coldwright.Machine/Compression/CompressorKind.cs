namespace Coldwright.Machine.Compression;

/// <summary>How a hermetic compressor is built, as far as the loss model tells machines apart.</summary>
public enum CompressorKind
{
    /// <summary>Rolling piston; the shell stands at discharge pressure and gas leaves past the motor.</summary>
    Rotary,
    /// <summary>Piston and crank; the shell stands at suction pressure and gas is drawn in past the motor.</summary>
    Reciprocating,
}
