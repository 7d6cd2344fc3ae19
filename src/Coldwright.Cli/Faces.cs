using System.CommandLine;
using Coldwright.Quantities;
using Coldwright.Report;

namespace Coldwright.Cli;

/// <summary>Which models answer.</summary>
internal enum ModelChoice
{
    Default,
    Reference,
    Cubic,
    Both,
}

/// <summary>How a command shows its answer: the options that every command understands.</summary>
/// <param name="Terminal">Where it writes.</param>
/// <param name="Json">True: machine-readable text alone on standard output.</param>
/// <param name="ReportFolder">Folder for the report page; null for none.</param>
/// <param name="Units">Units a person reads first.</param>
/// <param name="Model">Models asked for.</param>
/// <param name="Colour">True to colour.</param>
internal sealed record Faces(Terminal Terminal, bool Json, string? ReportFolder, UnitSystem Units, ModelChoice Model, bool Colour)
{
    /// <summary>The common options; each command sees them.</summary>
    public static CommonOptions Options { get; } = new();

    /// <summary>Reads the common options of a command line.</summary>
    public static Faces Of(ParseResult parsed, Terminal terminal)
    {
        var units = OneOf(parsed.GetValue(Options.Units), "--units", "si", "us");
        var model = OneOf(parsed.GetValue(Options.Model), "--model", "reference", "cubic", "both");
        return new Faces(terminal, parsed.GetValue(Options.Json), parsed.GetValue(Options.Report),
            units == "us" ? UnitSystem.Us : UnitSystem.Si,
            model switch
            {
                "reference" => ModelChoice.Reference,
                "cubic" => ModelChoice.Cubic,
                "both" => ModelChoice.Both,
                _ => ModelChoice.Default,
            },
            terminal.Colour && !parsed.GetValue(Options.NoColour));
    }

    /// <summary>Says which of the common options a command has no use for, when they were given.</summary>
    public void SayUnused(string command, bool report, bool model)
    {
        if (!report && ReportFolder is not null) Terminal.Note($"{command} writes no report page; --report is not used");
        if (!model && Model != ModelChoice.Default) Terminal.Note($"{command} evaluates no fluid; --model is not used");
    }

    /// <summary>A word of a closed list in small letters, null when it was not given; any other word is refused with the nearest one.</summary>
    public static string? OneOf(string? text, string option, params string[] words)
    {
        if (text is null || words.Contains(text, StringComparer.OrdinalIgnoreCase)) return text?.ToLowerInvariant();
        var near = NearestWord.Find(text, words).FirstOrDefault();
        throw new InputException(option, $"'{Shorten(text)}' is not one of {string.Join(", ", words)}" + (near is null ? "" : $"; did you mean {near}?"));
    }

    /// <summary>A text short enough to be quoted in a message.</summary>
    public static string Shorten(string text) => text.Length > 60 ? text[..60] + "…" : text;
}
