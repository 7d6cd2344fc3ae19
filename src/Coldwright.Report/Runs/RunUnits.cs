using System.Globalization;
using Coldwright.Runs.Sensors;

namespace Coldwright.Report.Runs;

/// <summary>Values, uncertainties and times of a run as a person reads them.</summary>
internal sealed class RunUnits(RunReport report, bool typographic)
{
    /// <summary>Shared habits of numbers.</summary>
    public Readout Readout { get; } = new(report.Units, report.Record.RoomPressurePa, typographic);

    private bool IsUs => report.Units == UnitSystem.Us;

    /// <summary>The room's pressure: <c>1013.3 mbar</c> or <c>14.70 psia</c>.</summary>
    public string Barometer(double pressurePa) => IsUs ? Readout.PressureBeside(pressurePa) : Readout.With(Readout.Fixed(pressurePa / 100, 1), "mbar");

    /// <summary>Unit of an axis.</summary>
    public string Symbol(Measured measured) => measured switch
    {
        Measured.Temperature => Readout.TemperatureSymbol,
        Measured.Pressure => IsUs ? "psig" : "barg",
        Measured.Power => "W",
        Measured.Energy => "kWh",
        Measured.Mass => "g",
        _ => "g/s",
    };

    /// <summary>A value on an axis.</summary>
    public double OnAxis(Measured measured, double value) => measured switch
    {
        Measured.Temperature => Readout.TemperatureValue(value),
        Measured.Pressure => (value - report.Record.RoomPressurePa) / (IsUs ? Psi : 1e5),
        _ => value * Scale(measured),
    };

    /// <summary>A value: <c>101.3 K</c>, <c>17.52 bar gauge</c>.</summary>
    public string Value(Measured measured, double value) => With(measured switch
    {
        Measured.Temperature => Readout.Fixed(OnAxis(measured, value), 1),
        Measured.Pressure => Readout.Fixed(OnAxis(measured, value), IsUs ? 1 : 2),
        Measured.Power => Readout.Fixed(value, Math.Abs(value) < 10 ? 2 : 0),
        _ => Readout.Figures(OnAxis(measured, value), 4),
    }, Symbol(measured));

    /// <summary>An uncertainty or a difference with two figures: <c>2.9 K</c>.</summary>
    public string Spread(Measured measured, double spread) => With(Readout.Figures(measured switch
    {
        Measured.Temperature => Readout.DifferenceValue(spread),
        Measured.Pressure => spread / (IsUs ? Psi : 1e5),
        _ => spread * Scale(measured),
    }, 2), measured == Measured.Pressure ? IsUs ? "psi" : "bar" : Symbol(measured));

    /// <summary>A difference of pressure: <c>0.21 bar</c>, <c>38 mbar</c>.</summary>
    public string Drop(double pa) => IsUs ? With(Readout.Figures(pa / Psi, 3), "psi") : Math.Abs(pa) < 1e4 ? With(Readout.Figures(pa / 100, 2), "mbar") : With(Readout.Figures(pa / 1e5, 3), "bar");

    /// <summary>Value and spread, the spread to two figures and the value to the same decimals: <c>(1.21 ± 0.08)e-8 mol/s</c>.</summary>
    public string WithSpread(double value, double spread, string unit)
    {
        var largest = Math.Max(Math.Abs(value), spread);
        if (largest == 0) return With("0", unit);
        var power = (int)Math.Floor(Math.Log10(largest));
        var scale = power is >= -2 and <= 4 ? 0 : power;
        double v = value / Math.Pow(10, scale), u = spread / Math.Pow(10, scale);
        var decimals = u > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(u)), 0, 6) : 2;
        var numbers = $"{Readout.Fixed(v, decimals)} ± {Readout.Fixed(u, decimals)}";
        return With(scale == 0 ? numbers : $"({numbers})e{(typographic ? scale.ToString(CultureInfo.InvariantCulture).Replace('-', '\u2212') : scale.ToString(CultureInfo.InvariantCulture))}", unit);
    }

    /// <summary>A length of time in one or two units: <c>4 h 52 min</c>.</summary>
    public static string Duration(double s) => s switch
    {
        < 120 => s.ToString("0.#", CultureInfo.InvariantCulture) + " s",
        < 7200 => (s / 60).ToString("0.#", CultureInfo.InvariantCulture) + " min",
        < 2 * 86400 => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(Math.Round(s / 60) / 60)} h {Math.Round(s / 60) % 60:0} min"),
        < 730 * 86400.0 => (s / 86400).ToString("0", CultureInfo.InvariantCulture) + " days",
        _ => (s / (365.25 * 86400)).ToString(s < 365.25 * 864000 ? "0.0" : "0", CultureInfo.InvariantCulture) + " years",
    };

    /// <summary>A moment: wall clock when it is known, else the time since the start.</summary>
    public string Moment(double s)
    {
        var whole = TimeSpan.FromSeconds(Math.Round(Math.Abs(s)));
        var since = string.Create(CultureInfo.InvariantCulture, $"{(s < -0.5 ? "-" : "")}{(int)whole.TotalHours}:{whole.Minutes:00}:{whole.Seconds:00}");
        if (report.Record.Start is not { } start) return since;
        var time = start.AddSeconds(s);
        var clock = time.ToString("HH:mm:ss", CultureInfo.InvariantCulture);
        return time.Date == start.Date ? clock : $"{clock} (day {1 + (int)(time.Date - start.Date).TotalDays})";
    }

    private const double Psi = 6894.757293168361;

    private static double Scale(Measured measured) => measured switch
    {
        Measured.Energy => 1 / 3.6e6,
        Measured.Mass or Measured.MassFlow => 1e3,
        _ => 1,
    };

    private string With(string number, string unit) => number + (typographic ? "\u00a0" : " ") + unit;
}
