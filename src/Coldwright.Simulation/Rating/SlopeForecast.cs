using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;

namespace Coldwright.Simulation.Rating;

/// <summary>An input that was moved since a loop was closed.</summary>
/// <param name="Input">The input with its value then.</param>
/// <param name="Change">Change since, in its unit.</param>
public sealed record MovedInput(InputSensitivity Input, double Change);

/// <summary>
/// Figures of a closed loop with some of its inputs moved, along the slopes of its last answer: y = y0 + sum of (dy/dp) (p - p0). At once, and good
/// for steps about as large as those that the slopes were judged by; closing the loop anew is the answer.
/// </summary>
/// <param name="Figures">Figures that have a slope by everything that was moved, SI.</param>
/// <param name="Moved">What was moved.</param>
public sealed record SlopeForecast(IReadOnlyList<HeadlineFigure> Figures, IReadOnlyList<MovedInput> Moved)
{
    // so many of a builder's steps of a tenth: beyond, curvature can be as large as the change itself
    private const double FewSteps = 2;

    /// <summary>True when something was moved far beyond the step of its slope: the figures say the direction and little more.</summary>
    public bool IsFar => Moved.Any(m => Math.Abs(m.Change) > FewSteps * m.Input.Step * (1 + 1e-9));

    /// <summary>The forecast; null when something was changed by which the closed loop has no slopes.</summary>
    /// <param name="slopes">Slopes of the closed loop.</param>
    /// <param name="then">The machine as it was closed, with its layout.</param>
    /// <param name="now">The machine as it is.</param>
    /// <param name="changedKeys">Keys of the machine file that differ, part first, joined by dots.</param>
    public static SlopeForecast? Of(SensitivityResult slopes, (MachineDescription Machine, LoopLayout Layout) then, (MachineDescription Machine, LoopLayout Layout) now, IReadOnlyCollection<string> changedKeys)
    {
        var (before, after) = (DescribedInputs.Of(then.Machine, then.Layout), DescribedInputs.Of(now.Machine, now.Layout));
        var known = slopes.Inputs.Where(i => !i.IsDoubt).ToDictionary(i => i.Id);
        bool otherMixture = changedKeys.Contains(DescribedInputs.Mixture);
        if (otherMixture && !then.Machine.Charge.Mixture.Names.Order().SequenceEqual(now.Machine.Charge.Mixture.Names.Order())) return null;
        var ids = new HashSet<string>();
        foreach (string key in changedKeys)
            if (otherMixture && key is DescribedInputs.Mixture or "charge.mass") ids.UnionWith(then.Machine.Charge.Mixture.Names.Select(n => DescribedInputs.Gas + n));
            else ids.Add(key);
        var moved = new List<MovedInput>();
        foreach (string id in ids)
        {
            if (!known.TryGetValue(id, out var input) || !before.TryGetValue(id, out double p0) || !after.TryGetValue(id, out double p)) return null;
            moved.Add(new MovedInput(input, p - p0));
        }
        double Shifted(int figure) => slopes.Figures[figure].Value + moved.Where(m => m.Change != 0).Sum(m => m.Input.Slopes[figure] * m.Change);
        return new SlopeForecast([.. Enumerable.Range(0, slopes.Figures.Count).Select(i => slopes.Figures[i] with { Value = Shifted(i) }).Where(f => double.IsFinite(f.Value))], moved);
    }
}
