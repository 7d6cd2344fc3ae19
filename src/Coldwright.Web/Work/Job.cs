using System.Diagnostics;

namespace Coldwright.Web.Work;

/// <summary>A piece of long work: asked for once, watched by any number of tabs, kept with its answer.</summary>
internal sealed class Job : IDisposable
{
    private readonly Stopwatch _watch = new();
    private readonly CancellationTokenSource _cancel = new();

    /// <param name="id">Number that names it.</param>
    /// <param name="kind">Word for what is done.</param>
    /// <param name="key">Everything that the answer depends on.</param>
    /// <param name="revision">The files' revision that it is about.</param>
    public Job(int id, string kind, string key, string revision) => (Id, Kind, Key, Revision) = (id, kind, key, revision);

    public int Id { get; }
    public string Kind { get; }
    public string Key { get; }
    public string Revision { get; }
    public DateTime Asked { get; } = DateTime.Now;
    public CancellationToken Cancellation => _cancel.Token;

    public JobState State { get; private set; } = JobState.Waiting;
    /// <summary>What is being done, in words.</summary>
    public string Stage { get; private set; } = "waiting for other work to end";
    /// <summary>The answer; null until it is there.</summary>
    public object? Answer { get; private set; }
    /// <summary>Why there is no answer; empty otherwise.</summary>
    public IReadOnlyList<string> Problems { get; private set; } = [];
    public double Seconds => _watch.Elapsed.TotalSeconds;
    public bool IsOver => State is JobState.Done or JobState.Failed or JobState.Cancelled;

    public void Begin()
    {
        _watch.Start();
        (State, Stage) = (JobState.Running, "beginning");
    }

    public void Say(string stage) => Stage = stage;

    public void Finish(object answer)
    {
        _watch.Stop();
        (Answer, Stage, State) = (answer, "", JobState.Done);
    }

    public void Fail(IReadOnlyList<string> problems)
    {
        _watch.Stop();
        (Problems, Stage, State) = (problems, "", JobState.Failed);
    }

    public void Drop()
    {
        _watch.Stop();
        (Stage, State) = ("", JobState.Cancelled);
    }

    public void Cancel() => _cancel.Cancel();

    public void Dispose() => _cancel.Dispose();
}
