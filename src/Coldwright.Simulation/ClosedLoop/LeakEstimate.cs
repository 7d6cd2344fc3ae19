namespace Coldwright.Simulation.ClosedLoop;

/// <summary>What leaks into a cold box.</summary>
/// <param name="ColdW">Heat that ends at the load, W.</param>
/// <param name="WarmW">Heat that ends at the recuperator's warm end, W.</param>
/// <param name="DeviationW">One standard deviation, W.</param>
/// <param name="Paths">Path by path, W.</param>
internal readonly record struct BoxLeak(double ColdW, double WarmW, double DeviationW, IReadOnlyDictionary<string, double> Paths);

/// <summary>The box's leak on the way to an answer: straight lines from where its model was last asked, beyond which it is asked again. Not thread-safe.</summary>
internal sealed class LeakEstimate
{
    // K, chosen by trial: short beside the way from the room to the load, over which the leak bends
    private const double ReachK = 5, StepK = 0.5;

    private double _loadK = double.NaN, _warmEndK;
    private BoxLeak _at, _byLoad, _byWarmEnd;

    /// <summary>The leak at a load and a warm end, K.</summary>
    /// <param name="loadK">K.</param>
    /// <param name="warmEndK">Where tubes end at the recuperator's warm end, K.</param>
    /// <param name="model">The model itself.</param>
    public BoxLeak At(double loadK, double warmEndK, Func<double, double, BoxLeak> model)
    {
        if (!(Math.Abs(loadK - _loadK) <= ReachK && Math.Abs(warmEndK - _warmEndK) <= ReachK))
        {
            (_at, _byLoad, _byWarmEnd) = (model(loadK, warmEndK), model(loadK + StepK, warmEndK), model(loadK, warmEndK + StepK));
            (_loadK, _warmEndK) = (loadK, warmEndK);
        }
        double load = (loadK - _loadK) / StepK, warm = (warmEndK - _warmEndK) / StepK;
        return _at with
        {
            ColdW = _at.ColdW + load * (_byLoad.ColdW - _at.ColdW) + warm * (_byWarmEnd.ColdW - _at.ColdW),
            WarmW = _at.WarmW + load * (_byLoad.WarmW - _at.WarmW) + warm * (_byWarmEnd.WarmW - _at.WarmW),
        };
    }
}
