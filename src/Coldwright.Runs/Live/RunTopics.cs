using Coldwright.Fluids.Substances;
using Coldwright.Machine.Files;
using Coldwright.Runs.Files;

namespace Coldwright.Runs.Live;

/// <summary>The columns of an earlier run, taken as topics.</summary>
public static class RunTopics
{
    /// <summary>Columns that its channels name; none when there are complaints.</summary>
    /// <param name="runText">Text of its <c>run.yaml</c>.</param>
    /// <param name="complaints">What is wrong.</param>
    public static IReadOnlyList<string> Of(string runText, out IReadOnlyList<string> complaints)
    {
        var problems = new ProblemList(RunImporter.RunFile);
        var run = RunReader.Read(runText, new ReadingContext(problems, [], name => SubstanceCatalog.Get(name).MolarMass), null);
        foreach (var channel in run?.Channels.Where(c => c.Column.Length > 0) ?? [])
            if (TopicColumn.Complaint(channel.Column) is { Length: > 0 } complaint) problems.Add(channel.Line, channel.FileColumn, $"column '{channel.Column}' of the channel '{channel.Name}': {complaint}");
        complaints = [.. problems.InFileOrder().Select(p => p.ToString())];
        return run is null || complaints.Count > 0 ? [] : [.. run.Channels.Select(c => c.Column).Where(c => c.Length > 0).Distinct()];
    }
}
