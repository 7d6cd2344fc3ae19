using System.Runtime.CompilerServices;
using Coldwright.Machine.Files.Editing;
using Coldwright.Report;
using Coldwright.Report.Views;
using Coldwright.Simulation.Freezing;
using Coldwright.Web.Answers;
using Coldwright.Web.Cooler;
using Coldwright.Web.Http;
using Coldwright.Web.Work;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web;

/// <summary>
/// The first answer to the files as they are, or as they would be with a value moved: at once, without writing anything. Where pressures follow from
/// hardware and charge, along the slopes of the last closed answer if what was changed has slopes; else by the cubic model between the file's pressures.
/// </summary>
/// <param name="jobs">Where closed answers are found.</param>
internal sealed class FirstAnswers(JobBoard jobs)
{
    private const int MostKept = 16;

    // Half of the processors, as for short work: whoever moves a slider waits for one answer before, not for processors shared with many.
    private readonly SemaphoreSlim _places = new(Math.Max(1, Environment.ProcessorCount / 2));
    private readonly Lock _gate = new();
    private readonly LinkedList<Rated> _known = [];
    private readonly ConditionalWeakTable<Rated, StreamFreezing> _freezing = [];

    public async Task Answer(HttpContext context, Snapshot files, IReadOnlyList<Change> changes, bool wantsFreezing, UnitSystem units)
    {
        Snapshot asked;
        try
        {
            asked = changes.Count == 0 || files.Text is null ? files : files.With(changes.Aggregate(files.Text, (text, c) => ValueEditor.Set(text, c.Place, c.Value)));
        }
        catch (ArgumentException e)
        {
            await Reply.Problems(context, [e.Message], StatusCodes.Status422UnprocessableEntity).ConfigureAwait(false);
            return;
        }
        if (!asked.IsGood)
        {
            await Reply.Problems(context, asked.Folder.Problems.Select(p => p.ToString()), StatusCodes.Status422UnprocessableEntity).ConfigureAwait(false);
            return;
        }
        var cancel = context.RequestAborted;
        if (!wantsFreezing && Forecast.Of(asked, jobs) is { } forecast)
        {
            await Reply.Json(context, w =>
            {
                w.WriteStartObject();
                w.WriteString("revision", asked.Revision);
                w.WriteBoolean("trial", changes.Count > 0);
                forecast.Write(w, units);
                w.WriteEndObject();
            }).ConfigureAwait(false);
            return;
        }
        Rated rated;
        StreamFreezing? freezing = null;
        try
        {
            rated = await Rate(asked, wantsFreezing, cancel).ConfigureAwait(false);
            if (wantsFreezing) freezing = _freezing.GetValue(rated, r => StreamFreezing.Of(r.Result.Main));
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            await Reply.Problems(context, WorkProblems.Of(e), StatusCodes.Status422UnprocessableEntity).ConfigureAwait(false);
            return;
        }
        await Reply.Json(context, w =>
        {
            w.WriteStartObject();
            w.WriteString("revision", asked.Revision);
            w.WriteBoolean("trial", changes.Count > 0);
            // Whoever asks about freezing alone has the figures already.
            if (changes.Count > 0 || !wantsFreezing) RatedJson.Write(w, rated, units, brief: true);
            if (Forecast.Of(asked, jobs) is { } forecast) forecast.Write(w, units);
            if (freezing is not null)
            {
                w.WriteLong("freezing", FreezingView.Write(freezing, units, asked.Folder.Machine!.Room.PressurePa));
                w.WriteString("freezing_model", rated.Result.Main.Model);
                w.WriteBoolean("freezing_closed", rated.Result.Main.Closed is not null);
            }
            w.WriteEndObject();
        }).ConfigureAwait(false);
    }

    // What is known already waits for nobody; where it will freeze is better told by the settled answer, which knows what circulates.
    private async Task<Rated> Rate(Snapshot asked, bool wantsFreezing, CancellationToken cancel)
    {
        if (wantsFreezing && jobs.Jobs.LastOrDefault(j => j.Question.Kind == "rate" && j.Question.Revision == asked.Revision && j.Answer is Rated) is { Answer: Rated settled }) return settled;
        if (Known(asked.Revision) is { } known) return known;
        await _places.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            return Known(asked.Revision) ?? Keep(await Task.Run(() => Raters.First(asked, cancel), cancel).ConfigureAwait(false));
        }
        finally
        {
            _places.Release();
        }
    }

    /// <summary>Begins the first answer to the files as they are.</summary>
    public void WarmUp(Snapshot files)
    {
        if (!files.IsGood) return;
        _places.Wait();
        _ = Task.Run(() =>
        {
            try
            {
                Keep(Raters.First(files, CancellationToken.None));
            }
            catch (Exception e) when (e is Numerics.SolveException or ArgumentException)
            {
                // Whoever asks for this answer is told why there is none.
                return;
            }
            finally
            {
                _places.Release();
            }
        });
    }

    private Rated? Known(string revision)
    {
        lock (_gate) return _known.FirstOrDefault(r => r.Files.Revision == revision);
    }

    private Rated Keep(Rated rated)
    {
        lock (_gate)
        {
            _known.AddFirst(rated);
            if (_known.Count > MostKept) _known.RemoveLast();
            return rated;
        }
    }
}
