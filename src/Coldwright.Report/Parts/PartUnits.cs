using Coldwright.Quantities;
using Coldwright.Simulation.Parts;

namespace Coldwright.Report.Parts;

/// <summary>A unit that people read, and the way to it from SI.</summary>
/// <param name="Label">Unit as written behind a number; empty for a bare number.</param>
/// <param name="FromSi">From SI.</param>
internal sealed record PartScale(string Label, Func<double, double> FromSi);

/// <summary>Chooses units of a readable size for the figures and axes of a part.</summary>
/// <param name="readout">Units that come first.</param>
/// <param name="roomPressurePa">Barometric pressure, Pa absolute; gauge readings are made with it.</param>
internal sealed class PartUnits(Readout readout, double roomPressurePa)
{
    private const double Minute = 60, Hour = 3600, Day = 86400;

    /// <summary>Units that come first.</summary>
    public Readout Readout => readout;

    /// <summary>A unit in which a value of that size has few zeros.</summary>
    /// <param name="unit">SI unit.</param>
    /// <param name="size">Largest value to be written, SI.</param>
    /// <param name="isDifference">True for a difference of temperatures or pressures.</param>
    public PartScale Scale(string unit, double size, bool isDifference = false)
    {
        double a = Math.Abs(size);
        bool us = readout.Units == UnitSystem.Us;
        return unit switch
        {
            "K" => new(readout.TemperatureSymbol, isDifference ? readout.DifferenceValue : readout.TemperatureValue),
            "Pa" when isDifference => us ? Named("psi", "psi") : a < 1e5 ? Times("kPa", 1e-3) : Times("bar", 1e-5),
            "Pa" => us ? Named("psig", "psig") : Named("bar abs", "bara"),
            "W" => a is > 0 and < 0.5 ? Times("mW", 1e3) : Times("W", 1),
            "kg/s" => a < 1e-6 ? Times("mg/h", 3.6e9) : a < 1e-4 ? Times("mg/s", 1e6) : Times("g/s", 1e3),
            "kg" => a < 1e-3 ? Times("mg", 1e6) : a < 1 ? Times("g", 1e3) : Times("kg", 1),
            "m3" => a < 1e-3 ? Times("cm³", 1e6) : Times("L", 1e3),
            "m2" => a < 0.1 ? Times("cm²", 1e4) : Times("m²", 1),
            "m" => a < 0.5 ? Times("mm", 1e3) : Times("m", 1),
            "J" => a < 1e3 ? Times("J", 1) : Times("kJ", 1e-3),
            "s" => a < 2 * Minute ? Times("s", 1) : a < 2 * Hour ? Times("min", 1 / Minute) : a < 2 * Day ? Times("h", 1 / Hour) : Times("d", 1 / Day),
            "1" when a is > 0 and < 1e-3 => Times("ppm", 1e6),
            "1" or "" => Times("", 1),
            _ => Times(unit.Replace("m2", "m²").Replace("m3", "m³"), 1),
        };
    }

    /// <summary>A value with its unit.</summary>
    public string Text(double value, string unit, bool isDifference = false)
    {
        var scale = Scale(unit, value, isDifference);
        return With(Number(scale, value), scale.Label);
    }

    /// <summary>A figure with its unit; a temperature or pressure also in the unit beside.</summary>
    public string Text(PartFigure f)
    {
        if (f.Value is not { } value) return f.Text;
        if (double.IsInfinity(value)) return "without end";
        var text = Text(value, f.Unit, f.IsDifference);
        if (f.IsDifference) return text;
        return f.Unit switch
        {
            "K" => $"{text} ({readout.TemperatureBeside(value)})",
            "Pa" => $"{text} ({readout.PressureBeside(value)})",
            _ => text,
        };
    }

    /// <summary>A figure with its unit alone.</summary>
    public string Short(PartFigure f) => f.Value is not { } value ? f.Text : double.IsInfinity(value) ? "without end" : Text(value, f.Unit, f.IsDifference);

    /// <summary>The band of a figure in the figure's own unit: <c>1.10 to 1.36</c>; empty without one.</summary>
    public string Band(PartFigure f)
    {
        if (f.Band is not { } band || f.Value is not { } value) return "";
        if (double.IsInfinity(value)) return "";
        var scale = Scale(f.Unit, value, f.IsDifference);
        return double.IsInfinity(band.High) ? $"from {Number(scale, band.Low)} on" : $"{Number(scale, band.Low)} to {Number(scale, band.High)}";
    }

    /// <summary>A limit's two values.</summary>
    public (string Value, string Limit) Texts(PartLimit l) => (Text(l.Value, l.Unit), Text(l.Limit, l.Unit));

    private string Number(PartScale scale, double value)
    {
        var v = scale.FromSi(value);
        return scale.Label is "K" or "°F" && Math.Abs(v) >= 10 ? readout.Fixed(v, 1) : readout.Figures(v, Math.Abs(v) >= 1000 ? 4 : 3);
    }

    private static string With(string number, string label) => label == "" ? number : $"{number} {label}";

    private static PartScale Times(string label, double factor) => new(label, v => v * factor);

    private PartScale Named(string label, string word) => UnitTable.TryFindWord(word, out var unit)
        ? new(label, v => unit.FromSi(v, roomPressurePa))
        : throw new ArgumentException($"unit {word} is not in the unit table", nameof(word));
}
