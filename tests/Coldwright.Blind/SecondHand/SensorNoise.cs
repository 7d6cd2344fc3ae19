using Coldwright.Blind.Physics;

namespace Coldwright.Blind.SecondHand;

/// <summary>What passes: noise of each sample, terminals that wander, bursts, a channel that stands still.</summary>
internal sealed class SensorNoise(Habits habits, SecondSensor[] sensors, Func<double> normal, Random random)
{
    private const double WanderK = 0.35, WanderS = 1500, BurstShare = 0.004, BurstFactor = 12;
    private readonly Dictionary<string, double> _still = sensors.ToDictionary(s => s.Name, _ => double.NaN);
    private double _wanderK;

    /// <summary>The terminals after another step, K.</summary>
    public double Terminals(double stepS)
    {
        if (habits.Noise != NoiseKind.Wandering) return 0;
        double keep = Math.Exp(-stepS / WanderS);
        return _wanderK = keep * _wanderK + WanderK * Math.Sqrt(1 - keep * keep) * normal();
    }

    /// <summary>One sample in SI.</summary>
    public double Read(SecondSensor s, BlindMoment m, Truth truth, double terminalsK, double t)
    {
        if (s.Name == habits.Frozen.Channel && t > habits.Frozen.FromS && t < habits.Frozen.ToS && double.IsFinite(_still[s.Name])) return _still[s.Name];
        double burst = habits.Noise == NoiseKind.Bursts && random.NextDouble() < BurstShare ? BurstFactor : 1;
        return _still[s.Name] = s.Shown(m, truth, terminalsK) + s.Noise * burst * normal();
    }
}
