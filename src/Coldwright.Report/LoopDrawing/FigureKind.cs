namespace Coldwright.Report.Loops;

/// <summary>What a figure on the drawing measures; each has one SI unit.</summary>
public enum FigureKind
{
    /// <summary>Temperature, K.</summary>
    Temperature,
    /// <summary>Pressure, Pa absolute.</summary>
    Pressure,
    /// <summary>Flow, mol/s.</summary>
    MolarFlow,
    /// <summary>Flow, kg/s.</summary>
    MassFlow,
    /// <summary>Electrical power, W.</summary>
    Power,
    /// <summary>Heat flow, W.</summary>
    Heat,
    /// <summary>Vapour share of the stream, mol/mol, 0..1.</summary>
    VapourShare,
    /// <summary>Liquid level, 0 (empty) to 1 (full).</summary>
    Level,
    /// <summary>Liquid made, m3/s.</summary>
    LiquidRate,
}
