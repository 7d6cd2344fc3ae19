namespace Coldwright.Numerics.Integration;

/// <summary>
/// Step size by Gustafsson's predictive control (K. Gustafsson, ACM Trans. Math. Softw. 20 (1994) 496), a proportional-integral
/// controller for implicit methods: the trend of the error from step to step counts, not its size alone. Error estimate of order 3.
/// </summary>
internal sealed class StepController
{
    private const double Safety = 0.9, Shrink = 0.2, Grow = 8, KeepUpTo = 1.2;
    private double _lastStep, _lastError;
    private bool _rejected;

    public void Restart() => (_lastStep, _lastError, _rejected) = (0, 0, false);

    /// <summary>Step after an accepted one.</summary>
    /// <param name="step">The step.</param>
    /// <param name="error">Its error, at most 1.</param>
    /// <param name="iterations">Iterations it took: many make it shorter.</param>
    /// <param name="keep">True when the Jacobian is kept: a step only a little longer is not worth new decompositions.</param>
    public double AfterAccepted(double step, double error, int iterations, bool keep)
    {
        double factor = Factor(error, iterations);
        if (_lastStep > 0)
        {
            double predictive = Safety * step / _lastStep * Math.Pow(Math.Max(_lastError, 1e-2) / Math.Max(error * error, 1e-20), 0.25);
            factor = Math.Min(factor, Math.Max(predictive, Shrink));
        }
        if (_rejected) factor = Math.Min(factor, 1);
        (_lastStep, _lastError, _rejected) = (step, error, false);
        return keep && factor is >= 1 and <= KeepUpTo ? step : factor * step;
    }

    /// <summary>Step to try instead of a rejected one.</summary>
    public double AfterRejected(double step, double error, int iterations)
    {
        // The very first step is a guess: its failure says little about the error's size.
        double factor = _lastStep == 0 ? 0.1 : Factor(error, iterations);
        _rejected = true;
        return Math.Min(factor, 0.9) * step;
    }

    /// <summary>After a failed iteration no growth in the next accepted step.</summary>
    public void IterationFailed() => _rejected = true;

    private static double Factor(double error, int iterations)
    {
        double limit = RadauStepper.IterationLimit;
        double safety = Safety * (2 * limit + 1) / (2 * limit + iterations);
        return Math.Clamp(safety * Math.Pow(Math.Max(error, 1e-10), -0.25), Shrink, Grow);
    }
}
