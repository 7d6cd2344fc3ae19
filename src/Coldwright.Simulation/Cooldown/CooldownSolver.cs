using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Parts;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Follows a described cooler in time: metal, load and insulation with the heat in them, streams quasi-steady, pressures and flow with the loop's balances, the
/// composition that circulates with the charge. Theory and measured accuracy: docs/theory/cooldown.md.
/// </summary>
public static class CooldownSolver
{
    /// <summary>What the file still lacks for a cooldown; empty when nothing.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    public static IReadOnlyList<MissingKey> Missing(MachineDescription machine, LoopLayout layout) => HardwareReader.Missing(machine, layout);

    /// <summary>Follows the cooldown, or the warm-up.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout (<see cref="LoopLayout.TryFind"/>).</param>
    /// <param name="options">How.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">No answer; the report says where it stood.</exception>
    /// <exception cref="MissingKeysException">The hardware is not described closely enough.</exception>
    public static CooldownResult Run(MachineDescription machine, LoopLayout layout, CooldownOptions options, Action<string>? observer = null, CancellationToken cancel = default)
    {
        options.Check();
        return new CooldownStudy(machine, layout, options.Cubic, cancel).Run(options, observer);
    }
}
