using System.Diagnostics;

namespace Coldwright.Web.Work;

/// <summary>A piece of long work: asked for once, watched by any number of tabs, kept with its answer.</summary>
internal sealed class Job : IDisposable
{
    private readonly Stopwatch _watch = new();
    private readonly CancellationTokenSource _cancel = new();
    private string _why = "";

    /// <param name="id">Number that names it.</param>
    /// <param name="question">What is asked.</param>
    public Job(int id, WorkQuestion question) => (Id, Question) = (id, question);

    public int Id { get; }
    public WorkQuestion Question { get; }
    public DateTime Asked { get; } = DateTime.Now;
    public CancellationToken Cancellation => _cancel.Token;

    public JobState State { get; private set; } = JobState.Waiting;
    /// <summary>What is being done, in words.</summary>
    public string Stage { get; private set; } = "waiting for other work to end";
    /// <summary>The answer; null until it is there.</summary>
    public object? Answer { get; private set; }
    /// <summary>Why there is no answer; empty otherwise.</summary>
    public IReadOnlyList<string> Problems { get; private set; } = [];
    /// <summary>The answer as it is sent, by units and files; made once for all who ask.</summary>
    public SentAnswers Sent { get; } = new();
    public double Seconds => _watch.Elapsed.TotalSeconds;
    public bool IsOver => State is JobState.Done or JobState.Failed or JobState.Cancelled;
    /// <summary>True for an answer that was stopped on its way: the best so far.</summary>
    public bool IsShortened { get; private set; }
    /// <summary>True when whoever asks the same question again is given this answer.</summary>
    public bool IsGoodForAll => !IsShortened && State is not (JobState.Failed or JobState.Cancelled);

    public void Begin()
    {
        _watch.Start();
        (State, Stage) = (JobState.Running, "beginning");
    }

    public void Say(string stage) => Stage = stage;

    public void Finish(object answer)
    {
        _watch.Stop();
        IsShortened = _cancel.IsCancellationRequested;
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
        (Stage, State) = (_why, JobState.Cancelled);
    }

    /// <param name="why">Why, when nobody pressed a button for it.</param>
    public void Cancel(string why = "")
    {
        _why = why;
        _cancel.Cancel();
    }

    public void Dispose() => _cancel.Dispose();
}
