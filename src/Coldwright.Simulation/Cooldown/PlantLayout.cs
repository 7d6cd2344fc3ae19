namespace Coldwright.Simulation.Cooldown;

/// <summary>Where each unknown of the cooldown stands: heats first (recuperator from its warm end, load, insulation from the inside), then the loop, then the ledger.</summary>
/// <param name="Cells">Of the recuperator.</param>
/// <param name="Insulation">Cells of the insulation.</param>
/// <param name="Ratios">Substances less one.</param>
internal readonly record struct PlantLayout(int Cells, int Insulation, int Ratios)
{
    public int Load => Cells;
    public int FirstInsulation => Cells + 1;
    /// <summary>The high side, as in <see cref="ClosedLoop.LoopState.High"/>.</summary>
    public int High => Cells + 1 + Insulation;
    /// <summary>ln of suction and coil inlet pressure (Pa).</summary>
    public int LnSuction => High + 1;
    public int LnCoil => High + 2;
    /// <summary>ln of the flow through the throttle (mol/s).</summary>
    public int LnFlow => High + 3;
    /// <summary>Returning gas as the warm parts feel it, kJ/mol.</summary>
    public int Return => High + 4;
    /// <summary>What circulates: ln(z_i/z_1) from the second substance on.</summary>
    public int FirstRatio => High + 5;
    /// <summary>Unknowns that follow the loop's balances: from <see cref="High"/> on.</summary>
    public int Balances => 5 + Ratios;
    /// <summary>Evaporator of the precooler (or its outlet, where only that is given), in 100 K.</summary>
    public int Precooler => High + Balances;
    public int LoopCount => Balances + 1;
    /// <summary>Heat carried off by the streams and let in by the walls so far, in the unit of <see cref="LedgerJ"/>; electrical energy so far.</summary>
    public int Cooled => High + LoopCount;
    public int Leaked => Cooled + 1;
    public int Electrical => Cooled + 2;
    public int Count => Cooled + 3;

    public const double LedgerJ = 1000;
    public const double EnthalpyScale = 1000;
    public const double PrecoolerScale = 100;
}

/// <summary>Factors that a cooldown can be asked to answer to, each 1.</summary>
internal static class PlantParameters
{
    public const int Leak = 0, RecuperatorMetal = 1, LoadMass = 2, InsulationHeat = 3, CompressorFlow = 4, ThrottleFlow = 5, HighFilm = 6, LowFilm = 7, CoilFilm = 8, Precooler = 9, Charge = 10, LightGas = 11, Count = 12;
    public static readonly string[] Names =
        ["heat leak", "metal of the recuperator", "masses at the load", "heat in the insulation", "flow of the compressor", "flow of the throttle", "film of the high side", "film of the low side", "film in the coil", "conductance of the precooler", "charge", "lightest gas of the charge"];

    public static readonly string[] Ids = ["leak", "recuperator-metal", "load-mass", "insulation-heat", "compressor-flow", "throttle-flow", "high-film", "low-film", "coil-film", "precooler", "charge", "light-gas"];

    public static double[] Nominal() => [.. Enumerable.Repeat(1.0, Count)];
}
