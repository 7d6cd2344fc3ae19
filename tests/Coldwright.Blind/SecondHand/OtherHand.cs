using Coldwright.Blind.Physics;

namespace Coldwright.Blind.SecondHand;

/// <summary>The second hand: another refrigerator, other days, other loggers. Machines, faults and their sizes are drawn from the same ranges as the first hand's, from numbers of their own.</summary>
/// <param name="seed">Seed.</param>
public sealed class OtherHand(int seed) : IBlindHand
{
    // below these nobody would look for a fault: kelvin, share of the time, kilograms
    private static readonly double[] _least = [4, 0.1, 0.04];
    private const int Attempts = 20, Salt = 900_001;

    /// <inheritdoc/>
    public double StopS => SecondPlan.StopAtS;
    /// <inheritdoc/>
    public double EndS => SecondPlan.LatestS;

    /// <summary>The day of a case.</summary>
    public SecondPlan PlanOf(int number) => SecondPlan.Draw(Dice(number, 1));

    /// <summary>How a case is written down.</summary>
    public Habits HabitsOf(int number, SensorSet set) => Habits.Draw(Dice(number, 2 + (int)set), set);

    private Random Dice(int number, int use) => new(unchecked(Salt * seed + 613 * number + 37 * use));

    /// <inheritdoc/>
    public BlindCase Make(int number, CancellationToken cancel = default)
    {
        for (int attempt = 0; ; attempt++)
        {
            var one = Of(number, CaseMaker.Drawn(Salt + seed * 53 + attempt, number), cancel);
            if (one.Truth.Faults.Count == 0 || one.Worth.Values.Max() > 0 || attempt > Attempts) return one;
        }
    }

    /// <inheritdoc/>
    public BlindCase Again(BlindCase like, Truth truth) => new(like.Number, truth, SecondDay.Run(truth, PlanOf(like.Number)), like.Worth);

    /// <summary>The case of a machine, with what each of its faults is worth.</summary>
    public BlindCase Of(int number, Truth truth, CancellationToken cancel = default)
    {
        var plan = PlanOf(number);
        double[] LossOf(Truth t) => Loss(SecondDay.Run(t, plan, cancel), t, plan);
        var course = SecondDay.Run(truth, plan, cancel);
        var worth = new Dictionary<string, double>();
        if (truth.Faults.Count > 0)
        {
            double[] ill = Loss(course, truth, plan), sound = LossOf(truth with { Faults = [] });
            foreach (var (id, _) in truth.Faults)
            {
                double[] without = truth.Faults.Count == 1 ? sound : LossOf(truth.Without(id));
                double most = 0;
                for (int i = 0; i < ill.Length; i++)
                    if (ill[i] - sound[i] > _least[i]) most = Math.Max(most, (ill[i] - without[i]) / (ill[i] - sound[i]));
                worth[id] = Math.Clamp(most, 0, 1);
            }
        }
        return new BlindCase(number, truth, course, worth);
    }

    // how warm it seems to stay, K; how late it is, logarithm; what is missing in the flask, kg
    private static double[] Loss(BlindCourse c, Truth truth, SecondPlan plan)
    {
        var end = c.Moments.Last(m => m.TimeS < plan.FeedOnS);
        var late = c.Moments.First(m => m.LoadK < c.Moments[0].LoadK - 0.7 * (c.Moments[0].LoadK - end.LoadK));
        double shown = truth.Of("sensor-offset", 0) + truth.Of("cold-junction", 0) * SecondSensor.JunctionGain(end.LoadK, true);
        return [end.LoadK + Math.Abs(shown), Math.Log(late.TimeS), -c.CollectedKg];
    }

    /// <inheritdoc/>
    public (string Run, string Log) Write(BlindCase c, SensorSet set, int day = 0) => HabitLog.Write(c, PlanOf(c.Number), HabitsOf(c.Number, set), Dice(c.Number, 11), Dice(c.Number, 23 + day), day);

    /// <inheritdoc/>
    public double Distance(BlindCase a, BlindCase b, SensorSet set) => HabitLog.Distance(a, b, PlanOf(a.Number), HabitsOf(a.Number, set));

    /// <inheritdoc/>
    public double SettledLeakW(Truth truth, double insideK) => FoamBox.SettledW(truth.Leak * truth.Of("leak", 1), truth.Of("wet-insulation", 0), insideK, 293.15);

    /// <inheritdoc/>
    public double WetFactor(double share) => Math.Exp(6 * share);
}
