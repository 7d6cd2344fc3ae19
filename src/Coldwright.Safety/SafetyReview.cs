using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Rules;
using Coldwright.Safety.Warming;

namespace Coldwright.Safety;

/// <summary>Everything found about a machine.</summary>
/// <param name="Findings">Gravest first; the last is always that local codes come first.</param>
/// <param name="Warnings">What could not be worked out.</param>
public sealed record SafetyReview(IReadOnlyList<Finding> Findings, IReadOnlyList<string> Warnings)
{
    /// <summary>The full review, fluids computed with the reference equations: relief sizes, warm full vessel, boil-off, proof test, stored energy.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="inputs">What is known beyond its description.</param>
    /// <param name="cancellation">Stops between rules.</param>
    /// <exception cref="ArgumentException">An input is out of its range.</exception>
    public static SafetyReview Of(MachineDescription machine, CautionInputs inputs, CancellationToken cancellation = default)
    {
        machine = inputs.Applied(machine);
        var layout = new MachineLayout(machine);
        var warnings = new List<string>();
        if (inputs.TrappedPressurePa is null) inputs = inputs with { TrappedPressurePa = (mixture, warmK) => ShutIn(mixture, warmK, layout, inputs, warnings) };
        var findings = new List<Finding>();
        IEnumerable<Finding>[] rules =
        [
            Cautions.FromDescription(layout, inputs),
            PressureFiguresRule.Apply(layout, inputs),
            WarmVesselRule.Apply(layout),
            ReliefSizeRule.Apply(layout, inputs, warnings, cancellation),
            ProductPurityRule.Apply(machine, inputs),
        ];
        foreach (var rule in rules)
        {
            cancellation.ThrowIfCancellationRequested();
            try
            {
                foreach (var finding in rule) findings.Add(finding);
            }
            catch (SolveException e)
            {
                // One figure that cannot be found must not take the other findings with it.
                warnings.Add($"a figure could not be worked out: {e.Report.Advice}");
            }
        }
        return new([.. findings.OrderBy(f => f.Grade), Cautions.LocalCodes], warnings);
    }

    // A product is a pure gas at its boiling point; the loop's mixture is shut in as the liquid of the high side at the coldest temperature known.
    private static double? ShutIn(Composition mixture, double warmK, MachineLayout layout, CautionInputs inputs, List<string> warnings)
    {
        const double ColdUnlessComputedK = 100;
        try
        {
            return mixture.Names.Count == 1
                ? WarmFullVessel.PressurePa(mixture.Names[0], 1, warmK)
                : WarmFullVessel.LiquidFullPa(mixture, inputs.ColdestTemperatureK ?? ColdUnlessComputedK, layout.Machine.Operation.HighPressurePa, warmK);
        }
        catch (SolveException e)
        {
            warnings.Add($"the pressure of shut-in liquid could not be worked out: {e.Report.Advice}");
            return null;
        }
    }
}
