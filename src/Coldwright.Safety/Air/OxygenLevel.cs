namespace Coldwright.Safety.Air;

/// <summary>How grave an oxygen share in the air of a room is.</summary>
/// <remarks>19.5 % and 23.5 %: OSHA 29 CFR 1910.134 and 1910.146. 18 %: people are sent out, and the Fermilab manual's fatality factor begins.
/// 12 %: judgement goes, fainting comes without warning; the figure is our choice, published tables of effects begin at 10 to 14 %.</remarks>
public static class OxygenLevel
{
    /// <summary>Below this the air is deficient, percent.</summary>
    public const double DeficientPercent = 19.5;

    /// <summary>Below this nobody stays, percent.</summary>
    public const double EvacuatePercent = 18;

    /// <summary>Below this people faint without warning, percent.</summary>
    public const double FaintingPercent = 12;

    /// <summary>Above this the air is enriched, percent.</summary>
    public const double EnrichedPercent = 23.5;

    /// <summary>Grade of a poor share; null at 19.5 % and above.</summary>
    /// <param name="percent">Oxygen, percent by volume.</param>
    public static Grade? GradeOf(double percent)
    {
        Guard.Within(percent, 0, 100, nameof(percent), "%");
        return percent < EvacuatePercent ? Grade.Stop : percent < DeficientPercent ? Grade.Serious : null;
    }

    /// <summary>What such a share does to people.</summary>
    /// <param name="percent">Oxygen, percent by volume.</param>
    public static string Effect(double percent)
    {
        Guard.Within(percent, 0, 100, nameof(percent), "%");
        return percent switch
        {
            < 6 => "people drop within one or two breaths and die in minutes",
            < FaintingPercent => "people faint without any warning and die if nobody brings them out",
            < EvacuatePercent => "judgement and coordination fail before anybody notices; lower down people faint without warning",
            _ => "the air is no longer fit to work in; a little more gas and people faint without warning",
        };
    }
}
