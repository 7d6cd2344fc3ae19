using Coldwright.Web.Http;
using System.Text.Json;
using Coldwright.Report;
using Coldwright.Report.Batch;
using Coldwright.Report.Blending;
using Coldwright.Report.Charging;
using Coldwright.Report.Cooldown;
using Coldwright.Report.Envelopes;
using Coldwright.Report.Sizing;
using Coldwright.Report.Views;
using Coldwright.Safety;
using Coldwright.Web.Cooler;
using Coldwright.Web.Orders;
using Coldwright.Web.Work;

namespace Coldwright.Web.Answers;

/// <summary>Long work for the page: how far it is, and its answer as HTML.</summary>
internal static class JobJson
{
    /// <summary>Writes the members of an open object that tell how far it is.</summary>
    public static void Progress(Utf8JsonWriter w, Job job)
    {
        w.WriteNumber("id", job.Id);
        w.WriteString("kind", job.Question.Kind);
        w.WriteString("by", job.Question.Model);
        w.WriteString("revision", job.Question.Revision);
        w.WriteString("state", job.State.ToString().ToLowerInvariant());
        w.WriteString("stage", job.Stage);
        w.WriteString("asked", job.Asked.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
        w.WriteNumber("seconds", Math.Round(job.Seconds, 1));
        w.WriteBoolean("shortened", job.IsShortened);
        w.WriteBoolean("helps", job.Question.Kind == "rate" && job.Answer is Rated { HasSlopes: true });
    }

    /// <summary>Writes the whole, answer included.</summary>
    /// <param name="w">Writer.</param>
    /// <param name="job">The work.</param>
    /// <param name="units">Units a person reads first.</param>
    /// <param name="files">The files as they are now: what an answer would change in them.</param>
    public static void Whole(Utf8JsonWriter w, Job job, UnitSystem units, Snapshot files)
    {
        var roomPressurePa = files.Folder.Machine?.Room.PressurePa ?? 101325;
        w.WriteStartObject();
        Progress(w, job);
        w.WriteStartArray("problems");
        foreach (var problem in job.Problems) w.WriteStringValue(problem);
        w.WriteEndArray();
        switch (job.Answer)
        {
            case Rated rated when job.Question.Kind == "help":
                w.WriteLong("html", RatingView.Sensitivities(rated.Report(units)));
                break;
            case Rated rated:
                RatedJson.Write(w, rated, units, brief: false);
                if (rated.HasSlopes) w.WriteLong("helps_html", RatingView.Sensitivities(rated.Report(units)));
                break;
            case CooldownReport cooldown:
                w.WriteLong("html", WorkViews.Cooldown(cooldown with { Units = units }));
                break;
            case BatchReport batch:
                w.WriteLong("html", WorkViews.Batch(batch with { Units = units }));
                FindingsJson.Write(w, batch.Findings, units, roomPressurePa);
                break;
            case BlendReport blend:
                w.WriteLong("html", WorkViews.Blend(blend with { Units = units }));
                Take(w, files, Planners.Keys(blend, files.Text));
                break;
            case ChargeReport charge:
                w.WriteLong("html", WorkViews.Charge(charge with { Units = units }));
                break;
            case SizeReport size:
                w.WriteLong("html", WorkViews.Size(size with { Units = units }));
                Take(w, files, Planners.Keys(size));
                break;
            case EnvelopeReport envelope:
                w.WriteLong("html", WorkViews.Envelope(envelope with { Units = units }));
                break;
            case CompareAnswer compare:
                w.WriteLong("html", compare.Html(units));
                w.WriteString("first_name", compare.FirstName);
                w.WriteString("second_name", compare.SecondName);
                w.WriteLong("first_loop", compare.Loop(isFirst: true, units));
                w.WriteLong("second_loop", compare.Loop(isFirst: false, units));
                break;
            case SafetyReview review:
                FindingsJson.Write(w, review.Findings, units, roomPressurePa);
                break;
        }
        w.WriteEndObject();
    }

    // What the answer would write into the file, for whoever wants it there.
    private static void Take(Utf8JsonWriter w, Snapshot files, IEnumerable<(string Place, string Value)> keys)
    {
        w.WriteStartArray("take");
        if (files.Text is { } text)
            foreach (var (place, was, value) in FileKeys.Unlike(text, keys))
            {
                w.WriteStartObject();
                w.WriteString("place", place);
                w.WriteString("was", was);
                w.WriteString("value", value);
                w.WriteEndObject();
            }
        w.WriteEndArray();
    }
}
