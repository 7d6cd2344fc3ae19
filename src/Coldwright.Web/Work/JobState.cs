namespace Coldwright.Web.Work;

/// <summary>How far a piece of long work is.</summary>
internal enum JobState
{
    Waiting,
    Running,
    Done,
    Failed,
    Cancelled,
}
