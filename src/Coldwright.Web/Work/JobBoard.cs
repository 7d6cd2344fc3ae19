namespace Coldwright.Web.Work;

/// <summary>
/// All long work of a served page. The same question is worked on once, whoever asks; two pieces run at a time; answers stay until newer ones push
/// them out, so that a page that is loaded again finds them.
/// </summary>
internal sealed class JobBoard : IDisposable
{
    private const int MostKept = 48, AtATime = 2;

    private readonly Lock _gate = new();
    private readonly List<Job> _jobs = [];
    private readonly SemaphoreSlim _places = new(AtATime);
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
    /// <param name="kind">Word for what is done.</param>
    /// <param name="key">Everything that the answer depends on.</param>
    /// <param name="revision">The files' revision that it is about.</param>
    /// <param name="work">Does it; told how to say what it is at, and when to stop.</param>
    public Job Ask(string kind, string key, string revision, Func<Action<string>, CancellationToken, object> work)
    {
        Job job;
        lock (_gate)
        {
            if (_jobs.FirstOrDefault(j => j.Key == key && j.State is not (JobState.Failed or JobState.Cancelled)) is { } known)
            {
                // Last asked for, last thrown away.
                _jobs.Remove(known);
                _jobs.Add(known);
                return known;
            }
            _jobs.RemoveAll(j => j.Key == key && j.IsOver);
            job = new Job(++_lastId, kind, key, revision);
            _jobs.Add(job);
            while (_jobs.Count > MostKept && _jobs.FirstOrDefault(j => j.IsOver) is { } oldest)
            {
                _jobs.Remove(oldest);
                oldest.Dispose();
            }
        }
        Touch();
        _ = Task.Factory.StartNew(() => Run(job, work), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        return job;
    }

    /// <summary>Stops work of a kind that is about other files than these.</summary>
    public void CancelOlder(string kind, string revision)
    {
        foreach (var job in Jobs.Where(j => j.Kind == kind && j.Revision != revision && !j.IsOver)) job.Cancel();
    }

    /// <summary>Stops everything.</summary>
    public void Dispose()
    {
        foreach (var job in Jobs.Where(j => !j.IsOver)) job.Cancel();
    }

    private void Run(Job job, Func<Action<string>, CancellationToken, object> work)
    {
        try
        {
            _places.Wait(job.Cancellation);
        }
        catch (OperationCanceledException)
        {
            job.Drop();
            Touch();
            return;
        }
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
            // A thread of its own: whatever went wrong ends here, in words for the person who asked.
            job.Fail(WorkProblems.Of(e));
        }
        finally
        {
            _places.Release();
            Touch();
        }
    }

    private void Touch() => Interlocked.Increment(ref _serial);
}
