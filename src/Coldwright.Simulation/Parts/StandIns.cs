using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts.Compression;

namespace Coldwright.Simulation.Parts;

/// <summary>
/// Plain figures in place of those that the file leaves to a part's own model (a nameplate, tubes), so that the rating with
/// given pressures can find an operating point. Each is said.
/// </summary>
internal static class StandIns
{
    // of coiled copper tube in tube with such mixtures, W/(m K); and a usual coil's difference, K: only where the search begins
    private const double ConductancePerLength = 4.5, CoilDifferenceK = 2.5;

    /// <summary>The machine with plain figures throughout, its layout, and what was put in.</summary>
    /// <exception cref="MissingKeysException">A part is described neither by plain figures nor for its own model.</exception>
    public static (MachineDescription Machine, LoopLayout Layout, IReadOnlyList<Spoken> Said) Fill(MachineDescription machine, LoopLayout layout, HelmholtzModel model, CancellationToken cancel)
    {
        var said = new List<Spoken>();
        var filled = machine with
        {
            Parts = [.. machine.Parts.Select(p => p switch
            {
                CompressorPart c when !c.HasEfficiencies || (c.DisplacementM3 is null && c.FlowMolPerS is null) => Compressor(c, machine, layout, model, said, cancel),
                RecuperatorPart { GivenConductanceWPerK: null } r => Recuperator(r, layout, said),
                CoilPart { GivenDifferenceK: null } coil => Coil(coil, said),
                _ => p,
            })],
        };
        if (said.Count == 0) return (machine, layout, said);
        return LoopLayout.TryFind(filled, out var found, out var refusals) ? (filled, found, said) : throw new ArgumentException(string.Join("; ", refusals));
    }

    /// <summary>The recuperator with another conductance, W/K.</summary>
    public static (MachineDescription Machine, LoopLayout Layout) With(MachineDescription machine, LoopLayout layout, double conductance)
    {
        var changed = layout.Recuperator with { ConductanceWPerK = conductance };
        return (machine with { Parts = [.. machine.Parts.Select(p => p is RecuperatorPart ? changed : p)] }, layout with { Recuperator = changed });
    }

    private static CompressorPart Compressor(CompressorPart part, MachineDescription machine, LoopLayout layout, HelmholtzModel model, List<Spoken> said, CancellationToken cancel)
    {
        PartNeeds.Check(part, layout);
        var described = DescribedCompressor.Of(part, cancel);
        var duty = new CompressorDuty
        {
            SuctionTemperatureK = machine.Room.TemperatureK - 5,
            SuctionPressurePa = machine.Operation.LowPressurePa,
            DischargePressurePa = machine.Operation.HighPressurePa + layout.Aftercooler.PressureDropPa,
            RoomTemperatureK = machine.Room.TemperatureK,
        };
        double[] z = [.. machine.Charge.Mixture.MoleFractions];
        var at = described.Map is { } map ? new MappedCompressor(map, described.Machine, model, z).Run(duty, cancel) : new HermeticCompressor(described.Machine, model, z).Run(duty, cancel);
        said.Add(Spoken.Of($"flow and efficiency of {part.Name} came from its own model at a suction {SpokenAmount.Difference(5, "0")} below the room, since the file does not give them"));
        double losses = at.ElectricalPowerW * (1 - at.OverallIsentropicEfficiency);
        return part with
        {
            DisplacementM3 = null,
            SpeedRevPerS = null,
            SuctionHeatingK = 0,
            FlowMolPerS = at.MolarFlow,
            IsentropicEfficiency = [(duty.DischargePressurePa / duty.SuctionPressurePa, at.OverallIsentropicEfficiency)],
            MotorEfficiency = 1,
            ShellHeatFraction = Math.Clamp(at.ShellHeatW / losses, 0, 1),
        };
    }

    private static RecuperatorPart Recuperator(RecuperatorPart part, LoopLayout layout, List<Spoken> said)
    {
        PartNeeds.Check(part, layout);
        said.Add($"the conductance of {part.Name} came from its tubes, since the file does not give it");
        return part with { ConductanceWPerK = ConductancePerLength * part.LengthM!.Value };
    }

    private static CoilPart Coil(CoilPart part, List<Spoken> said)
    {
        said.Add(Spoken.Of($"the difference at {part.Name} was taken as {SpokenAmount.Difference(CoilDifferenceK, "0.#")}, a usual one, since the file does not give it; add 'difference' to fix it"));
        return part with { DifferenceK = CoilDifferenceK };
    }
}
