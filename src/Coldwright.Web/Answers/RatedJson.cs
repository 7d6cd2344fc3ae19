using Coldwright.Web.Http;
using System.Text.Json;
using Coldwright.Report;
using Coldwright.Report.Views;
using Coldwright.Simulation.Rating;

namespace Coldwright.Web.Answers;

/// <summary>A rating for the page: what it was and its pieces as HTML.</summary>
internal static class RatedJson
{
    /// <summary>Writes the members of an open object.</summary>
    /// <param name="w">Writer.</param>
    /// <param name="rated">The rating.</param>
    /// <param name="units">Units a person reads first.</param>
    /// <param name="brief">True to leave out tables that nobody reads while a value moves.</param>
    public static void Write(Utf8JsonWriter w, Rated rated, UnitSystem units, bool brief)
    {
        var report = rated.Report(units);
        var layout = rated.Files.Folder.Layout!;
        w.WriteString("model", rated.Result.Main.Model);
        w.WriteString("second_model", rated.Result.SecondOpinion?.Model);
        w.WriteBoolean("closed", rated.Result.Main.Closed is not null);
        w.WriteBoolean("works", rated.Result.Main.LimitedBy.Kind == LimitationKind.Works);
        w.WriteNumber("seconds", Math.Round(rated.Seconds, 3));
        w.WriteLong("answer", RatingView.Answer(report));
        w.WriteLong("loop", RatingView.Loop(report, layout, isPhone: true));
        w.WriteLong("loop_table", RatingView.LoopTable(report, layout));
        w.WriteLong("pictures", RatingView.Pictures(report));
        if (!brief) w.WriteLong("tables", RatingView.Tables(report));
        FindingsJson.Write(w, rated.Findings, units, rated.Files.Folder.Machine!.Room.PressurePa);
    }
}
