namespace Coldwright.Blind;

/// <summary>What a blind machine truly is, as ratios to its file, and what is wrong with it. Drawn once for a case.</summary>
public sealed record Truth
{
    /// <summary>Faults: cause id and size (ratio, share, kelvin or kg, as the id has it).</summary>
    public required IReadOnlyList<(string Id, double Size)> Faults { get; init; }
    /// <summary>Films of the high and the low stream.</summary>
    public double HighFilm { get; init; } = 1;
    /// <summary>Film of the low stream.</summary>
    public double LowFilm { get; init; } = 1;
    /// <summary>Film in the coil.</summary>
    public double CoilFilm { get; init; } = 1;
    /// <summary>Wall friction in the capillary.</summary>
    public double Friction { get; init; } = 1;
    /// <summary>Conductivity of the insulation.</summary>
    public double Leak { get; init; } = 1;
    /// <summary>Heat capacity of the insulation.</summary>
    public double FoamHeat { get; init; } = 1;
    /// <summary>Flow of the compressor.</summary>
    public double Compressor { get; init; } = 1;
    /// <summary>Efficiency of the compressor.</summary>
    public double Efficiency { get; init; } = 1;
    /// <summary>Cooling of the precooler.</summary>
    public double Precooler { get; init; } = 1;
    /// <summary>Metal of the recuperator.</summary>
    public double ExchangerMass { get; init; } = 1;
    /// <summary>Metal at the load.</summary>
    public double LoadMass { get; init; } = 1;
    /// <summary>Volumes outside the recuperator.</summary>
    public double Volume { get; init; } = 1;
    /// <summary>Slip's effect on the liquid held.</summary>
    public double WarmExchanger { get; init; } = 1;
    /// <summary>Amounts of the charge, substance by substance.</summary>
    public IReadOnlyList<double> Charge { get; init; } = [1, 1, 1, 1, 1];
    /// <summary>Heat that line and flask take from the liquid.</summary>
    public double LineHeat { get; init; } = 1;
    /// <summary>Heat of the flask's wall.</summary>
    public double FlaskHeat { get; init; } = 1;

    /// <summary>Size of a fault; the given value when it is not there.</summary>
    public double Of(string id, double otherwise) => Faults.Where(f => f.Id == id).Select(f => f.Size).DefaultIfEmpty(otherwise).First();

    /// <summary>The same without one of its faults.</summary>
    public Truth Without(string id) => this with { Faults = [.. Faults.Where(f => f.Id != id)] };
}
