using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>Inputs of a closed loop in the order in which they matter.</summary>
internal sealed class SensitivityRanking
{
    /// <summary>How many inputs a person is shown.</summary>
    public const int Most = 10;

    private const double FeltShare = 0.01;
    private const string Litres = "collected_L_h", NoLoad = "no_load_temperature_K", Net = "net_cooling_W";

    public SensitivityRanking(SensitivityResult result, bool makesLiquid)
    {
        Result = result;
        // Litres where there are any, else how cold it gets, else what is left at the load.
        string[] wanted = makesLiquid ? [Litres, NoLoad, Net] : [NoLoad, Net, Litres];
        Leading = wanted.Select(Index).First(i => i >= 0);
        Choices = [.. Sorted(result.Inputs.Where(i => !i.IsDoubt)).Take(Most)];
        Doubts = [.. Sorted(result.Inputs.Where(i => i.IsDoubt))];
        Felt = [.. Doubts.Where(i => Math.Abs(Change(i, Leading) ?? 0) >= FeltShare * Largest(Doubts, Leading))];
    }

    public SensitivityResult Result { get; }

    /// <summary>Index of the figure by which the inputs are ranked.</summary>
    public int Leading { get; }

    public HeadlineFigure Figure => Result.Figures[Leading];

    /// <summary>What a builder can choose, largest effect of its step first.</summary>
    public IReadOnlyList<InputSensitivity> Choices { get; }

    /// <summary>What is only known within its deviation, largest effect first.</summary>
    public IReadOnlyList<InputSensitivity> Doubts { get; }

    /// <summary>Of the doubts those that can be seen beside the largest.</summary>
    public IReadOnlyList<InputSensitivity> Felt { get; }

    /// <summary>What a step changes of a figure, in its unit; null where it has no slope.</summary>
    public static double? Change(InputSensitivity input, int figure) => double.IsFinite(input.Slopes[figure]) ? input.Slopes[figure] * input.Step : null;

    /// <summary>The largest change of a figure by a step of any of some inputs, in its unit.</summary>
    public static double Largest(IEnumerable<InputSensitivity> inputs, int figure) => inputs.Select(i => Math.Abs(Change(i, figure) ?? 0)).DefaultIfEmpty(0).Max();

    /// <summary>Index of a figure; -1 when the cooler has none of the kind.</summary>
    public int Index(string id)
    {
        for (var i = 0; i < Result.Figures.Count; i++)
            if (Result.Figures[i].Id == id) return i;
        return -1;
    }

    private IEnumerable<InputSensitivity> Sorted(IEnumerable<InputSensitivity> inputs) => inputs.OrderByDescending(i => Math.Abs(Change(i, Leading) ?? 0));
}
