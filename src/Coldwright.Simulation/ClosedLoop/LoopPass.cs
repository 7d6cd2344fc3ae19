using Coldwright.Machine.Charge;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Precooling;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Once round the loop from a state: what every part does, and how far the balances are from closing.</summary>
internal sealed record LoopPass
{
    public required LoopState State { get; init; }
    public required LoopTables Tables { get; init; }
    public required double LoadK { get; init; }
    public required CompressorPerformance Compressor { get; init; }
    public BufferState? Buffer { get; init; }
    public required double DischargePa { get; init; }
    /// <summary>Through recuperator and throttle, mol/s.</summary>
    public required double Flow { get; init; }
    /// <summary>What the throttle would pass, mol/s.</summary>
    public required double ThrottleFlow { get; init; }
    public required double ThrottleUncertainty { get; init; }
    public required bool ThrottleChoked { get; init; }
    /// <summary>ln of the throttle model's own flow over the one that the balances were closed with.</summary>
    public double ThrottleOff { get; init; }
    /// <summary>Enthalpies, J/mol.</summary>
    public required double Aftercooled { get; init; }
    public required double BeforePrecooler { get; init; }
    public required double RecuperatorInlet { get; init; }
    public required double AftercooledPa { get; init; }
    public PrecoolerResult? Precooler { get; init; }
    public required double PrecoolingW { get; init; }
    public required double RecuperatorInletK { get; init; }
    public required RecuperatorResult Recuperator { get; init; }
    public IsothermalCoilResult? Coil { get; init; }
    public required double CoilOutlet { get; init; }
    public required double CoilOutletPa { get; init; }
    /// <summary>Low stream after the tubes that end at the recuperator's warm end, and after the warm exchanger, J/mol.</summary>
    public required double ReturnGas { get; init; }
    public required double AfterWarmExchanger { get; init; }
    public required double BypassEnthalpy { get; init; }
    public required double WarmEndLeakW { get; init; }
    public required double ColdEndLeakW { get; init; }
    public required double LeakDeviationW { get; init; }
    public required IReadOnlyDictionary<string, double> LeakPaths { get; init; }
    /// <summary>Heat that the coil takes from the load, W.</summary>
    public required double GrossCoolingW { get; init; }
    public double NetCoolingW => GrossCoolingW - ColdEndLeakW;
    /// <summary>In the loop, mol by substance; of it liquid.</summary>
    public required double[] Moles { get; init; }
    public required double[] LiquidMoles { get; init; }
    /// <summary>Contents by place.</summary>
    public required IReadOnlyList<PlaceContent> Contents { get; init; }
    /// <summary>Scaled balances, in the order of <see cref="LoopBalances"/>.</summary>
    public double[] Residuals { get; init; } = [];

    public double MolarMass => Tables.High.MolarMass;
}

/// <summary>What a place holds: mol and kg, and of both what is liquid; the liquid is richer in heavy substances than the whole.</summary>
internal readonly record struct PlaceContent(string Place, double Moles, double LiquidMoles, double Kg, double LiquidKg);

/// <summary>Order of the balances.</summary>
internal static class LoopBalances
{
    public const int Flow = 0, LowPressure = 1, Suction = 2, Throttle = 3, Charge = 4, LowOutlet = 5, FirstFraction = 6;

    /// <summary>In words, for a report.</summary>
    public static string Name(int i) => i switch
    {
        Flow => "flow of compressor and throttle",
        LowPressure => "pressure at the end of the low side and at the suction",
        Suction => "heat of the returning gas",
        Throttle => "heat of the recuperator and the throttle's inlet",
        Charge => "charge",
        LowOutlet => "heat of the recuperator's low side",
        _ => "amount of a substance in the loop",
    };

    /// <summary>Largest absolute value; infinite when one is no number.</summary>
    public static double Norm(ReadOnlySpan<double> f)
    {
        double largest = 0;
        foreach (double v in f) largest = double.IsFinite(v) ? Math.Max(largest, Math.Abs(v)) : double.PositiveInfinity;
        return largest;
    }

    /// <summary>Index of the largest.</summary>
    public static int Worst(ReadOnlySpan<double> f)
    {
        int worst = 0;
        for (int i = 1; i < f.Length; i++)
            if (Math.Abs(f[i]) > Math.Abs(f[worst])) worst = i;
        return worst;
    }
}
