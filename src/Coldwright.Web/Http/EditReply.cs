using Coldwright.Web.Cooler;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web.Http;

/// <summary>What became of a change: written, refused with the reasons, or clashed with what somebody else wrote.</summary>
internal static class EditReply
{
    public static Task Write(HttpContext context, EditOutcome outcome, CoolerFiles files) => Reply.Json(context, w =>
    {
        w.WriteStartObject();
        w.WriteString("revision", files.Now().Revision);
        w.WriteBoolean("written", outcome.IsWritten);
        w.WriteStartArray("problems");
        foreach (var problem in outcome.Problems) w.WriteStringValue(problem.Line > 0 ? problem.ToString() : problem.Message);
        w.WriteEndArray();
        w.WriteStartArray("clashes");
        foreach (var clash in outcome.Clashes)
        {
            w.WriteStartObject();
            w.WriteString("place", clash.Place);
            w.WriteString("mine", clash.Mine);
            w.WriteString("theirs", clash.Theirs);
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteString("undo", files.UndoName);
        w.WriteString("redo", files.RedoName);
        w.WriteEndObject();
    }, outcome.IsWritten ? StatusCodes.Status200OK : outcome.Clashes.Count > 0 ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity);
}
