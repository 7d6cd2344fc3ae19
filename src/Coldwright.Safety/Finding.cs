namespace Coldwright.Safety;

/// <summary>How much a finding weighs. <see cref="GradeWords"/> has the words for people and programs.</summary>
public enum Grade
{
    /// <summary>Danger: do not build or run it like this.</summary>
    Stop,

    /// <summary>People can be hurt; needs a remedy or a reasoned decision by someone competent.</summary>
    Serious,

    /// <summary>Worth knowing before starting.</summary>
    Caution,

    /// <summary>A figure or a way of working that belongs to a safe build; nothing is wrong.</summary>
    Note,
}

/// <summary>The words of the grades.</summary>
public static class GradeWords
{
    /// <summary><c>danger</c>, <c>serious</c>, <c>caution</c> or <c>note</c>.</summary>
    /// <param name="grade">Grade.</param>
    public static string Of(Grade grade) => grade switch
    {
        Grade.Stop => "danger",
        Grade.Serious => "serious",
        Grade.Caution => "caution",
        Grade.Note => "note",
        _ => throw new ArgumentOutOfRangeException(nameof(grade), grade, "unknown grade"),
    };
}

/// <summary>One thing about a machine that can hurt somebody, with the rule it comes from.</summary>
/// <param name="Id">Stable word for programs, for example <c>trapped-liquid</c>.</param>
/// <param name="Grade">Weight.</param>
/// <param name="Part">Part or line concerned, or <c>machine</c>.</param>
/// <param name="Value">The figure found, in <paramref name="Unit"/>; null where there is none.</param>
/// <param name="Limit">The limit it is held against, same unit; null where there is none.</param>
/// <param name="Unit">Unit of both (SI; pressures absolute); empty where there are no figures.</param>
/// <param name="Rule">The rule, in words.</param>
/// <param name="Source">Publication of the rule.</param>
/// <param name="Consequence">What happens otherwise.</param>
/// <param name="Do">What to do.</param>
public sealed record Finding(
    string Id, Grade Grade, string Part, double? Value, double? Limit, string Unit,
    string Rule, string Source, string Consequence, string Do)
{
    /// <summary>True when <see cref="Limit"/> is the least that will do (oxygen, the bore of a relief device) and not the most.</summary>
    public bool AtLeast { get; init; }
}
