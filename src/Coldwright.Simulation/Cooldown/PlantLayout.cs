namespace Coldwright.Simulation.Cooldown;

/// <summary>Where each unknown of the cooldown stands: heats first (recuperator from its warm end, load, insulation from the inside), then the loop, then the ledger.</summary>
internal readonly record struct PlantLayout(int Cells, int Insulation)
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
    /// <summary>Evaporator of the precooler (or its outlet, where only that is given), in 100 K.</summary>
    public int Precooler => High + 5;
    public int LoopCount => 6;
    /// <summary>Heat carried off by the streams and let in by the walls so far, in the unit of <see cref="LedgerJ"/>; electrical energy so far.</summary>
    public int Cooled => High + 6;
    public int Leaked => High + 7;
    public int Electrical => High + 8;
    public int Count => High + 9;

    public const double LedgerJ = 1000;
    public const double EnthalpyScale = 1000;
    public const double PrecoolerScale = 100;
}

/// <summary>Factors that a cooldown can be asked to answer to, each 1.</summary>
internal static class PlantParameters
{
    public const int Leak = 0, RecuperatorMetal = 1, LoadMass = 2, InsulationHeat = 3, CompressorFlow = 4, ThrottleFlow = 5, HighFilm = 6, LowFilm = 7, CoilFilm = 8, Precooler = 9, Charge = 10, LightGas = 11, Count = 12;
    /// <summary>Those whose slopes are carried along; the light gas is a matter of composition, which the slopes hold.</summary>
    public const int SlopeCount = 11;

    public static readonly string[] Names =
        ["heat leak", "metal of the recuperator", "masses at the load", "heat in the insulation", "flow of the compressor", "flow of the throttle", "film of the high side", "film of the low side", "film in the coil", "conductance of the precooler", "charge", "lightest gas of the charge"];

    public static readonly string[] Ids = ["leak", "recuperator-metal", "load-mass", "insulation-heat", "compressor-flow", "throttle-flow", "high-film", "low-film", "coil-film", "precooler", "charge", "light-gas"];

    public static double[] Nominal() => [.. Enumerable.Repeat(1.0, Count)];
}
