namespace Coldwright.Machine.Recuperation;

/// <summary>How an exchanger is solved.</summary>
public sealed record RecuperatorOptions
{
    /// <summary>Cells along the length to begin with, 8 to 2000 and even; doubled up to three times where balances do not close or the grid's error is large.</summary>
    public int Cells { get; init; } = 100;
    /// <summary>The warm side.</summary>
    public SideOptions Hot { get; init; } = new();
    /// <summary>The cold side.</summary>
    public SideOptions Cold { get; init; } = new();
    /// <summary>False: both pressures stay as they enter.</summary>
    public bool PressureDrop { get; init; } = true;
    /// <summary>False: the walls do not conduct along the exchanger.</summary>
    public bool AxialConduction { get; init; } = true;
    /// <summary>How much higher the cold end lies than the warm end, m: static head of both streams; 0 leaves it out.</summary>
    public double ColdEndRiseM { get; init; }
    /// <summary>True: two grids, for an estimate of the grid's error (Richardson).</summary>
    public bool GridError { get; init; } = true;
    /// <summary>True: further solves that carry the correlations' uncertainty to the result.</summary>
    public bool Band { get; init; } = true;

    /// <summary>Largest balance left, relative to the heat that flows, 1e-13 to 1e-4.</summary>
    public double Tolerance { get; init; } = RecuperatorSolver.Tolerance;

    internal void Check()
    {
        if (Cells is < 8 or > 2000 || Cells % 2 != 0) throw new ArgumentException($"number of cells must be even and 8 to 2000, got {Cells}");
        if (!double.IsFinite(ColdEndRiseM)) throw new ArgumentException($"rise of the cold end must be a number, got {ColdEndRiseM} m");
        if (!(Tolerance is >= 1e-13 and <= 1e-4)) throw new ArgumentException($"tolerance of the balances must be 1e-13 to 1e-4, got {Tolerance}");
        Hot.Check("warm");
        Cold.Check("cold");
    }
}
