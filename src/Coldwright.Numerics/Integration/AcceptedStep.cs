namespace Coldwright.Numerics.Integration;

/// <summary>
/// One accepted step and its dense output, valid only while the observer runs. The polynomial is the integral of the cubic through
/// the slopes at the start (the last stage of the step before) and at the three stages: fourth degree, continuous with its slope
/// from step to step, and exact at the end. Linear balances hold along it as they do at the ends.
/// </summary>
public sealed class AcceptedStep
{
    private readonly DenseRecord _state;
    private readonly DenseRecord[] _sensitivities;

    internal AcceptedStep(int count, int parameters)
    {
        _state = new(count);
        _sensitivities = new DenseRecord[parameters];
        for (int k = 0; k < parameters; k++) _sensitivities[k] = new(count);
    }

    /// <summary>Where the step began.</summary>
    public double Start { get; private set; }

    /// <summary>Where it ended; earlier than its full length when an event cut it.</summary>
    public double End { get; private set; }

    /// <summary>Number of parameters whose sensitivities are carried.</summary>
    public int ParameterCount => _sensitivities.Length;

    internal double Length { get; private set; }

    /// <summary>The state at a time within the step.</summary>
    /// <param name="time">From <see cref="Start"/> to <see cref="End"/>.</param>
    /// <param name="state">Result.</param>
    public void Evaluate(double time, Span<double> state)
    {
        CheckTime(time);
        _state.Evaluate((time - Start) / Length, state);
    }

    /// <summary>dy/dp of one parameter at a time within the step.</summary>
    /// <param name="time">From <see cref="Start"/> to <see cref="End"/>.</param>
    /// <param name="parameter">Index of the parameter.</param>
    /// <param name="sensitivity">Result.</param>
    public void EvaluateSensitivity(double time, int parameter, Span<double> sensitivity)
    {
        CheckTime(time);
        _sensitivities[parameter].Evaluate((time - Start) / Length, sensitivity);
    }

    internal void Accept(double start, double length, double end)
    {
        (Start, Length, End) = (start, length, end);
        _state.Accept();
    }

    internal void CutAt(double time) => End = time;

    // Error: what the slope at the start changes of the polynomial, at most, over the step.
    internal void SetState(ReadOnlySpan<double> start, ReadOnlySpan<double> slope, ReadOnlySpan<double> mass, ReadOnlySpan<double> stages, double length, double lengthRatio, Span<double> error)
        => _state.Set(start, slope, mass, stages, length, lengthRatio, error);

    internal void SetSensitivity(int parameter, ReadOnlySpan<double> start, ReadOnlySpan<double> mass, ReadOnlySpan<double> stages, double length, double lengthRatio, Span<double> error)
    {
        _sensitivities[parameter].Set(start, [], mass, stages, length, lengthRatio, error);
        _sensitivities[parameter].Accept();
    }

    private void CheckTime(double time)
    {
        double slack = 1e-9 * Length;
        if (!(time >= Start - slack && time <= End + slack)) throw new ArgumentOutOfRangeException(nameof(time), time, $"time {time} lies outside the step from {Start} to {End}");
    }

    /// <summary>Start value and the four slopes times the step; the last slope of the accepted step is kept for the next.</summary>
    private sealed class DenseRecord(int count)
    {
        private readonly double[] _start = new double[count], _slopes = new double[4 * count], _kept = new double[count];

        public void Accept() => _slopes.AsSpan(3 * count, count).CopyTo(_kept);

        public void Set(ReadOnlySpan<double> start, ReadOnlySpan<double> slope, ReadOnlySpan<double> mass, ReadOnlySpan<double> stages, double length, double lengthRatio, Span<double> error)
        {
            int n = count;
            start.CopyTo(_start);
            double[] inverse = RadauCollocation.Inverse, w = RadauCollocation.StartSlope;
            for (int i = 0; i < n; i++)
            {
                double z1 = stages[i], z2 = stages[n + i], z3 = stages[2 * n + i], collocation = w[0] * z1 + w[1] * z2 + w[2] * z3;
                double m = mass.IsEmpty ? 1 : mass[i];
                // The last slope of the step before is free of the amplified noise that f has in stiff components. Without a step
                // before there is only f, which error control watches; an algebraic row has neither, and of a sensitivity, which nothing
                // watches, the noise would go through the whole step: the collocation polynomial's own.
                _slopes[i] = lengthRatio > 0 ? _kept[i] * lengthRatio : m > 0 && !slope.IsEmpty ? length * slope[i] / m : collocation;
                error[i] = RadauCollocation.LargestStartWeight * (_slopes[i] - collocation);
                for (int s = 0; s < 3; s++) _slopes[(s + 1) * n + i] = inverse[3 * s] * z1 + inverse[3 * s + 1] * z2 + inverse[3 * s + 2] * z3;
            }
        }

        public void Evaluate(double theta, Span<double> result)
        {
            double w0 = RadauCollocation.DenseWeight(0, theta), w1 = RadauCollocation.DenseWeight(1, theta), w2 = RadauCollocation.DenseWeight(2, theta), w3 = RadauCollocation.DenseWeight(3, theta);
            int n = count;
            for (int i = 0; i < n; i++) result[i] = _start[i] + w0 * _slopes[i] + w1 * _slopes[n + i] + w2 * _slopes[2 * n + i] + w3 * _slopes[3 * n + i];
        }
    }
}
