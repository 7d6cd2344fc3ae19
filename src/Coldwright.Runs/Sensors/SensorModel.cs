namespace Coldwright.Runs.Sensors;

/// <summary>Turns the numbers of one column into SI.</summary>
public sealed class SensorModel
{
    private readonly SensorDescription _sensor;

    /// <param name="sensor">The sensor.</param>
    public SensorModel(SensorDescription sensor) => _sensor = sensor;

    /// <summary>The sensor.</summary>
    public SensorDescription Sensor => _sensor;

    /// <summary>True when the barometer enters the result.</summary>
    public bool NeedsBarometer => _sensor.Unit?.Reference == Quantities.UnitReference.Gauge || _sensor.Signal is { IsGauge: true };

    /// <summary>Value in SI; false when the number lies outside the sensor or outside what can be true.</summary>
    /// <param name="raw">Number in the column.</param>
    /// <param name="junctionK">Cold junction, K; used by millivolt only.</param>
    /// <param name="roomPressurePa">Barometer, Pa; used by gauge pressures only.</param>
    /// <param name="value">SI; the offset is taken off.</param>
    public bool TryConvert(double raw, double junctionK, double roomPressurePa, out double value)
    {
        var inside = true;
        switch (_sensor.Scale)
        {
            case RawScale.Millivolt:
                var couple = _sensor.Kind.Thermocouple!;
                inside = couple.TryTemperatureK(raw * 1e-3 + couple.VoltageV(junctionK), out value);
                break;
            case RawScale.Ohm:
                inside = PlatinumThermometer.TryTemperatureK(raw / _sensor.Kind.ZeroOhm!.Value, out value);
                break;
            case RawScale.Signal:
                var line = _sensor.Signal!;
                value = line.LowSi + (raw - line.LowReading) * SignalSlope(line) + (line.IsGauge ? roomPressurePa : 0);
                break;
            default:
                value = _sensor.Unit!.ToSi(raw, roomPressurePa);
                break;
        }
        value -= _sensor.Offset;
        var (kind, v) = (_sensor.Kind.Quantity, value);
        return inside && v >= kind.Minimum && v <= kind.Maximum && !(kind.AboveMinimum && v == kind.Minimum);
    }

    /// <summary>How much the SI value changes with the number in the column, SI per raw unit.</summary>
    /// <param name="value">Value, SI.</param>
    public double Slope(double value) => _sensor.Scale switch
    {
        RawScale.Millivolt => 1e-3 / Math.Max(_sensor.Kind.Thermocouple!.SensitivityVPerK(value + _sensor.Offset), 1e-7),
        RawScale.Ohm => 1 / (_sensor.Kind.ZeroOhm!.Value * PlatinumThermometer.RatioPerK(Math.Clamp(value + _sensor.Offset, PlatinumThermometer.LowestK, PlatinumThermometer.HighestK))),
        RawScale.Signal => Math.Abs(SignalSlope(_sensor.Signal!)),
        _ => _sensor.Unit!.Factor,
    };

    private static double SignalSlope(SignalLine line) => (line.HighSi - line.LowSi) / (line.HighReading - line.LowReading);
}
