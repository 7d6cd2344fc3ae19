using System.CommandLine;
using System.CommandLine.Parsing;
using Coldwright.Cli.Commands;
using Coldwright.Quantities;

namespace Coldwright.Cli;

/// <summary>The commands and how a command line finds them.</summary>
internal static class CommandLine
{
    // Bundling and response files would read "-300 °C" and "@" in other ways than written.
    private static readonly ParserConfiguration _parser = new() { EnablePosixBundling = false, ResponseFileTokenReplacer = null };

    /// <summary>Runs one command line.</summary>
    public static int Run(string[] args, Terminal terminal)
    {
        if (args.Length == 0 || (args.Length == 1 && args[0] is "-h" or "--help" or "help" or "-?"))
        {
            terminal.Output.Write(Overview.Text);
            return ExitCode.Done;
        }

        var root = new RootCommand("Predicts small mixed-gas Joule-Thomson coolers.");
        Faces.Options.AddTo(root);
        foreach (var command in (Command[])[NewCommand.Create(terminal), CheckCommand.Create(terminal), StateCommand.Create(terminal), EnvelopeCommand.Create(terminal), RateCommand.Create(terminal), CooldownCommand.Create(terminal), BatchCommand.Create(terminal), BlendCommand.Create(terminal), ChargeCommand.Create(terminal), SizeCommand.Create(terminal), ImportCommand.Create(terminal), ExplainCommand.Create(terminal), NextCommand.Create(terminal), RecordCommand.Create(terminal), SafetyCommand.Create(terminal), PageCommand.Create(terminal)]) root.Add(command);

        var parsed = root.Parse(args, _parser);
        if (parsed.Errors.Count > 0) throw Complaint(parsed, root);
        return parsed.Invoke(new InvocationConfiguration { Output = terminal.Output, Error = terminal.Error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
    }

    private static InputException Complaint(ParseResult parsed, RootCommand root)
    {
        var command = parsed.CommandResult.Command;
        if (ReferenceEquals(command, root))
        {
            var names = root.Subcommands.Select(c => c.Name).ToArray();
            var word = parsed.UnmatchedTokens.FirstOrDefault() ?? "";
            if (word.Length == 0) return new InputException("", "a command is missing", $"commands: {string.Join(", ", names)}; 'coldwright' alone explains them");
            var near = NearestWord.Find(word, names).FirstOrDefault();
            return new InputException("", $"there is no command '{Faces.Shorten(word)}'" + (near is null ? "" : $"; did you mean '{near}'?"),
                $"commands: {string.Join(", ", names)}; 'coldwright' alone explains them");
        }

        var problems = new List<string>();
        foreach (var word in parsed.UnmatchedTokens)
        {
            var known = command.Options.Concat(root.Options).SelectMany(o => o.Aliases.Prepend(o.Name));
            var near = word.StartsWith('-') ? NearestWord.Find(word, known).FirstOrDefault() : null;
            problems.Add(word.StartsWith('-')
                ? $"there is no option '{Faces.Shorten(word)}'" + (near is null ? "" : $"; did you mean {near}?")
                : $"'{Faces.Shorten(word)}' is one word too many; a text with spaces goes in quotes");
        }
        if (problems.Count == 0) problems.AddRange(parsed.Errors.Select(e => e.Message.TrimEnd('.')).Distinct());
        return new InputException(command.Name, problems, $"'coldwright {command.Name} --help' shows what it takes");
    }
}
