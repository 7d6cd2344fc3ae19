using System.CommandLine;

namespace Coldwright.Cli;

/// <summary>The options that every command understands.</summary>
internal sealed class CommonOptions
{
    public Option<bool> Json { get; } = new("--json") { Recursive = true, Description = "machine-readable answer, alone on standard output" };

    public Option<string?> Report { get; } = new("--report") { Recursive = true, HelpName = "OUT_DIR", Description = "write a self-contained page with pictures into this folder" };

    public Option<string?> Units { get; } = new("--units") { Recursive = true, HelpName = "si|us", Description = "units read first: K and bar, or °F and psi" };

    public Option<string?> Model { get; } = new("--model") { Recursive = true, HelpName = "reference|cubic|both", Description = "which fluid model answers" };

    public Option<bool> NoColour { get; } = new("--no-colour", "--no-color") { Recursive = true, Description = "plain text" };

    /// <summary>Adds all of them to the root.</summary>
    public void AddTo(Command root)
    {
        foreach (Option option in (Option[])[Json, Report, Units, Model, NoColour]) root.Add(option);
    }
}
