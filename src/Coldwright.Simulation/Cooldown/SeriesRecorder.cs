namespace Coldwright.Simulation.Cooldown;

/// <summary>Keeps the moments of a run.</summary>
internal sealed class SeriesRecorder(Plant plant)
{
    private readonly List<(double TimeS, PlantPoint At)> _kept = [];

    /// <summary>Time from which on moments are kept; theirs is counted from it.</summary>
    public double FromS { get; set; }
    public IReadOnlyList<(double TimeS, PlantPoint At)> Kept => _kept;

    public void Keep(RunSample sample)
    {
        double time = sample.TimeS - FromS;
        if (time < 0 || (_kept.Count > 0 && time <= _kept[^1].TimeS)) return;
        _kept.Add((time, sample.Run.Point(sample.State)));
    }

    /// <summary>The moments up to a time.</summary>
    /// <param name="endS">s.</param>
    /// <param name="restPa">Pressure of the loop at rest with the load at a temperature (K), Pa; used while the compressor stands still.</param>
    public CooldownSeries Series(double endS, Func<double, double>? restPa)
    {
        var kept = _kept.Where(k => k.TimeS <= endS * (1 + 1e-9)).ToArray();
        double room = plant.Hardware.RoomK;
        double[] Of(Func<PlantPoint, double> value) => [.. kept.Select(k => value(k.At))];
        return new CooldownSeries
        {
            TimeS = [.. kept.Select(k => k.TimeS)],
            TemperatureK = Of(p => p.LoadK),
            ThrottleInletK = Of(p => p.Flow > 0 ? p.ThrottleK : p.LoadK),
            PrecooledK = Of(p => p.Flow > 0 ? p.RecuperatorInletK : room),
            HighPressurePa = Of(p => p.Flow > 0 ? p.HighPa : restPa?.Invoke(p.LoadK) ?? 0),
            LowPressurePa = Of(p => p.Flow > 0 ? p.SuctionPa : restPa?.Invoke(p.LoadK) ?? 0),
            MolarFlow = Of(p => p.Flow),
            CoolingW = Of(p => p.CoolingW),
            StoredHeatW = Of(p => p.StoredW),
            RecuperatorW = Of(p => p.RecuperatorStoredW),
            LoadMassW = Of(p => p.LoadStoredW),
            InsulationW = Of(p => p.InsulationStoredW),
            LeakW = Of(p => p.LeakW),
            LoadW = Of(p => p.LoadW),
            PowerW = Of(p => p.PowerW),
        };
    }
}
