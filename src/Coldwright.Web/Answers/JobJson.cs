using System.Text.Json;
using Coldwright.Report;
using Coldwright.Report.Batch;
using Coldwright.Report.Cooldown;
using Coldwright.Report.Envelopes;
using Coldwright.Report.Views;
using Coldwright.Safety;
using Coldwright.Web.Work;

namespace Coldwright.Web.Answers;

/// <summary>Long work for the page: how far it is, and its answer as HTML.</summary>
internal static class JobJson
{
    /// <summary>Writes the members of an open object that tell how far it is.</summary>
    public static void Progress(Utf8JsonWriter w, Job job)
    {
        w.WriteNumber("id", job.Id);
        w.WriteString("kind", job.Kind);
        w.WriteString("revision", job.Revision);
        w.WriteString("state", job.State.ToString().ToLowerInvariant());
        w.WriteString("stage", job.Stage);
        w.WriteString("asked", job.Asked.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
        w.WriteNumber("seconds", Math.Round(job.Seconds, 1));
    }

    /// <summary>Writes the whole, answer included.</summary>
    public static void Whole(Utf8JsonWriter w, Job job, UnitSystem units, double roomPressurePa)
    {
        w.WriteStartObject();
        Progress(w, job);
        w.WriteStartArray("problems");
        foreach (var problem in job.Problems) w.WriteStringValue(problem);
        w.WriteEndArray();
        switch (job.Answer)
        {
            case Rated rated when job.Kind == "help":
                w.WriteString("html", RatingView.Sensitivities(rated.Report(units)));
                w.WriteString("answer", RatingView.Answer(rated.Report(units)));
                w.WriteString("model", rated.Result.Main.Model);
                break;
            case Rated rated:
                RatedJson.Write(w, rated, units, brief: false);
                break;
            case CooldownReport cooldown:
                w.WriteString("html", WorkViews.Cooldown(cooldown with { Units = units }));
                break;
            case BatchReport batch:
                w.WriteString("html", WorkViews.Batch(batch with { Units = units }));
                FindingsJson.Write(w, batch.Findings, units, roomPressurePa);
                break;
            case EnvelopeReport envelope:
                w.WriteString("html", WorkViews.Envelope(envelope with { Units = units }));
                break;
            case CompareAnswer compare:
                w.WriteString("html", compare.Html(units));
                w.WriteString("first_name", compare.FirstName);
                w.WriteString("second_name", compare.SecondName);
                w.WriteString("first_loop", compare.Loop(isFirst: true, units));
                w.WriteString("second_loop", compare.Loop(isFirst: false, units));
                break;
            case SafetyReview review:
                FindingsJson.Write(w, review.Findings, units, roomPressurePa);
                break;
        }
        w.WriteEndObject();
    }
}
