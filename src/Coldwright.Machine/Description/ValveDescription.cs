namespace Coldwright.Machine.Description;

/// <summary>Key <c>valve</c> of a throttle: a needle or motor valve by its maker's flow coefficient.</summary>
public sealed record ValveDescription
{
    /// <summary>Flow coefficient Kv at full opening, m3/h of water at 1 bar, above 0 to 100; a Cv of the file is turned into it.</summary>
    public required double FlowCoefficientKv { get; init; }
    /// <summary>Share of the flow coefficient that the present opening gives, above 0 to 1; 1 when left out.</summary>
    public double Opening { get; init; } = 1;
}
