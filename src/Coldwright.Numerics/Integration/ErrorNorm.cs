namespace Coldwright.Numerics.Integration;

/// <summary>Root mean square of components, each against its tolerance.</summary>
internal sealed class ErrorNorm
{
    private readonly double[] _absolute, _scale;
    private readonly bool[] _controlled;
    private readonly int _controlledCount;
    private readonly double _sensitivityFactor;

    public ErrorNorm(int count, IntegrationOptions options)
    {
        _absolute = options.ToleranceVector(count);
        _controlled = options.Controlled(count);
        _controlledCount = _controlled.Count(c => c);
        _scale = new double[count];
        // The estimate is of third order, the result of fifth: where the solution is smooth the error is far below the estimate, more
        // so at tight tolerances; in stiff components that follow a forcing both are alike. Hence only half of the way.
        Relative = options.RelativeTolerance * Math.Max(1, Math.Pow(1e-4 / options.RelativeTolerance, 1.0 / 6));
        // Differences of the right-hand side are no better than the square root of its noise.
        _sensitivityFactor = Math.Max(1, 10 * Math.Sqrt(options.RelativeNoise) / Relative);
        double widening = Relative / options.RelativeTolerance;
        Floors = new double[count];
        for (int i = 0; i < count; i++)
        {
            Floors[i] = _absolute[i] / options.RelativeTolerance;
            _absolute[i] *= widening;
        }
    }

    /// <summary>Relative tolerance on the error estimate.</summary>
    public double Relative { get; }

    /// <summary>Size of each component below which it does not matter.</summary>
    public double[] Floors { get; }

    public ReadOnlySpan<double> Scale => _scale;

    public void At(ReadOnlySpan<double> state)
    {
        for (int i = 0; i < _scale.Length; i++) _scale[i] = _absolute[i] + Relative * Math.Abs(state[i]);
    }

    /// <summary>Of the components under error control.</summary>
    public double Controlled(ReadOnlySpan<double> error)
    {
        double sum = 0;
        for (int i = 0; i < error.Length; i++)
        {
            if (!_controlled[i]) continue;
            double e = error[i] / _scale[i];
            sum += e * e;
        }
        return Math.Sqrt(sum / _controlledCount);
    }

    /// <summary>Of all components of all stages.</summary>
    public double OfStages(ReadOnlySpan<double> increments)
    {
        double sum = 0;
        int n = _scale.Length;
        for (int s = 0; s < increments.Length; s += n)
        {
            for (int i = 0; i < n; i++)
            {
                double e = increments[s + i] / _scale[i];
                sum += e * e;
            }
        }
        return Math.Sqrt(sum / increments.Length);
    }

    /// <summary>Of a sensitivity, against what a change of the parameter by its scale may change within the tolerance.</summary>
    public double OfSensitivity(ReadOnlySpan<double> error, ReadOnlySpan<double> sensitivity, double parameterScale, bool controlledOnly)
    {
        double sum = 0;
        int n = _scale.Length, counted = 0;
        for (int s = 0; s < error.Length; s += n)
        {
            for (int i = 0; i < n; i++)
            {
                if (controlledOnly && !_controlled[i]) continue;
                double e = error[s + i] / (_scale[i] / parameterScale + Relative * Math.Abs(sensitivity[i]));
                sum += e * e;
                counted++;
            }
        }
        return Math.Sqrt(sum / counted) / _sensitivityFactor;
    }
}
