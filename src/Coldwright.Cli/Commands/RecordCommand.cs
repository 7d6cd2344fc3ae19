using System.CommandLine;
using System.Globalization;
using System.Text;
using Coldwright.Runs;
using Coldwright.Runs.Live;

namespace Coldwright.Cli.Commands;

/// <summary><c>record DIR</c>: writes what a logger or a broker says into a new run's folder, as it comes.</summary>
internal static class RecordCommand
{
    private static readonly Option<string?> _from = new("--from") { HelpName = "DEVICE", Description = "serial port or file to read, such as /dev/ttyUSB0 (set its speed first: stty -F /dev/ttyUSB0 115200 raw); standard input when left out" };
    private static readonly Option<string?> _name = new("--name") { HelpName = "NAME", Description = "name of the run; its folder is runs/DATE-NAME" };
    private static readonly Option<string?> _like = new("--like") { HelpName = "RUN", Description = "take the channels of this earlier run" };
    private static readonly Option<string?> _mqtt = new("--mqtt") { HelpName = "BROKER", Description = $"listen to this MQTT broker: HOST, HOST:PORT, or mqtts://HOST for an encrypted connection; user and password are read from {RecordTopics.UserVariable} and {RecordTopics.PasswordVariable}" };
    private static readonly Option<string[]> _topics = new("--topic") { HelpName = "TOPIC", Description = "topics to listen to, such as 'cooler/#'; may be given several times; not needed when the channels of --like name them" };
    private static readonly Option<string?> _quality = new("--qos") { HelpName = "0|1|2", Description = "quality of service asked of the broker; 1 when left out" };

    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the cooler's folder, which holds machine.yaml" };
        var command = new Command("record", "Log a run live from a serial port, standard input or an MQTT broker; Ctrl-C ends it and keeps everything.") { directory, _from, _name, _like, _mqtt, _topics, _quality };
        command.SetAction(parsed => Run(new NewRun(parsed.GetRequiredValue(directory), parsed.GetValue(_name) ?? "run", parsed.GetValue(_like)), parsed.GetValue(_from), parsed.GetValue(_mqtt), parsed.GetValue(_topics) ?? [], Faces.OneOf(parsed.GetValue(_quality), "--qos", "0", "1", "2"), Faces.Of(parsed, terminal)));
        return command;
    }

    private static int Run(NewRun run, string? from, string? broker, string[] topics, string? quality, Faces faces)
    {
        faces.SayUnused("record", report: false, model: false);
        run.Check();
        if (broker is null && (topics.Length > 0 || quality is not null)) throw new InputException(topics.Length > 0 ? "--topic" : "--qos", "this belongs to a broker; name it with --mqtt HOST");
        if (broker is null) return Lines(run, from, faces);
        if (from is not null) throw new InputException("--from", "a run is recorded from one place; leave out --from or --mqtt");
        return RecordTopics.Run(run, broker, topics, int.Parse(quality ?? "1", CultureInfo.InvariantCulture), faces);
    }

    private static int Lines(NewRun run, string? from, Faces faces)
    {
        // a port that is not there leaves no folder behind
        using var source = from is null ? Console.In : new StreamReader(new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite), Encoding.UTF8);
        run.Make();
        using var log = new StreamWriter(new FileStream(run.LogFile, FileMode.CreateNew, FileAccess.Write, FileShare.Read, 4096, FileOptions.WriteThrough), new UTF8Encoding(false)) { NewLine = "\n" };
        var live = new LiveLog(source, log, () => DateTime.Now);
        using (new Progress(faces.Terminal, () => $"{live.Written} lines, last {Faces.Shorten(live.Last)}")) live.CopyAsync(null, faces.Terminal.Cancel).GetAwaiter().GetResult();
        faces.Terminal.Output.WriteLine($"{live.Written} lines in {run.LogFile}{(live.LeftOut > 0 ? $", {live.LeftOut} left out (empty or too long)" : "")}");
        faces.Terminal.Output.WriteLine(run.WhatNext);
        return live.Written > 0 ? ExitCode.Done : ExitCode.No;
    }
}
