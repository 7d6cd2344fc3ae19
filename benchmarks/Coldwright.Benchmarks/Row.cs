namespace Coldwright.Benchmarks;

/// <summary>A row that can be measured: nothing is timed before it is asked for.</summary>
/// <param name="Name">Name, fixed by the program's description.</param>
/// <param name="Measure">Measures it.</param>
internal sealed record Row(string Name, Func<Measurement> Measure)
{
    /// <summary>The median time of a call.</summary>
    public static Row Of(string name, Action call) => new(name, () => Measurement.Of(name, call));

    /// <summary>The median of five calls, each of which takes seconds.</summary>
    public static Row OfFive(string name, Action call) => new(name, () => Measurement.OfFive(name, call));
}
