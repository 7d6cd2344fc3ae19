using Coldwright.Numerics;
using Coldwright.Simulation.Parts;

namespace Coldwright.Web.Work;

/// <summary>Why work has no answer, as sentences for a person.</summary>
internal static class WorkProblems
{
    public static IReadOnlyList<string> Of(Exception e) => e switch
    {
        MissingKeysException missing => [.. missing.Keys.Select(k => $"add {k}")],
        SolveException solve => [$"no answer: {solve.Report.Advice}"],
        // The parts' models refuse what the file could not know to be wrong; the name of the parameter behind it says nothing to a person.
        ArgumentException wrong => [$"it cannot be computed as described: {wrong.Message.Split(" (Parameter")[0]}"],
        _ => [$"the program has failed at this ({e.GetType().Name}: {e.Message}); please report it with your machine.yaml"],
    };
}
