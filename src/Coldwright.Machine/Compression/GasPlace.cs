namespace Coldwright.Machine.Compression;

/// <summary>Where on its way through a compressor a state belongs.</summary>
internal enum GasPlace
{
    /// <summary>Suction port and the gas warmed in the shell.</summary>
    Suction,
    /// <summary>Behind the suction valve.</summary>
    Throttled,
    /// <summary>In the cylinder, leak mixed in.</summary>
    Drawn,
    /// <summary>At the end of compression.</summary>
    Compressed,
    /// <summary>Behind the discharge valve.</summary>
    Valve,
    /// <summary>Discharge port.</summary>
    Discharge,
}
