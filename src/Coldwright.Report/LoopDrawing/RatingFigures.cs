using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Loops;

/// <summary>Puts the figures of a rating at the lines and parts they belong to.</summary>
internal static class RatingFigures
{
    public static LoopFigures Of(ModelRating rating, LoopLayout layout)
    {
        var figures = new List<LoopFigure>();
        var (compressor, recuperator) = (layout.Compressor.Name, layout.Recuperator.Name);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        // In flow order; only the recuperator is passed twice, first by the high-pressure stream.
        foreach (var point in rating.Loop.Points.Skip(1))
        {
            var port = point.Part == recuperator ? $"{recuperator}.{(seen.Add(recuperator) ? "high" : "low")}"
                : point.Part == layout.WarmExchanger?.Name ? $"{point.Part}.high"
                : point.Part == layout.Precooler?.Name ? $"{point.Part}.high" : point.Part;
            if (layout.LoopPath.FirstOrDefault(s => s.Line?.From == port)?.Line is { } line) Stream(figures, line, point);
        }
        if (rating.Loop.Points.Count > 0 && layout.LoopPath[^1].Line is { } suction) Stream(figures, suction, rating.Loop.Points[0]);
        if (layout.LoopPath.Count > 1 && layout.LoopPath[1].Line is { } discharge)
            figures.Add(new(LoopFigures.PlaceOf(discharge), FigureKind.MassFlow, rating.Loop.MassFlow));
        figures.Add(new(compressor, FigureKind.Power, rating.Power.MainW));
        figures.Add(new(recuperator, FigureKind.Heat, rating.Loop.RecuperatorDutyW, "passes"));
        if (layout.Precooler is { } precooler)
        {
            figures.Add(new(precooler.Name, FigureKind.Power, rating.Power.PrecoolW));
            figures.Add(new(precooler.Name, FigureKind.Heat, rating.Loop.PrecoolingW, "takes"));
        }
        if (layout.ColdBox is { } box) figures.Add(new(box.Name, FigureKind.Heat, rating.HeatLeakW.Values.Sum(), "leaks in"));
        if (rating.Closed is { } closed) Closed(figures, closed, layout);
        Load(figures, rating, layout);
        return new LoopFigures { Entries = figures };
    }

    private static void Stream(List<LoopFigure> figures, Line line, LoopPoint point)
    {
        var place = LoopFigures.PlaceOf(line);
        // without a precooler two points of the loop are one place: the later counts
        figures.RemoveAll(f => f.Place == place);
        figures.Add(new(place, FigureKind.Temperature, point.TemperatureK));
        figures.Add(new(place, FigureKind.Pressure, point.PressurePa));
        if (point.VapourFraction is > 0 and < 1) figures.Add(new(place, FigureKind.VapourShare, point.VapourFraction));
    }

    // What only a loop closed from its hardware knows.
    private static void Closed(List<LoopFigure> figures, ClosedLoopResult closed, LoopLayout layout)
    {
        if (layout.Buffer is { } buffer && closed.Buffer is { } work) figures.Add(new(buffer.Name, FigureKind.Pressure, work.PressurePa));
        if (layout.Precooler is { } precooler && closed.PrecoolerEvaporatingK is { } evaporating) figures.Add(new(precooler.Name, FigureKind.Temperature, evaporating, "boils at"));
    }

    private static void Load(List<LoopFigure> figures, ModelRating rating, LoopLayout layout)
    {
        if (layout.Block is { } block) figures.Add(new(block.Name, FigureKind.Temperature, rating.OperatingTemperatureK));
        if (layout.Vessel is { } vessel)
        {
            figures.Add(new(vessel.Name, FigureKind.Temperature, rating.Liquid?.LiquidTemperatureK ?? rating.OperatingTemperatureK));
            if (rating.Liquid is { } liquid) figures.Add(new(vessel.Name, FigureKind.Pressure, liquid.CondensingPressurePa));
        }
        if (layout.Feed is { SupplyPressurePa: not null } feed) figures.Add(new(feed.Name, FigureKind.Power, rating.Power.FeedW));
        if (layout.Flask is { } flask && rating.Liquid is { } made)
            figures.Add(new(flask.Name, FigureKind.LiquidRate, made.CollectedLPerH * 1e-3 / 3600, "collects"));
    }
}
