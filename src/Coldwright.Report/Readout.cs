using Coldwright.Quantities;

namespace Coldwright.Report;

/// <summary>SI values as a person reads them: rounded, with unit, in the chosen system and beside it the one readers also expect.</summary>
public sealed class Readout
{
    private static readonly string[] DifferenceWords = ["difference", "pinch", "approach", "superheat", "subcooling"];

    private readonly double _roomPressurePa;
    private readonly bool _typographic;

    /// <summary>A readout for one room.</summary>
    /// <param name="units">Which units come first.</param>
    /// <param name="roomPressurePa">Barometric pressure, Pa absolute; gauge readings are made with it.</param>
    /// <param name="typographic">True for pages: a real minus sign; false for terminals.</param>
    public Readout(UnitSystem units, double roomPressurePa, bool typographic)
    {
        Units = units;
        _roomPressurePa = roomPressurePa;
        _typographic = typographic;
    }

    /// <summary>The system in use.</summary>
    public UnitSystem Units { get; }

    /// <summary>Symbol of the first temperature unit: K or °F.</summary>
    public string TemperatureSymbol => Units == UnitSystem.Us ? "°F" : "K";

    /// <summary>A temperature in the first unit, without its symbol.</summary>
    /// <param name="temperatureK">K.</param>
    public double TemperatureValue(double temperatureK) => In(TemperatureSymbol, temperatureK);

    /// <summary>A temperature difference in the first unit, without its symbol.</summary>
    /// <param name="differenceK">K.</param>
    public double DifferenceValue(double differenceK) => Units == UnitSystem.Us ? In("Δ°F", differenceK) : differenceK;

    /// <summary>A temperature in the first unit: <c>98.4 K</c>.</summary>
    /// <param name="temperatureK">K.</param>
    public string Temperature(double temperatureK) => With(Fixed(TemperatureValue(temperatureK), 1), TemperatureSymbol);

    /// <summary>The other unit of <see cref="Temperature"/>: <c>-174.8 °C</c>, or kelvin when °F comes first.</summary>
    /// <param name="temperatureK">K.</param>
    public string TemperatureBeside(double temperatureK) => Units == UnitSystem.Us
        ? With(Fixed(temperatureK, 1), "K")
        : With(Fixed(In("°C", temperatureK), 1), "°C");

    /// <summary>Both: <c>98.4 K (-174.8 °C)</c>.</summary>
    /// <param name="temperatureK">K.</param>
    public string TemperatureFull(double temperatureK) => $"{Temperature(temperatureK)} ({TemperatureBeside(temperatureK)})";

    /// <summary>A temperature difference: <c>2.1 K</c>.</summary>
    /// <param name="differenceK">K.</param>
    public string Difference(double differenceK) => With(Figures(DifferenceValue(differenceK), Math.Abs(differenceK) < 10 ? 2 : 3), TemperatureSymbol);

    /// <summary>A pressure: <c>19.0 bar abs</c> or <c>260 psig</c>.</summary>
    /// <param name="pressurePa">Pa absolute.</param>
    public string Pressure(double pressurePa) => Units == UnitSystem.Us
        ? With(Figures(In("psig", pressurePa), 4), "psig")
        : With(Figures(In("bara", pressurePa), 3), "bar abs");

    /// <summary>A pressure for an axis: bar absolute or psig.</summary>
    /// <param name="pressurePa">Pa absolute.</param>
    public double PressureValue(double pressurePa) => Units == UnitSystem.Us ? In("psig", pressurePa) : pressurePa / 1e5;

    /// <summary>The other reading of <see cref="Pressure"/>: <c>18.0 bar gauge</c> or <c>275 psia</c>.</summary>
    /// <param name="pressurePa">Pa absolute.</param>
    public string PressureBeside(double pressurePa) => Units == UnitSystem.Us
        ? With(Figures(In("psia", pressurePa), 4), "psia")
        : With(Figures(In("barg", pressurePa), 3), "bar gauge");

    /// <summary>Both: <c>19.0 bar abs (18.0 bar gauge)</c>.</summary>
    /// <param name="pressurePa">Pa absolute.</param>
    public string PressureFull(double pressurePa) => $"{Pressure(pressurePa)} ({PressureBeside(pressurePa)})";

    /// <summary>A difference of pressures: <c>1.5 bar</c> or <c>22 psi</c>.</summary>
    /// <param name="differencePa">Pa.</param>
    public string PressureDifference(double differencePa) => Units == UnitSystem.Us
        ? With(Figures(In("psi", differencePa), 2), "psi")
        : With(Figures(differencePa / 1e5, 2), "bar");

    /// <summary>A power or heat flow: <c>1290 W</c>, <c>46.0 mW</c>.</summary>
    /// <param name="watts">W.</param>
    public string Watts(double watts) => Math.Abs(watts) switch
    {
        < 5e-5 => With("0", "W"),
        < 0.5 => With(Figures(watts * 1e3, 3), "mW"),
        < 1000 => With(Figures(watts, 3), "W"),
        _ => With(Figures(watts, 4), "W"),
    };

    /// <summary>A share: <c>4.1 %</c>.</summary>
    /// <param name="fraction">0..1.</param>
    public string Percent(double fraction) => With(Math.Abs(fraction) < 5e-6 ? "0" : Figures(100 * fraction, Math.Abs(fraction) < 0.1 ? 2 : 3), "%");

    /// <summary>A value in SI with its unit, turned into the units above where it is a temperature or a pressure.</summary>
    /// <param name="value">Value, SI (pressures absolute).</param>
    /// <param name="unit">SI unit.</param>
    /// <param name="what">What it is, in words; a difference of temperatures is told by its name.</param>
    /// <param name="brief">True to leave the second unit out.</param>
    public string Any(double value, string unit, string what = "", bool brief = false) => unit switch
    {
        "K" when DifferenceWords.Any(w => what.Contains(w, StringComparison.OrdinalIgnoreCase)) => Difference(value),
        "K" => brief ? Temperature(value) : TemperatureFull(value),
        "Pa" => brief ? Pressure(value) : PressureFull(value),
        "W" => Watts(value),
        "1" or "" => Figures(value, 3),
        _ => With(Figures(value, 3), unit),
    };

    /// <summary>A sentence with its amounts in the chosen system; in SI as it was written.</summary>
    /// <param name="sentence">The sentence.</param>
    public string Say(Spoken sentence) => Units == UnitSystem.Us ? sentence.With(Say) : sentence.ToString();

    /// <summary>What a solver advises, its pressures absolute: no barometer belongs to it.</summary>
    /// <param name="report">The solver's report.</param>
    /// <param name="units">Which units come first.</param>
    public static string Advice(Numerics.SolveReport report, UnitSystem units)
    {
        if (units == UnitSystem.Si || report.Words is not { } words) return report.Advice;
        var readout = new Readout(units, 0, typographic: false);
        return Spoken.From(words).With(a => a.Kind == SpokenKind.Pressure ? readout.PressureBeside(a.Value) : readout.Say(a));
    }

    private string Say(SpokenAmount amount) => amount.Kind switch
    {
        SpokenKind.Temperature => Temperature(amount.Value),
        SpokenKind.TemperatureDifference => Difference(amount.Value),
        SpokenKind.Pressure => Pressure(amount.Value),
        SpokenKind.PressureDifference => PressureDifference(amount.Value),
        _ => throw new ArgumentOutOfRangeException(nameof(amount), amount.Kind, "unknown kind of amount"),
    };

    /// <summary>A number with so many significant figures, no exponent: <c>0.0123</c>, <c>1290</c>.</summary>
    /// <param name="value">Number.</param>
    /// <param name="figures">Significant figures, 1 or more.</param>
    public string Figures(double value, int figures)
    {
        if (value == 0) return "0";
        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return Fixed(value, Math.Clamp(figures - 1 - magnitude, 0, 12));
    }

    /// <summary>A number with so many decimals.</summary>
    /// <param name="value">Number.</param>
    /// <param name="decimals">Decimals, 0 or more.</param>
    public string Fixed(double value, int decimals)
    {
        var text = value.ToString("F" + decimals, System.Globalization.CultureInfo.InvariantCulture);
        if (text.StartsWith('-') && text.AsSpan(1).IndexOfAnyExcept('0', '.') < 0) text = text[1..];
        return _typographic ? text.Replace('-', '\u2212') : text;
    }

    /// <summary>A relative error: <c>3e-12</c>.</summary>
    /// <param name="error">Relative error.</param>
    public string Error(double error)
    {
        var text = Math.Abs(error).ToString("0.#e-0", System.Globalization.CultureInfo.InvariantCulture);
        return error == 0 ? "0" : _typographic ? text.Replace('-', '\u2212') : text;
    }

    /// <summary>A number with its unit; on a page they stay on one line.</summary>
    internal string With(string number, string unit) => number + (_typographic ? "\u00a0" : " ") + unit;

    private double In(string unitWord, double siValue) => UnitTable.TryFindWord(unitWord, out var unit)
        ? unit.FromSi(siValue, _roomPressurePa)
        : throw new ArgumentException($"unit {unitWord} is not in the unit table", nameof(unitWord));
}
