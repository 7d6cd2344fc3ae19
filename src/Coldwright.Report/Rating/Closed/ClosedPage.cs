using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>The sections of a rating's page that only a closed loop has.</summary>
internal sealed class ClosedPage(RatingReport report, ClosedLoopResult closed, Readout readout)
{
    private readonly ClosedWords _words = new(report, closed, readout);

    public void Write(HtmlText html)
    {
        html.Section("What hardware and charge make of it", h =>
        {
            h.Element("p", _words.Held);
            h.Table(["while it runs", ""], [
                .. _words.Pressures.Where(p => p.Name != ClosedWords.AtRest).Select(p => Row(p.Name, p.Value, p.Beside)),
                .. _words.Flow.Select(f => Row(f.Name, f.Value)),
                .. _words.Buffer is { } buffer ? [Row("Buffer", buffer)] : Array.Empty<string[]>()]);
        });
        if (_words.Contents.Count > 0)
        {
            var charge = new ChargePicture(closed, _words, readout);
            html.Section("Where the charge is", h => Page.Figure(h, charge.Draw, charge.Caption, charge.Table));
        }
        var composition = new CompositionPicture(_words, readout);
        html.Section("What was let in, and what circulates", h => Page.Figure(h, composition.Draw, composition.Caption, composition.Table));
        html.Section("At rest and at the start", StartUp);
    }

    /// <summary>What matters most, and what is in doubt; nothing when it was not asked for.</summary>
    public void Sensitivities(HtmlText html)
    {
        if (closed.Sensitivity is not { } sensitivity) return;
        var ranking = new SensitivityRanking(sensitivity, report.MakesLiquid);
        var picture = new SensitivityPicture(ranking, new SensitivityWords(readout, report.Machine.Room.PressurePa));
        if (ranking.Choices.Count > 0) html.Section("What matters most", h => Page.Figure(h, picture.DrawChoices, picture.ChoicesCaption, picture.ChoicesTable));
        if (ranking.Doubts.Count > 0) html.Section("What is in doubt", h => Page.Figure(h, picture.DrawDoubts, picture.DoubtsCaption, picture.DoubtsTable));
    }

    private void StartUp(HtmlText html)
    {
        var start = closed.StartUp;
        html.Element("p", _words.Start);
        var rest = _words.Pressures.Single(p => p.Name == ClosedWords.AtRest);
        List<string[]> rows = [Row("At rest, everything at room temperature", rest.Value, rest.Beside), Row("Highest pressure at rest that the motor starts against", readout.PressureFull(start.HighestStandstillPa), $"here it {Motor(start.Motor)}")];
        if (start.FirstHighPa is { } high) rows.Add(Row("High side while all is warm", readout.PressureFull(high), high > start.AllowedHighPa ? "above what is allowed" : ""));
        if (start.AllowedHighPa is { } allowed) rows.Add(Row("Allowed on the high side", readout.PressureFull(allowed)));
        if (start.FirstLowPa is { } low) rows.Add(Row("Low side while all is warm", readout.PressureFull(low)));
        if (start.FirstDischargeK is { } discharge) rows.Add(Row("Discharge while all is warm", readout.TemperatureFull(discharge)));
        if (start.BufferNeededM3 is > 0 and { } needed) rows.Add(Row("Buffer that would hold the first minutes", $"{readout.Figures(needed * 1e3, 3)} L"));
        if (start.FirstChargeKg is { } first) rows.Add(Row("Or let in first, the rest once it is cold", _words.Grams(first)));
        html.Table(["at rest and warm", ""], rows);
    }

    private static string Motor(string verdict) => verdict == "doubtful" ? "is doubtful" : verdict;

    // What is said beside a figure stands under it: a telephone has no room for a third column.
    private static string[] Row(string name, string value, string beside = "") => [name, beside == "" ? value : $"{value}\n{beside}"];
}
