using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>A forecast along the slopes of a closed loop as verdict and tiles, under the names that the rating itself uses.</summary>
/// <param name="report">The rating whose slopes were followed.</param>
/// <param name="forecast">The forecast.</param>
internal sealed class ForecastTiles(RatingReport report, SlopeForecast forecast)
{
    // Below so much there is no liquid and no energy for a litre of it.
    private const double LeastLPerH = 1e-3;
    // Smaller changes are not seen in the figure beside them.
    private const double Unfelt = 2e-4;

    private readonly Readout _readout = report.Readout(typographic: true);

    private SensitivityWords Words => new(_readout, report.Machine.Room.PressurePa);

    public void Write(HtmlText html)
    {
        var moved = forecast.Moved.Where(m => m.Change != 0).ToArray();
        string what = moved.Length == 0 ? "nothing that counts was moved" : string.Join("; ", moved.Select(Moved));
        html.Element("p", $"About so, along the slopes of the last closed answer: {what}. {(forecast.IsFar ? "That is a long way to go on a slope: it shows the direction, and the closed answer may differ much." : "The closed answer may differ a little.")}", "verdict forecast");
        html.Inside("div", "tiles", h =>
        {
            foreach (var (name, figure) in Named())
                h.Inside("div", "tile", t => t.Element("span", name, "name").Element("span", Value(figure), "value").Element("span", Change(figure), "note"));
        });
    }

    // First those of the rating's own headline, in its order.
    private IEnumerable<(string Name, HeadlineFigure Figure)> Named()
    {
        string product = report.Main.Liquid is { } liquid ? RatingHeadline.Capital(liquid.Substance) : "";
        (string Id, string Name)[] order =
        [
            ("no_load_temperature_K", "No-load temperature"), product == "" ? ("net_cooling_W", "Net cooling") : ("collected_L_h", $"{product} collected"), ("energy_kWh_L", "Energy"), ("power_W", "Electrical power"),
            ("high_pressure_Pa", "High pressure"), ("low_pressure_Pa", "Low pressure"), ("mass_flow_kg_s", "Flow"), ("discharge_temperature_K", "Discharge temperature"),
        ];
        foreach (var (id, name) in order)
            if (forecast.Figures.FirstOrDefault(f => f.Id == id) is { } figure) yield return (name, figure);
    }

    private string Value(HeadlineFigure f) => f.Id switch
    {
        "collected_L_h" when f.Value < LeastLPerH => "none",
        "energy_kWh_L" when !(Litres > LeastLPerH) || f.Value <= 0 => "none",
        _ when f.Unit == "Pa" => $"≈ {_readout.Pressure(f.Value)}",
        _ when f.Unit == "K" => $"≈ {_readout.Temperature(f.Value)}",
        _ => $"≈ {Words.Value(f)}",
    };

    private double Litres => forecast.Figures.FirstOrDefault(f => f.Id == "collected_L_h")?.Value ?? 0;

    private string Change(HeadlineFigure f)
    {
        double change = f.Value - report.Main.Closed!.Sensitivity!.Figures.First(g => g.Id == f.Id).Value;
        return Math.Abs(change) < Unfelt * Math.Abs(f.Value) ? "as before" : Words.ChangeFull(f, change, change);
    }

    private string Moved(MovedInput m)
    {
        string from = Words.Value(m.Input), to = Words.Value(m.Input with { Value = m.Input.Value + m.Change });
        return $"{m.Input.Name} from {from} to {to}";
    }
}
