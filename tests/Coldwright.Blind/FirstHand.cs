using Coldwright.Blind.Physics;

namespace Coldwright.Blind;

/// <summary>The first hand: a march in steps of six seconds.</summary>
/// <param name="seed">Seed.</param>
public sealed class FirstHand(int seed) : IBlindHand
{
    /// <inheritdoc/>
    public double StopS => BlindMarch.StopS;
    /// <inheritdoc/>
    public double EndS => BlindMarch.EndS;
    /// <inheritdoc/>
    public BlindCase Make(int number, CancellationToken cancel = default) => CaseMaker.Make(seed, number, cancel);
    /// <inheritdoc/>
    public BlindCase Again(BlindCase like, Truth truth) => CaseMaker.Of(like.Number, truth);
    /// <inheritdoc/>
    public (string Run, string Log) Write(BlindCase c, SensorSet set, int day = 0) => LogWriter.Write(c, set, seed, day: day);
    /// <inheritdoc/>
    public double Distance(BlindCase a, BlindCase b, SensorSet set) => LogWriter.Distance(a, b, set);
    /// <inheritdoc/>
    public double SettledLeakW(Truth truth, double insideK) => BlindMarch.SettledLeakW(truth, insideK);
    /// <inheritdoc/>
    public double WetFactor(double share) => 1 + 5.5 * share;
}
