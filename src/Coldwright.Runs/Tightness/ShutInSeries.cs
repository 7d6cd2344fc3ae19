using Coldwright.Quantities;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Tightness;

/// <summary>Pressure and temperature of a shut-in gas, averaged over blocks of time.</summary>
internal sealed class ShutInSeries
{
    private const int MostBlocks = 240;

    private readonly List<double> _times = [], _pressures = [], _temperatures = [], _own = [];

    public ReadOnlySpan<double> TimesS => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_times);
    public IReadOnlyList<double> PressuresPa => _pressures;
    public IReadOnlyList<double> TemperaturesK => _temperatures;
    /// <summary>Uncertainty of each block's pressure that is its own, Pa.</summary>
    public IReadOnlyList<double> OwnPa => _own;
    public int Count => _times.Count;
    public required RunChannel Pressure { get; init; }
    public RunChannel? Temperature { get; private init; }
    public required double StepPa { get; init; }
    public double CommonPa { get; private set; }
    public double CommonK { get; private set; }
    public double DurationS => Count > 1 ? _times[^1] - _times[0] : 0;

    /// <summary>The series; null with a complaint when channels are missing or hold too little.</summary>
    public static ShutInSeries? From(RunRecord record, TightnessDescription test, List<Spoken> warnings, out string complaint)
    {
        var pressure = Find(record, test.PressureChannel, Measured.Pressure, "pressure", out complaint);
        if (pressure is null) return null;
        var temperature = Find(record, test.TemperatureChannel, Measured.Temperature, "temperature", out var noTemperature);
        if (temperature is null && test.TemperatureChannel.Length > 0)
        {
            complaint = noTemperature;
            return null;
        }
        if (temperature is null) warnings.Add(Spoken.Of($"no thermometer belongs to the test; the room's {SpokenAmount.Celsius(record.RoomTemperatureK)} is taken as constant, so a change of temperature shows as a leak"));
        var step = pressure.Sensor.Unit is { } unit ? pressure.ResolutionRaw * unit.Factor : pressure.ResolutionRaw * new SensorModel(pressure.Sensor).Slope(pressure.Lowest);
        var series = new ShutInSeries { Pressure = pressure, Temperature = temperature, StepPa = step };
        series.Fill(record, test.FromS ?? double.NegativeInfinity, test.ToS ?? double.PositiveInfinity);
        if (series.Count >= 3 && series.DurationS > 0) return series;
        complaint = $"the channel '{pressure.Name}' has {series.Count} good readings inside the test; a test needs 3 at different times";
        return null;
    }

    private static RunChannel? Find(RunRecord record, string name, Measured measured, string word, out string complaint)
    {
        complaint = "";
        var fitting = record.Channels.Where(c => c.Measured == measured && c.Sensor.Kind.Element != SensorElement.Barometer && (name.Length == 0 ? c.Place.Port != Whereabouts.Room || measured == Measured.Temperature : c.Name == name)).ToArray();
        if (fitting.Length == 1) return fitting[0];
        complaint = fitting.Length == 0
            ? $"there is no {word} channel{(name.Length > 0 ? $" '{name}'" : "")} for the test"
            : $"there are {fitting.Length} {word} channels; name the one of the test with '{word}:'";
        return null;
    }

    private void Fill(RunRecord record, double from, double to)
    {
        var times = Pressure.TimesS;
        var good = 0;
        for (var i = 0; i < times.Length; i++)
            if (IsGood(i)) good++;
        var block = Math.Max(1, (good + MostBlocks - 1) / MostBlocks);
        double t = 0, p = 0, k = 0, own = 0;
        var n = 0;
        for (var i = 0; i < times.Length; i++)
        {
            if (!IsGood(i)) continue;
            var temperature = Temperature is null ? record.RoomTemperatureK : TemperatureAt(Temperature, times[i]);
            var (u, common) = (Pressure.StandardUncertainties[i], Pressure.CommonUncertainties[i]);
            (t, p, k, own, n) = (t + times[i], p + Pressure.Values[i], k + temperature, own + Math.Max(u * u - common * common, 0), n + 1);
            CommonPa = Math.Max(CommonPa, common);
            if (n < block) continue;
            Add();
        }
        // a rest of a block counts when it is the larger part of one
        if (n > block / 2) Add();
        if (Temperature is { GoodCount: > 0 }) CommonK = Temperature.CommonUncertainties[Temperature.HighestIndex];

        bool IsGood(int i) => Pressure.Flags[i] == SampleFlag.Good && Pressure.TimesS[i] >= from && Pressure.TimesS[i] <= to;

        void Add()
        {
            _times.Add(t / n);
            _pressures.Add(p / n);
            _temperatures.Add(k / n);
            // Rounding does not average out when nothing scatters, so a block is never better than a single reading's step.
            // A weight must be finite also where the file claims a step of nothing.
            _own.Add(Math.Max(Math.Max(Math.Sqrt(own) / n, StepPa / Math.Sqrt(12)), 1e-6 * _pressures[^1]));
            (t, p, k, own, n) = (0, 0, 0, 0, 0);
        }
    }

    // Straight between the good samples around a time.
    private static double TemperatureAt(RunChannel channel, double timeS)
    {
        var i = channel.Axis.IndexAt(timeS);
        int before = i, after = i + 1;
        while (before >= 0 && channel.Flags[before] != SampleFlag.Good) before--;
        while (after < channel.Count && channel.Flags[after] != SampleFlag.Good) after++;
        if (before < 0) return after < channel.Count ? channel.Values[after] : channel.Lowest;
        if (after >= channel.Count || channel.TimesS[after] == channel.TimesS[before]) return channel.Values[before];
        var f = (timeS - channel.TimesS[before]) / (channel.TimesS[after] - channel.TimesS[before]);
        return channel.Values[before] + f * (channel.Values[after] - channel.Values[before]);
    }
}
