using Coldwright.Quantities;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>One part rated alone at the cooler's operating point. Immutable, SI.</summary>
public sealed record PartRating
{
    /// <summary>Name in the machine file.</summary>
    public required string Part { get; init; }
    /// <summary>Its kind, as in the file.</summary>
    public required string Kind { get; init; }
    /// <summary>How it was worked out, in a few words.</summary>
    public required string Method { get; init; }
    /// <summary>Fluid model: reference or cubic.</summary>
    public required string FluidModel { get; init; }
    /// <summary>The point it was rated at.</summary>
    public required PartPoint Point { get; init; }
    /// <summary>The answer in a sentence or two, without units that a reader may want otherwise.</summary>
    public required string Verdict { get; init; }
    /// <summary>Groups of figures; the first holds what arrives, the second what matters first.</summary>
    public required IReadOnlyList<PartSection> Sections { get; init; }
    /// <summary>Limits and how the part stands to them.</summary>
    public IReadOnlyList<PartLimit> Limits { get; init; } = [];
    /// <summary>Relative errors of the part's own balances, by name.</summary>
    public required IReadOnlyList<(string Name, double Error)> Balances { get; init; }
    /// <summary>What to draw.</summary>
    public required IReadOnlyList<PartPicture> Pictures { get; init; }
    /// <summary>Where model and correlations come from.</summary>
    public required IReadOnlyList<string> Sources { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }

    /// <summary>True when a limit is broken.</summary>
    public bool BreaksLimit => Limits.Any(l => l.Broken);
}

/// <summary>The operating point that gives a part its inlet states: one point of the rating with given pressures.</summary>
public sealed record PartPoint
{
    /// <summary>In words.</summary>
    public required string Text { get; init; }
    /// <summary>Load: content of the vessel or block, K.</summary>
    public required double LoadTemperatureK { get; init; }
    /// <summary>Before the recuperator, Pa absolute.</summary>
    public required double HighPressurePa { get; init; }
    /// <summary>At the suction, Pa absolute.</summary>
    public required double LowPressurePa { get; init; }
    /// <summary>Round the loop, mol/s.</summary>
    public required double MolarFlow { get; init; }
    /// <summary>Round the loop, kg/s.</summary>
    public required double MassFlow { get; init; }
}

/// <summary>A group of figures under one heading.</summary>
/// <param name="Id">Name in machine-readable output, snake case.</param>
/// <param name="Title">Heading.</param>
/// <param name="Figures">The figures.</param>
/// <param name="Notes">Sentences that belong to them.</param>
public sealed record PartSection(string Id, string Title, IReadOnlyList<PartFigure> Figures, IReadOnlyList<string> Notes)
{
    /// <summary>A group without sentences.</summary>
    public PartSection(string id, string title, params PartFigure[] figures) : this(id, title, figures, [])
    {
    }
}

/// <summary>One figure of a part.</summary>
/// <param name="Id">Name in machine-readable output: snake case, SI unit at the end.</param>
/// <param name="Name">Name for a person.</param>
/// <param name="Value">SI; null when the answer is a word.</param>
/// <param name="Unit">SI unit; 1 for a share or a bare number.</param>
/// <param name="Band">How far it may be off, one standard deviation either way unless the note says otherwise; null when the model carries none.</param>
/// <param name="Note">A remark; may be empty.</param>
/// <param name="Text">The answer when it is a word.</param>
public sealed record PartFigure(string Id, string Name, double? Value, string Unit, PartBand? Band = null, string Note = "", string Text = "")
{
    /// <summary>True for a difference of temperatures or pressures.</summary>
    public bool IsDifference { get; init; }

    /// <summary>A figure with a band of so many units either way.</summary>
    public static PartFigure PlusMinus(string id, string name, double value, string unit, double? deviation, string note = "") =>
        new(id, name, value, unit, deviation is { } d ? new(value - d, value + d) : null, note);

    /// <summary>An answer in words.</summary>
    public static PartFigure Word(string id, string name, string text, string note = "") => new(id, name, null, "", null, note, text);
}

/// <summary>Low and high end of a band, in the unit of its figure.</summary>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
public sealed record PartBand(double Low, double High);

/// <summary>A limit of a part.</summary>
/// <param name="What">What is limited.</param>
/// <param name="Value">Where the part stands, SI.</param>
/// <param name="Limit">Highest allowed, SI.</param>
/// <param name="Unit">SI unit.</param>
/// <param name="Reason">Why there is a limit and where its value comes from.</param>
public sealed record PartLimit(string What, double Value, double Limit, string Unit, Spoken Reason)
{
    /// <summary>True when the part stands above it.</summary>
    public bool Broken => Value > Limit;
}
