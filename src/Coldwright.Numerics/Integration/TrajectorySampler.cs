using System.Collections.Immutable;

namespace Coldwright.Numerics.Integration;

/// <summary>An observer that keeps state and sensitivities at chosen times.</summary>
public sealed class TrajectorySampler
{
    private readonly double[] _times;
    private readonly int _count;
    private readonly List<ImmutableArray<double>> _states = [];
    private readonly List<ImmutableArray<ImmutableArray<double>>> _sensitivities = [];

    /// <param name="count">Components of the problem.</param>
    /// <param name="times">Increasing times; those outside the run are not reached.</param>
    public TrajectorySampler(int count, IEnumerable<double> times)
    {
        _count = count;
        _times = [.. times];
        for (int i = 1; i < _times.Length; i++)
            if (!(_times[i] > _times[i - 1])) throw new ArgumentException($"times must increase: number {i} is {_times[i]} after {_times[i - 1]}");
    }

    /// <summary>The chosen times that were reached.</summary>
    public ReadOnlySpan<double> Times => _times.AsSpan(0, _states.Count);

    /// <summary>State at each reached time.</summary>
    public IReadOnlyList<ImmutableArray<double>> States => _states;

    /// <summary>dy/dp at each reached time, one array of components a parameter.</summary>
    public IReadOnlyList<ImmutableArray<ImmutableArray<double>>> Sensitivities => _sensitivities;

    /// <summary>Give this to <see cref="StiffIntegrator.Integrate"/>.</summary>
    public void Observe(AcceptedStep step)
    {
        while (_states.Count < _times.Length && _times[_states.Count] <= step.End)
        {
            double time = _times[_states.Count];
            if (time < step.Start) throw new InvalidOperationException($"sample time {time} lies before the start of the run, {step.Start}");
            var values = new double[_count];
            step.Evaluate(time, values);
            _states.Add([.. values]);
            var derivatives = ImmutableArray.CreateBuilder<ImmutableArray<double>>(step.ParameterCount);
            for (int k = 0; k < step.ParameterCount; k++)
            {
                step.EvaluateSensitivity(time, k, values);
                derivatives.Add([.. values]);
            }
            _sensitivities.Add(derivatives.ToImmutable());
        }
    }
}
