namespace Coldwright.Simulation.Cooldown;

/// <summary>How a cooldown is followed.</summary>
public sealed record CooldownOptions
{
    /// <summary>True: the cubic model; false: the reference model.</summary>
    public bool Cubic { get; init; }
    /// <summary>True: the run that the model has without property tables and tabulated films, every property a flash and every correlation asked at its place; tables only say where to begin. A check on the tables.</summary>
    public bool Direct { get; init; }
    /// <summary>Load temperature to start from, K, everything settled to it; null: all at room temperature.</summary>
    public double? FromK { get; init; }
    /// <summary>Time to follow, s; null: until it stands still.</summary>
    public double? UntilS { get; init; }
    /// <summary>Load temperature to follow it to, K; null: none.</summary>
    public double? UntilK { get; init; }
    /// <summary>True: the compressor stands still and everything warms up, from <see cref="FromK"/> or, without it, from where the cooldown ends.</summary>
    public bool WarmUp { get; init; }
    /// <summary>Heat put into the load on purpose, W, at least 0.</summary>
    public double LoadW { get; init; }
    /// <summary>Temperatures to be timed, K; those of the product and every 20 K are timed anyway.</summary>
    public IReadOnlyList<double> TimedK { get; init; } = [];
    /// <summary>True: also where it would stop. False: only the time asked for; the plateau given is then the temperature at its end.</summary>
    public bool Plateau { get; init; } = true;
    /// <summary>True: what halving each stored mass and each leak would change.</summary>
    public bool Halving { get; init; } = true;
    /// <summary>True: also the slopes of temperatures and times by the parameters of the machine.</summary>
    public bool Sensitivity { get; init; }
    /// <summary>Times at which the quantities and their derivatives by the parameters are wanted, s from the start; used with <see cref="Sensitivity"/>.</summary>
    public IReadOnlyList<double> SlopeTimesS { get; init; } = [];

    /// <summary>Cells of the recuperator, 8 to 200.</summary>
    public int Cells { get; init; } = 40;
    /// <summary>Cells of the insulation, 2 to 60.</summary>
    public int InsulationCells { get; init; } = 14;
    /// <summary>Relative tolerance of the integration, 1e-8 to 1e-2.</summary>
    public double Tolerance { get; init; } = 1e-4;
    /// <summary>How far what circulates may go from the composition in the middle of its tables before they are made again, in ln of a fraction over the first one's, 2e-3 to 0.1; the tables err by its square.</summary>
    public double Reach { get; init; } = 0.04;

    /// <summary>Refuses a value outside its range.</summary>
    /// <exception cref="ArgumentException">With name, value, limit and unit.</exception>
    public void Check()
    {
        static void Within(double? v, double low, double high, string name, string unit)
        {
            if (v is { } x && !(x >= low && x <= high)) throw new ArgumentException(FormattableString.Invariant($"{name} is {x} {unit}; it must be {low} to {high} {unit}"), name);
        }

        Within(FromK, 60, 330, nameof(FromK), "K");
        Within(UntilS, 1, 3e7, nameof(UntilS), "s");
        Within(UntilK, 60, 330, nameof(UntilK), "K");
        Within(LoadW, 0, 1e4, nameof(LoadW), "W");
        Within(Cells, 8, 200, nameof(Cells), "");
        Within(InsulationCells, 2, 60, nameof(InsulationCells), "");
        Within(Tolerance, 1e-8, 1e-2, nameof(Tolerance), "");
        Within(Reach, 2e-3, 0.1, nameof(Reach), "");
    }
}
