using System.Globalization;
using Coldwright.Quantities;

namespace Coldwright.Runs.Sensors;

/// <summary>
/// What is known about the error of a sensor's readings, part by part, one standard deviation each. A limit of error (a class, half a step) counts as
/// evenly spread, so it is divided by the square root of 3 (JCGM 100:2008, 4.3.7).
/// </summary>
/// <param name="model">The sensor.</param>
/// <param name="resolutionRaw">Smallest step of the logger, raw unit; 0 when none was seen.</param>
/// <param name="noise">Scatter from sample to sample, SI; 0 when it cannot be seen.</param>
/// <param name="largest">Largest reading, SI; stands in for a span that nobody gave.</param>
/// <param name="junctionK">Cold junction, K.</param>
/// <param name="barometerPa">Standard uncertainty of the barometer, Pa.</param>
public sealed class SensorUncertainty(SensorModel model, double resolutionRaw, double noise, double largest, double junctionK, double barometerPa)
{
    private const double DefaultJunctionLimitK = 1;
    private const double DefaultThermometerLimitK = 1;
    private const string Ours = "our assumption";
    private static readonly string[] _standardGauges = ["0.1", "0.25", "0.6", "1", "1.6", "2.5", "4"];
    private static readonly double _root3 = Math.Sqrt(3);

    private readonly SensorDescription _sensor = model.Sensor;

    /// <summary>What had to be assumed because the file does not say it.</summary>
    public IReadOnlyList<Spoken> Assumptions => [.. Defaults()];

    /// <summary>All parts at one value.</summary>
    /// <param name="value">Value, SI.</param>
    public IReadOnlyList<UncertaintyPart> At(double value)
    {
        var parts = new List<UncertaintyPart> { Calibration(value) };
        if (_sensor.Uncertainty is null && _sensor.Kind.Thermocouple is { } couple) parts.Add(Junction(couple, value));
        if (model.NeedsBarometer && barometerPa > 0) parts.Add(new("barometer", barometerPa, true, "the room's pressure is added to a gauge reading"));
        if (resolutionRaw > 0) parts.Add(new("step of the logger", resolutionRaw * model.Slope(value) / (2 * _root3), false, $"{Number(resolutionRaw)} {_sensor.UnitWord}, evenly spread"));
        if (noise > 0) parts.Add(new("scatter", noise, false, "seen from sample to sample"));
        return parts;
    }

    /// <summary>The root of the sum of squares of some parts.</summary>
    public static double Combine(IEnumerable<UncertaintyPart> parts) => Math.Sqrt(parts.Sum(p => p.Standard * p.Standard));

    private UncertaintyPart Calibration(double value)
    {
        if (_sensor.Uncertainty is { } own) return new("sensor", own, true, "given in run.yaml");
        if (_sensor.RelativeUncertainty is { } share) return new("sensor", share * Math.Abs(value), true, "given in run.yaml");
        switch (_sensor.Kind.Measured)
        {
            case Measured.Temperature when _sensor.Kind.Thermocouple is { } couple:
                {
                    var grade = ThermocoupleGrade;
                    var limit = ToleranceClass.Thermocouple(couple.Type, grade, value);
                    return new("wire", limit.LimitK / _root3, true, limit.InsideStandard ? $"IEC 60584-1, class {grade}" : $"class {grade} is not specified here; class 3 of IEC 60584-1 taken instead");
                }
            case Measured.Temperature when _sensor.Kind.ZeroOhm is not null:
                {
                    var limit = ToleranceClass.Platinum(PlatinumGrade, value);
                    return new("element", limit.LimitK / _root3, true, limit.InsideStandard ? $"IEC 60751, class {PlatinumGrade}" : $"IEC 60751, class {PlatinumGrade}, continued beyond its range");
                }
            case Measured.Temperature: return new("sensor", DefaultThermometerLimitK / _root3, true, Ours);
            case Measured.Pressure when _sensor.Kind.Element == SensorElement.Barometer: return new("sensor", 300 / _root3, true, Ours);
            case Measured.Pressure: return new("gauge", GaugePercent / 100 * SpanPa / _root3, true, _sensor is { Grade.Length: > 0, SpanPa: not null } ? $"{(_standardGauges.Contains(_sensor.Grade) ? "EN 837-1, " : "")}class {_sensor.Grade}: percent of the span" : Ours);
            case Measured.Power or Measured.Energy: return new("meter", 0.02 * Math.Abs(value), true, Ours);
            case Measured.Mass: return new("balance", 0.001 * Math.Abs(value) / _root3, true, Ours);
            default: return new("meter", 0.03 * Math.Abs(value), true, Ours);
        }
    }

    // A junction wrong by 1 K shifts the voltage by its warm sensitivity; the cold end turns that back into kelvin by its own, smaller one.
    private UncertaintyPart Junction(Thermocouple couple, double value)
    {
        var u = _sensor.ColdJunctionUncertaintyK ?? DefaultJunctionLimitK / _root3;
        var gain = couple.SensitivityVPerK(junctionK) / Math.Max(couple.SensitivityVPerK(value), 1e-7);
        return new("cold junction", u * gain, true, Spoken.Of($"{SpokenAmount.Difference(u, "0.0#")} at the junction, {gain:0.0} times that at the tip"));
    }

    private IEnumerable<Spoken> Defaults()
    {
        var own = _sensor.Uncertainty is not null || _sensor.RelativeUncertainty is not null;
        if (_sensor.Kind.Thermocouple is not null && _sensor.Uncertainty is null)
        {
            if (!own && _sensor.Grade.Length == 0) yield return "no class is given; class 2 of IEC 60584-1 is taken";
            if (_sensor.ColdJunctionUncertaintyK is null) yield return Spoken.Of($"the cold junction is taken as known within {SpokenAmount.Difference(DefaultJunctionLimitK, "0.##")}");
        }
        if (own) yield break;
        if (_sensor.Kind.ZeroOhm is not null && _sensor.Grade.Length == 0) yield return "no class is given; class B of IEC 60751 is taken";
        if (_sensor.Kind.Element == SensorElement.Thermometer) yield return Spoken.Of($"no uncertainty is given; within {SpokenAmount.Difference(DefaultThermometerLimitK, "0.##")} is taken");
        if (_sensor.Kind.Element == SensorElement.Barometer) yield return "no uncertainty is given; within 3 hPa is taken";
        if (_sensor.Kind.Element == SensorElement.PressureGauge)
        {
            if (_sensor.Grade.Length == 0) yield return "no class is given; class 2.5 is taken";
            if (_sensor.SpanPa is null) yield return Spoken.Of($"no span is given; {SpokenAmount.PressureDifference(SpanPa, "0.#")} is taken, a quarter above the largest reading");
        }
        if (_sensor.Kind.Measured is Measured.Power or Measured.Energy) yield return "no uncertainty is given; 2 % of the reading is taken";
        if (_sensor.Kind.Measured == Measured.Mass) yield return "no uncertainty is given; within 0.1 % of the reading is taken";
        if (_sensor.Kind.Measured == Measured.MassFlow) yield return "no uncertainty is given; 3 % of the reading is taken";
    }

    private int ThermocoupleGrade => _sensor.Grade.Length > 0 ? int.Parse(_sensor.Grade, CultureInfo.InvariantCulture) : 2;
    private string PlatinumGrade => _sensor.Grade.Length > 0 ? _sensor.Grade : "B";
    private double GaugePercent => _sensor.Grade.Length > 0 ? double.Parse(_sensor.Grade, CultureInfo.InvariantCulture) : 2.5;
    private double SpanPa => _sensor.SpanPa ?? 1.25 * Math.Abs(largest);

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
