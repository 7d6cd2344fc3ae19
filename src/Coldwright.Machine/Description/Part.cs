namespace Coldwright.Machine.Description;

/// <summary>A named part of a known kind.</summary>
public abstract record Part
{
    /// <summary>Name given in the file.</summary>
    public required string Name { get; init; }
    /// <summary>Line number in the file, from 1.</summary>
    public int FileLine { get; init; }
    /// <summary>Allowed pressure stamped on the part or given by its maker, Pa absolute; null when not known (tubes are then rated by formula).</summary>
    public double? MaximumPressurePa { get; init; }

    /// <summary>The part's name and type. Not every value: one that was left out refuses to be read.</summary>
    public sealed override string ToString() => $"{Name} ({GetType().Name})";
}
