namespace Coldwright.Materials.Solids;

/// <summary>Where a figure comes from.</summary>
public enum Provenance
{
    /// <summary>Read from the cited publication.</summary>
    Published,

    /// <summary>General knowledge, not yet seen in a source: every result that uses it says so.</summary>
    FromMemory,
}
