namespace Coldwright.Machine.Description;

/// <summary>How the tubes of a recuperator lie.</summary>
public enum RecuperatorArrangement
{
    /// <summary>One tube inside another.</summary>
    TubeInTube,
    /// <summary>Several equal tubes inside one.</summary>
    TubesInTube,
    /// <summary>Two tubes soldered side by side.</summary>
    SideBySide,
}

/// <summary>Which tube of a tube-in-tube exchanger holds the high pressure.</summary>
public enum HighSide
{
    /// <summary>The inner tube or tubes.</summary>
    Inner,
    /// <summary>The outer tube.</summary>
    Outer,
}

/// <summary>kind <c>recuperator</c>: the long counterflow exchanger.</summary>
public sealed record RecuperatorPart : Part
{
    private readonly double? _conductanceWPerK;

    /// <summary>Overall conductance UA, W/K. Throws <see cref="Numerics.SolveException"/> that names the key when only the tubes are described.</summary>
    public double ConductanceWPerK { get => _conductanceWPerK ?? throw NotGiven.For(this, "conductance"); init => _conductanceWPerK = value; }
    /// <summary>Overall conductance UA, W/K; null when only the tubes are described.</summary>
    public double? GivenConductanceWPerK => _conductanceWPerK;
    /// <summary>Tube that holds the high pressure; null when not described.</summary>
    public Tube? HighTube { get; init; }
    /// <summary>Tube that holds the low pressure.</summary>
    public Tube? LowTube { get; init; }
    /// <summary>Length, m.</summary>
    public double? LengthM { get; init; }
    /// <summary>Pressure drop of the low-pressure stream, Pa.</summary>
    public double LowSidePressureDropPa { get; init; }
    /// <summary>How the tubes lie; null when not described. When it is given, both tubes and the length are.</summary>
    public RecuperatorArrangement? Arrangement { get; init; }
    /// <summary>Number of equal inner tubes, 1..100; 1 unless the tubes lie in a tube.</summary>
    public int Tubes { get; init; } = 1;
    /// <summary>Mean diameter of the coil it is wound to, m; null when straight.</summary>
    public double? CoilDiameterM { get; init; }
    /// <summary>Which tube holds the high pressure; means nothing side by side.</summary>
    public HighSide HighSide { get; init; } = HighSide.Inner;
    /// <summary>Width of the solder between tubes side by side, m; null otherwise.</summary>
    public double? BondWidthM { get; init; }
    /// <summary>Mean thickness of that solder, m, 0..0.01.</summary>
    public double BondThicknessM { get; init; }
    /// <summary>Conductance of the insulation around it per length, W/(m K); null when heat from the room is counted for the whole box only.</summary>
    public double? InsulationConductanceWPerMK { get; init; }
    /// <summary>Roughness of all walls, m; null: that of drawn tube.</summary>
    public double? RoughnessM { get; init; }
}
