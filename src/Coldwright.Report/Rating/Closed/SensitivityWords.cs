using Coldwright.Report.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>Inputs, steps and changes of figures as a person reads them.</summary>
internal sealed class SensitivityWords(Readout readout, double roomPressurePa)
{
    private readonly PartUnits _units = new(readout, roomPressurePa);

    /// <summary>An input's value; empty for a factor.</summary>
    public string Value(InputSensitivity i) => i.Unit == "" ? "" : IsPoint(i) ? readout.Any(i.Value, i.Unit, brief: true) : _units.Text(i.Value, i.Unit, isDifference: true);

    /// <summary>Its step with a sign, in the unit of the value; a doubt in percent.</summary>
    public string Step(InputSensitivity i)
    {
        if (i.IsDoubt) return $"±{readout.Percent(i.Step)}";
        var scale = _units.Scale(i.Unit, IsPoint(i) ? i.Step : i.Value, isDifference: true);
        return scale.Label == "" ? $"+{readout.Figures(scale.FromSi(i.Step), 2)}" : readout.With($"+{readout.Figures(scale.FromSi(i.Step), 2)}", scale.Label);
    }

    /// <summary>A change of a figure with its sign, without unit, to the decimals of the largest change it stands with.</summary>
    public string Change(HeadlineFigure f, double? change, double largest)
    {
        if (change is not { } c) return "none";
        var scale = Scale(f);
        var most = Math.Abs(scale.FromSi(largest));
        var text = readout.Fixed(scale.FromSi(c), most > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(most)), 0, 9) : 0);
        if (text.AsSpan().IndexOfAnyExcept('0', '.') < 0) return "0";
        return c > 0 ? $"+{text}" : text;
    }

    /// <summary>A change of a figure with its sign and unit.</summary>
    public string ChangeFull(HeadlineFigure f, double? change, double largest) => change is null ? "none" : readout.With(Change(f, change, largest), Unit(f));

    /// <summary>One standard deviation of a figure: <c>± 1.2 K</c>.</summary>
    public string Deviation(HeadlineFigure f) => readout.With(readout.With("±", readout.Figures(Scale(f).FromSi(f.Deviation), 2)), Unit(f));

    /// <summary>A figure's value.</summary>
    public string Value(HeadlineFigure f) => f.Unit is "K" or "Pa" or "W" ? readout.Any(f.Value, f.Unit) : readout.With(readout.Figures(Scale(f).FromSi(f.Value), 3), Unit(f));

    /// <summary>Unit in which changes of a figure are written.</summary>
    public string Unit(HeadlineFigure f) => Scale(f).Label;

    /// <summary>A change in the unit of <see cref="Unit"/>.</summary>
    public double Number(HeadlineFigure f, double change) => Scale(f).FromSi(change);

    private PartScale Scale(HeadlineFigure f) => f.Unit switch
    {
        "Pa" => _units.Scale(f.Unit, 1e6, isDifference: true),
        "W" => new PartScale("W", v => v),
        "kg/s" => _units.Scale(f.Unit, 1e-3),
        _ => _units.Scale(f.Unit, f.Value, isDifference: true),
    };

    // A difference of temperatures is told from a temperature by its key.
    private static bool IsPoint(InputSensitivity i) => i.Unit == "Pa" || (i.Unit == "K" && i.Id.EndsWith("temperature", StringComparison.Ordinal));
}
