namespace Coldwright.Web.Work;

/// <summary>
/// All work of a served page that takes longer than a moment. The same question is worked on once, whoever asks. Short work takes half of the processors,
/// but goes two at a time at least, and long work beside it goes one at a time, so that nobody waits a minute for an answer of seconds. Answers stay until newer ones of their kind push them out,
/// so that a page that is loaded again finds them.
/// </summary>
internal sealed class JobBoard : IDisposable
{
    private const int MostOfAKind = 4, FewestShort = 2, LongAtATime = 1;
    private const string Overtaken = "the cooler was changed before its turn came";

    private readonly Lock _gate = new();
    private readonly List<Job> _jobs = [];
    private readonly SemaphoreSlim _short = new(Math.Max(FewestShort, Environment.ProcessorCount / 2)), _long = new(LongAtATime);
    private int _lastId;
    private long _serial;

    /// <summary>Grows with everything that a watcher would want to know.</summary>
    public long Serial => Interlocked.Read(ref _serial);

    /// <summary>Jobs, newest last.</summary>
    public IReadOnlyList<Job> Jobs
    {
        get
        {
            lock (_gate) return [.. _jobs];
        }
    }

    /// <summary>The job of a number; null when it is no longer kept.</summary>
    public Job? Find(int id) => Jobs.FirstOrDefault(j => j.Id == id);

    /// <summary>The job that answers this, begun now unless it is there already.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="work">Does it; told how to say what it is at, and when to stop.</param>
    public Job Ask(WorkQuestion question, Func<Action<string>, CancellationToken, object> work)
    {
        Job job;
        lock (_gate)
        {
            if (_jobs.FirstOrDefault(j => j.Question == question && j.IsGoodForAll) is { } known)
            {
                // Last asked for, last thrown away.
                _jobs.Remove(known);
                _jobs.Add(known);
                return known;
            }
            _jobs.RemoveAll(j => j.Question == question && j.IsOver);
            // What has not begun and is about other files is wanted by nobody any more.
            foreach (var overtaken in _jobs.Where(j => j.State == JobState.Waiting && j.Question.Kind == question.Kind && j.Question.Revision != question.Revision)) overtaken.Cancel(Overtaken);
            job = new Job(++_lastId, question);
            _jobs.Add(job);
            // By kind, so that the many answers to a moved value do not push out the one that took a minute.
            foreach (var old in _jobs.Where(j => j.Question.Kind == question.Kind && j.IsOver).SkipLast(MostOfAKind - 1).ToArray())
            {
                _jobs.Remove(old);
                old.Dispose();
            }
        }
        Touch();
        _ = Run(job, work);
        return job;
    }

    /// <summary>Stops work of a kind that is about other files than these.</summary>
    public void CancelOlder(string kind, string revision)
    {
        foreach (var job in Jobs.Where(j => j.Question.Kind == kind && j.Question.Revision != revision && !j.IsOver)) job.Cancel();
    }

    /// <summary>Stops everything.</summary>
    public void Dispose()
    {
        foreach (var job in Jobs.Where(j => !j.IsOver)) job.Cancel();
    }

    private async Task Run(Job job, Func<Action<string>, CancellationToken, object> work)
    {
        var places = job.Question.IsLong ? _long : _short;
        try
        {
            await places.WaitAsync(job.Cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            job.Drop();
            Touch();
            return;
        }
        try
        {
            // A thread of its own: whatever goes wrong on it ends there, in words for the person who asked.
            await Task.Factory.StartNew(() => Work(job, work), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default).ConfigureAwait(false);
        }
        finally
        {
            places.Release();
            Touch();
            // Long work leaves hundreds of megabytes behind that nobody needs; little is alive, so giving them back takes some milliseconds.
            if (job.Question.IsLong) GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        }
    }

    private void Work(Job job, Func<Action<string>, CancellationToken, object> work)
    {
        try
        {
            job.Begin();
            Touch();
            job.Finish(work(stage =>
            {
                job.Say(stage);
                Touch();
            }, job.Cancellation));
        }
        catch (OperationCanceledException) when (job.Cancellation.IsCancellationRequested)
        {
            job.Drop();
        }
        catch (Exception e)
        {
            job.Fail(WorkProblems.Of(e));
        }
    }

    private void Touch() => Interlocked.Increment(ref _serial);
}
