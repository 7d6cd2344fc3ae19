using System.CommandLine;
using System.Globalization;
using System.Text;
using Coldwright.Runs;
using Coldwright.Runs.Live;

namespace Coldwright.Cli.Commands;

/// <summary><c>record DIR</c>: writes what a logger says into a new run's folder, line by line as it comes.</summary>
internal static class RecordCommand
{
    private static readonly Option<string?> _from = new("--from") { HelpName = "DEVICE", Description = "serial port or file to read, such as /dev/ttyUSB0 (set its speed first: stty -F /dev/ttyUSB0 115200 raw); standard input when left out" };
    private static readonly Option<string?> _name = new("--name") { HelpName = "NAME", Description = "name of the run; its folder is runs/DATE-NAME" };
    private static readonly Option<string?> _like = new("--like") { HelpName = "RUN", Description = "take the channels of this earlier run" };

    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the cooler's folder, which holds machine.yaml" };
        var command = new Command("record", "Log a run live from a serial port or standard input; Ctrl-C ends it and keeps everything.") { directory, _from, _name, _like };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(directory), parsed.GetValue(_from), parsed.GetValue(_name) ?? "run", parsed.GetValue(_like), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(string directory, string? from, string name, string? like, Faces faces)
    {
        faces.SayUnused("record", report: false, model: false);
        if (!Directory.Exists(directory)) throw new InputException(directory, "there is no such folder; give the cooler's");
        string? earlier = null;
        if (like is not null && !File.Exists(Path.Combine(like, RunImporter.RunFile))) throw new InputException("--like", $"'{Faces.Shorten(like)}' holds no {RunImporter.RunFile}");
        if (like is not null) earlier = File.ReadAllText(Path.Combine(like, RunImporter.RunFile));
        if (name.AsSpan().IndexOfAny(Path.GetInvalidFileNameChars()) >= 0 || name.Length is 0 or > 60) throw new InputException("--name", $"'{Faces.Shorten(name)}' cannot be part of a folder's name");
        var start = DateTime.Now;
        string folder = Path.Combine(directory, "runs", $"{start.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}-{name.Replace(' ', '-')}");
        if (Directory.Exists(folder)) throw new InputException("--name", $"{folder} is already there; give the run another name");
        SafeFile.MakeFolder(folder);
        File.WriteAllText(Path.Combine(folder, RunImporter.RunFile), NewRunText.Of(name, start, earlier));
        using var source = from is null ? Console.In : new StreamReader(new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite), Encoding.UTF8);
        using var log = new StreamWriter(Path.Combine(folder, "log.csv"), append: false, new UTF8Encoding(false)) { NewLine = "\n" };
        var live = new LiveLog(source, log, () => DateTime.Now);
        using (new Progress(faces.Terminal, () => $"{live.Written} lines, last {Faces.Shorten(live.Last)}")) live.CopyAsync(null, faces.Terminal.Cancel).GetAwaiter().GetResult();
        faces.Terminal.Output.WriteLine($"{live.Written} lines in {Path.Combine(folder, "log.csv")}{(live.LeftOut > 0 ? $", {live.LeftOut} left out (empty or too long)" : "")}");
        faces.Terminal.Output.WriteLine(earlier is null ? $"Say in {RunImporter.RunFile} which column is which sensor, and note what you did as events; then 'import'." : $"Note what you did as events in {RunImporter.RunFile}; then 'import'.");
        return live.Written > 0 ? ExitCode.Done : ExitCode.No;
    }
}
