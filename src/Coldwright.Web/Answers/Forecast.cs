using Coldwright.Web.Http;
using System.Diagnostics;
using System.Text.Json;
using Coldwright.Report;
using Coldwright.Report.Views;
using Coldwright.Simulation.Rating;
using Coldwright.Web.Cooler;
using Coldwright.Web.Work;

namespace Coldwright.Web.Answers;

/// <summary>What a closed cooler's figures become with values moved, along the slopes of its last closed answer.</summary>
/// <param name="From">The answer whose slopes were followed.</param>
/// <param name="Asked">When that was asked for.</param>
/// <param name="Figures">The forecast.</param>
/// <param name="Seconds">How long it took.</param>
internal sealed record Forecast(Rated From, DateTime Asked, SlopeForecast Figures, double Seconds)
{
    private const string PartsPrefix = "parts/";

    /// <summary>The forecast for files; null where no loop is closed, none has been yet, or something was changed that has no slope.</summary>
    /// <param name="files">The files, or what they would be.</param>
    /// <param name="jobs">Where closed answers are found, newest last.</param>
    public static Forecast? Of(Snapshot files, JobBoard jobs)
    {
        var watch = Stopwatch.StartNew();
        if (!Raters.IsClosed(files) || jobs.Jobs.LastOrDefault(j => j.Answer is Rated { HasSlopes: true } && j.Question is { Kind: "rate" } or { Kind: "help", Model: "reference" }) is not { Answer: Rated from } job) return null;
        if (from.Files.ShopText != files.ShopText || Differences.AllOf(from.Files.Text!, files.Text!) is not { } places) return null;
        var keys = places.Where(p => p != "name").Select(Key).ToArray();
        var figures = SlopeForecast.Of(from.Result.Main.Closed!.Sensitivity!, (from.Files.Folder.Machine!, from.Files.Folder.Layout!), (files.Folder.Machine!, files.Folder.Layout!), keys);
        return figures is null ? null : new Forecast(from, job.Asked, figures, watch.Elapsed.TotalSeconds);
    }

    /// <summary>Writes one member of an open object.</summary>
    public void Write(Utf8JsonWriter w, UnitSystem units)
    {
        w.WriteStartObject("forecast");
        w.WriteLong("answer", RatingView.Forecast(From.Report(units), Figures));
        w.WriteString("asked", Asked.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
        w.WriteBoolean("far", Figures.IsFar);
        w.WriteNumber("seconds", Math.Round(Seconds, 4));
        w.WriteEndObject();
    }

    // A list of the file counts from 0, the inputs of the closed loop from 1.
    internal static string Key(string place) =>
        string.Join('.', (place.StartsWith(PartsPrefix, StringComparison.Ordinal) ? place[PartsPrefix.Length..] : place).Split('/').Select(k => int.TryParse(k, out var i) ? $"{i + 1}" : k));
}
