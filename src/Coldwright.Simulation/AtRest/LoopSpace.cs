using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.AtRest;

/// <summary>The space that a loop's charge fills, warm and at rest, place by place. SI.</summary>
/// <param name="Places">Name and volume, m3.</param>
/// <param name="Said">What had to be assumed about volumes.</param>
public sealed record LoopSpace(IReadOnlyList<(string Name, double VolumeM3)> Places, IReadOnlyList<string> Said)
{
    // any amount: the volumes do not depend on it
    private const double AnyMassKg = 0.1;

    /// <summary>All of it, m3.</summary>
    public double VolumeM3 => Places.Sum(p => p.VolumeM3);

    /// <summary>The space of a described loop.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="Parts.MissingKeysException">Names every key to add.</exception>
    public static LoopSpace Of(MachineDescription machine, LoopLayout layout, CancellationToken cancel = default)
    {
        var weighed = machine with { Charge = machine.Charge with { MassKg = machine.Charge.MassKg ?? AnyMassKg } };
        var h = HardwareReader.Read(weighed, layout, CubicModel.Create(machine.Charge.Mixture.Names), cancel);
        var places = new List<(string, double)>
        {
            ($"{layout.Recuperator.Name}, high side", h.Recuperator.Hot.AreaM2 * h.Recuperator.LengthM), ($"{layout.Recuperator.Name}, low side", h.Recuperator.Cold.AreaM2 * h.Recuperator.LengthM),
        };
        if (h.Coil is { } coil) places.Add((layout.Coil.Name, coil.VolumeM3));
        places.AddRange(h.Volumes.Select(v => (v.Name, v.VolumeM3)));
        if (h.Buffer is { } buffer) places.Add((layout.Buffer!.Name, buffer.VolumeM3));
        return new(places, [.. h.Said.Where(s => !s.StartsWith("the charge is", StringComparison.Ordinal))]);
    }
}
