namespace Coldwright.Report.Loops;

/// <summary>Figures as short texts in the reader's units.</summary>
internal static class FigureText
{
    /// <summary>Stands for a figure that is not known.</summary>
    public const string Unknown = "–";

    public static string Of(LoopFigure figure, Readout readout)
    {
        var word = figure.Word != "" ? figure.Word : Word(figure.Kind);
        var value = figure.Value is { } v && double.IsFinite(v) ? Value(figure.Kind, v, readout) : $"{Unknown}\u00a0{Unit(figure.Kind, readout)}".TrimEnd('\u00a0');
        return word == "" ? value : $"{word} {value}";
    }

    public static string KindName(FigureKind kind) => kind switch
    {
        FigureKind.Temperature => "temperature",
        FigureKind.Pressure => "pressure",
        FigureKind.MolarFlow or FigureKind.MassFlow => "flow",
        FigureKind.Power => "electrical power",
        FigureKind.Heat => "heat",
        FigureKind.VapourShare => "vapour share",
        FigureKind.Level => "level",
        _ => "liquid made",
    };

    private static string Word(FigureKind kind) => kind switch
    {
        FigureKind.Power => "uses",
        FigureKind.Heat => "heat",
        FigureKind.VapourShare => "vapour",
        FigureKind.Level => "level",
        FigureKind.LiquidRate => "makes",
        _ => "",
    };

    private static string Value(FigureKind kind, double value, Readout readout) => kind switch
    {
        FigureKind.Temperature => readout.Temperature(value),
        FigureKind.Pressure => readout.Pressure(value),
        FigureKind.MolarFlow => $"{readout.Figures(value, 3)}\u00a0mol/s",
        FigureKind.MassFlow => $"{readout.Figures(value * 1e3, 3)}\u00a0g/s",
        FigureKind.Power or FigureKind.Heat => readout.Watts(value),
        FigureKind.VapourShare or FigureKind.Level => Share(value, readout),
        _ => $"{readout.Figures(value * 3.6e6, 3)}\u00a0L/h",
    };

    // Whole per cent, finer only where a whole one would say all or nothing.
    private static string Share(double share, Readout readout) =>
        share is <= 0 or >= 1 or (>= 0.01 and < 0.995) ? $"{readout.Fixed(100 * share, 0)}\u00a0%" : $"{readout.Fixed(100 * share, share < 0.5 ? 2 : 1)}\u00a0%";

    private static string Unit(FigureKind kind, Readout readout) => kind switch
    {
        FigureKind.Temperature => readout.TemperatureSymbol,
        FigureKind.Pressure => readout.Units == UnitSystem.Us ? "psig" : "bar abs",
        FigureKind.MolarFlow => "mol/s",
        FigureKind.MassFlow => "g/s",
        FigureKind.Power or FigureKind.Heat => "W",
        FigureKind.VapourShare or FigureKind.Level => "%",
        _ => "L/h",
    };
}
