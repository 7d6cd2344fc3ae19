namespace Coldwright.Simulation.Rating;

/// <summary>Phases of a stream in words for a sentence.</summary>
internal static class PhaseWords
{
    /// <param name="phases">As the flash names them.</param>
    public static string Of(string phases) => phases switch
    {
        "vapour" => "all vapour",
        "liquid" => "all liquid",
        "vapour+liquid" => "vapour and liquid",
        "liquid+second_liquid" => "two liquids",
        _ => "vapour and two liquids",
    };
}
