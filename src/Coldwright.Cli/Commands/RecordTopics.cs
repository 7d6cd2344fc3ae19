using System.Globalization;
using Coldwright.Runs;
using Coldwright.Runs.Live;

namespace Coldwright.Cli.Commands;

/// <summary>Records a run from an MQTT broker: topics are columns of the log.</summary>
internal static class RecordTopics
{
    /// <summary>Environment variable of the user.</summary>
    public const string UserVariable = "COLDWRIGHT_MQTT_USER";
    /// <summary>Environment variable of the password.</summary>
    public const string PasswordVariable = "COLDWRIGHT_MQTT_PASSWORD";

    private const int MostShown = 40;
    private static readonly TimeSpan _firstPause = TimeSpan.FromSeconds(1);

    /// <summary>Records until Ctrl-C.</summary>
    /// <param name="run">Where to.</param>
    /// <param name="broker">Address as typed.</param>
    /// <param name="filters">Topics as typed.</param>
    /// <param name="quality">Quality of service.</param>
    /// <param name="faces">Where to say what.</param>
    public static int Run(NewRun run, string broker, IReadOnlyList<string> filters, int quality, Faces faces)
    {
        if (!BrokerAddress.TryParse(broker, out var address, out var complaint)) throw new InputException("--mqtt", complaint);
        foreach (var filter in filters)
            if (TopicFilter.Complaint(filter) is { Length: > 0 } wrong) throw new InputException("--topic", $"'{Faces.Shorten(filter)}': {wrong}");
        var columns = Columns(run);
        if (columns.Count == 0 && filters.Count == 0) throw new InputException("--topic", "which topics? Give --topic 'cooler/#', or --like with a run whose channels have topics as columns");

        run.Make("cooler/vessel");
        using var log = new TopicLog(run.LogFile, columns, filters, () => DateTime.Now);
        using var listener = new TopicListener(address!, Login(), [.. columns.Select(TopicColumn.Topic), .. filters], quality, log, () => DateTime.Now);
        try
        {
            listener.ConnectAsync(faces.Terminal.Cancel).GetAwaiter().GetResult();
        }
        catch (Exception e) when (e is BrokerRefusal or OperationCanceledException)
        {
            log.Dispose();
            run.TakeBack();
            if (e is BrokerRefusal) throw new InputException("--mqtt", e.Message, $"user and password are read from {UserVariable} and {PasswordVariable}");
            throw;
        }
        using (new Progress(faces.Terminal, () => $"{log.Written} messages, last {Faces.Shorten(log.LastTopic)}"))
            listener.ListenAsync(gap => faces.Terminal.Error.WriteLine(Words(gap)), _firstPause, faces.Terminal.Cancel).GetAwaiter().GetResult();
        Show(run, log, listener, faces.Terminal.Output);
        return log.Written > 0 ? ExitCode.Done : ExitCode.No;
    }

    private static IReadOnlyList<string> Columns(NewRun run)
    {
        if (run.Earlier is null) return [];
        var columns = RunTopics.Of(run.Earlier, out var complaints);
        return complaints.Count == 0 ? columns : throw new InputException("--like", complaints);
    }

    private static BrokerLogin? Login() => Environment.GetEnvironmentVariable(UserVariable) is { Length: > 0 } user ? new(user, Environment.GetEnvironmentVariable(PasswordVariable) ?? "") : null;

    private static void Show(NewRun run, TopicLog log, TopicListener listener, TextWriter output)
    {
        output.WriteLine($"{log.Written} messages, {log.Rows} rows in {run.LogFile}");
        if (log.LeftOut > 0) output.WriteLine($"{log.LeftOut} messages left out: they hold no number for a column");
        if (log.Kept > 0) output.WriteLine($"{log.Kept} messages left out: the broker had kept them from before, and nobody knows when they were measured");
        foreach (var gap in listener.Gaps) output.WriteLine(Words(gap));
        if (log.Silent.Count > 0) output.WriteLine($"Nothing came for {string.Join(", ", log.Silent)}.");
        if (run.Earlier is null && log.Columns.Count > 0) output.WriteLine($"Columns: {string.Join(", ", log.Columns.Take(MostShown))}{(log.Columns.Count > MostShown ? string.Create(CultureInfo.InvariantCulture, $" and {log.Columns.Count - MostShown} more") : "")}");
        output.WriteLine(run.WhatNext);
    }

    private static string Words(ListeningGap gap) => gap.To is { } to
        ? $"connected again: nothing was heard from {Clock(gap.From)} to {Clock(to)} ({gap.Reason})"
        : $"no connection since {Clock(gap.From)} ({gap.Reason})";

    private static string Clock(DateTime time) => time.ToString("HH:mm:ss", CultureInfo.InvariantCulture);
}
