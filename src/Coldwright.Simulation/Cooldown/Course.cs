namespace Coldwright.Simulation.Cooldown;

/// <summary>How a whole run is followed: cooldown, then standing still.</summary>
public sealed record CourseOptions
{
    /// <summary>Time from the start of the compressor to its stop, s, 1..3e6.</summary>
    public required double ShutOffS { get; init; }
    /// <summary>Time followed after the stop, s, 0..3e6; 0: none.</summary>
    public double WarmUpS { get; init; }
    /// <summary>Factors on what the parts' models give, by <see cref="CourseFactors.Ids"/>, each 0.02..50; those left out are 1.</summary>
    public IReadOnlyDictionary<string, double> Factors { get; init; } = new Dictionary<string, double>();
    /// <summary>Load temperature from which <see cref="LateFactors"/> hold too, K; null: never.</summary>
    public double? LateBelowK { get; init; }
    /// <summary>Factors that come on top of <see cref="Factors"/> once the load has fallen to <see cref="LateBelowK"/>: what freezes is not there while it is warm.</summary>
    public IReadOnlyDictionary<string, double> LateFactors { get; init; } = new Dictionary<string, double>();
    /// <summary>Heat put into the load on purpose, W, at least 0.</summary>
    public double LoadW { get; init; }
    /// <summary>Cells of the recuperator, 8 to 200.</summary>
    public int Cells { get; init; } = 24;
    /// <summary>Cells of the insulation, 2 to 60.</summary>
    public int InsulationCells { get; init; } = 10;
    /// <summary>Relative tolerance of the integration, 1e-8 to 1e-2.</summary>
    public double Tolerance { get; init; } = 5e-4;
    /// <summary>How far what circulates may go from the composition in the middle of its tables before they are made again, as <see cref="CooldownOptions.Reach"/>; the widest, 0.1, halves the cost of a fit's runs and moves the stop by some tenths of a kelvin.</summary>
    public double Reach { get; init; } = 0.04;

    /// <summary>Times at which the derivatives of the course by the factors are wanted, s from the start; empty: none, and the course costs less.</summary>
    public IReadOnlyList<double> SlopeTimesS { get; init; } = [];

    internal double[] FactorArray() => Times(PlantParameters.Nominal(), Factors);

    /// <summary>Multiplies factors by those of a table.</summary>
    internal static double[] Times(double[] f, IReadOnlyDictionary<string, double> by)
    {
        foreach (var (id, value) in by)
        {
            var i = Array.IndexOf(PlantParameters.Ids, id);
            if (i < 0) throw new ArgumentException($"'{id}' is no factor of a course; known are {string.Join(", ", PlantParameters.Ids)}");
            if (!(value >= 0.02 && value <= 50)) throw new ArgumentException(FormattableString.Invariant($"factor {id} is {value}; it must be 0.02 to 50"));
            f[i] *= value;
        }
        return f;
    }
}

/// <summary>The factors that a course can be asked to answer to.</summary>
public static class CourseFactors
{
    /// <summary>Their keys.</summary>
    public static IReadOnlyList<string> Ids => PlantParameters.Ids;
}

/// <summary>A whole run against time; all lists are equally long. SI, pressures absolute.</summary>
public sealed record Course
{
    /// <summary>s from the start of the compressor, rising.</summary>
    public required IReadOnlyList<double> TimeS { get; init; }
    /// <summary>Load, K.</summary>
    public required IReadOnlyList<double> LoadK { get; init; }
    /// <summary>Before the throttle, K; the load's while it stands still.</summary>
    public required IReadOnlyList<double> ThrottleInletK { get; init; }
    /// <summary>Behind the coil, K; the load's while it stands still.</summary>
    public required IReadOnlyList<double> CoilOutletK { get; init; }
    /// <summary>Behind the precooler, K; the room's while it stands still.</summary>
    public required IReadOnlyList<double> PrecooledK { get; init; }
    /// <summary>Returning gas where it leaves the recuperator, K; the room's while it stands still.</summary>
    public required IReadOnlyList<double> ReturnK { get; init; }
    /// <summary>Discharge of the compressor, K; the room's while it stands still.</summary>
    public required IReadOnlyList<double> DischargeK { get; init; }
    /// <summary>High side, Pa.</summary>
    public required IReadOnlyList<double> HighPressurePa { get; init; }
    /// <summary>Suction, Pa.</summary>
    public required IReadOnlyList<double> LowPressurePa { get; init; }
    /// <summary>Through the throttle, kg/s.</summary>
    public required IReadOnlyList<double> MassFlow { get; init; }
    /// <summary>The compressor's electricity, W.</summary>
    public required IReadOnlyList<double> CompressorW { get; init; }
    /// <summary>All electricity, W.</summary>
    public required IReadOnlyList<double> PowerW { get; init; }
    /// <summary>From the room into the cold, W.</summary>
    public required IReadOnlyList<double> LeakW { get; init; }
    /// <summary>Carried off by the streams, W.</summary>
    public required IReadOnlyList<double> CoolingW { get; init; }
    /// <summary>Taken out of the metal of the recuperator, of what is at the load, and out of the insulation, W.</summary>
    public required IReadOnlyList<(double RecuperatorW, double LoadW, double InsulationW)> StoredW { get; init; }
    /// <summary>What an endless recuperator would leave at the stop, W, and what it keeps back, by <see cref="StopTerm.Id"/>.</summary>
    public required IReadOnlyList<StopTerm> AtStop { get; init; }
    /// <summary>Pressure of the loop at rest with everything warm, Pa.</summary>
    public required double StandstillPa { get; init; }
    /// <summary>Load when the compressor stopped, K.</summary>
    public required double StopK { get; init; }
    /// <summary>Values and derivatives at <see cref="CourseOptions.SlopeTimesS"/>; null when none were asked for.</summary>
    public CooldownSlopes? Slopes { get; init; }
}
