using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.Parts.Compression;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// Every volume of the loop but recuperator, coil and buffer: lines by their tubes, the shell of the compressor and the passages of
/// the warm parts by their given volume or an estimate of ours, which is said.
/// </summary>
internal static class LoopVolumes
{
    // our assumptions: a shell twice as high as wide, so much of it not filled by motor and pump; a warm part without a volume of its own
    private const double FreeShare = 0.4, WarmPartM3 = 1.2e-4;

    public static IReadOnlyList<LoopVolume> Of(MachineDescription machine, LoopLayout layout, DescribedCompressor compressor, List<string> said)
    {
        var volumes = new List<LoopVolume>();
        double shell = Shell(layout.Compressor, compressor.Machine, said);
        // a rotary machine's shell is full of discharge gas, a reciprocating one's of suction gas
        volumes.Add(new("shell of the compressor", compressor.Machine.Traits.Kind == CompressorKind.Rotary ? VolumeState.Discharge : VolumeState.Suction, shell, 0));
        volumes.Add(new(layout.Aftercooler.Name, VolumeState.Aftercooled, Warm(layout.Aftercooler.Name, layout.Aftercooler.GasVolumeM3, said), 0));
        if (layout.WarmExchanger is { } wx)
        {
            double v = Warm(wx.Name, wx.GasVolumeM3, said);
            volumes.Add(new($"{wx.Name}, high side", VolumeState.Aftercooled, 0.5 * v, 0));
            volumes.Add(new($"{wx.Name}, low side", VolumeState.Suction, 0.5 * v, 0));
        }
        if (layout.Precooler is { } pc) volumes.Add(new(pc.Name, VolumeState.Precooled, Warm(pc.Name, pc.GasVolumeM3, said), 0));
        if (layout.Throttle.Capillary is { } c) volumes.Add(new(layout.Throttle.Name, VolumeState.Capillary, Math.PI / 4 * c.BoreM * c.BoreM * c.LengthM, 0));
        foreach (var line in machine.Lines)
            if (line.Tube is { } tube && StateOf(line, layout) is { } state)
                volumes.Add(new($"{line.From} to {line.To}", state, tube.BoreAreaM2 * line.LengthM, tube.BoreAreaM2));
        return volumes;
    }

    private static double Shell(CompressorPart part, CompressorMachine machine, List<string> said)
    {
        if (part.GasVolumeM3 is { } given) return given;
        // area of a cylinder twice as high as wide: 2.5 pi d2
        double d = Math.Sqrt(machine.ShellAreaM2 / (2.5 * Math.PI)), volume = FreeShare * Math.PI / 4 * d * d * 2 * d;
        said.Add(FormattableString.Invariant($"the gas space in the shell of {part.Name} is not given: {1e3 * volume:0.##} L were taken from its size; add 'gas-volume' (gas-volume: 0.9 L)"));
        return volume;
    }

    private static double Warm(string name, double? given, List<string> said)
    {
        if (given is { } v) return v;
        said.Add(FormattableString.Invariant($"the volume of {name} is not given: {1e3 * WarmPartM3:0.##} L were taken; add 'gas-volume'"));
        return WarmPartM3;
    }

    // the loop's own lines by the part they start from; product lines are no part of the charge
    private static VolumeState? StateOf(Line line, LoopLayout layout)
    {
        string from = ColdBoxContents.PartName(line.From), to = ColdBoxContents.PartName(line.To);
        if (line.From == $"{layout.Recuperator.Name}.high") return VolumeState.ColdHigh;
        if (line.From == $"{layout.Recuperator.Name}.low") return VolumeState.Suction;
        if (layout.WarmExchanger is { } wx && from == wx.Name) return line.From.EndsWith(".low", StringComparison.Ordinal) ? VolumeState.Suction : VolumeState.Aftercooled;
        if (layout.Precooler is { } pc && from == pc.Name) return line.From.EndsWith(".feed", StringComparison.Ordinal) ? null : VolumeState.Precooled;
        if (from == layout.Compressor.Name) return VolumeState.Discharge;
        if (from == layout.Aftercooler.Name) return VolumeState.Aftercooled;
        if (from == layout.Throttle.Name) return VolumeState.Throttled;
        if (from == layout.Coil.Name) return VolumeState.ColdLow;
        if (layout.Buffer is { } buffer && (from == buffer.Name || to == buffer.Name)) return VolumeState.Suction;
        // a valve in the loop: as what it leads to
        return to == layout.Compressor.Name ? VolumeState.Suction
            : to == layout.Aftercooler.Name ? VolumeState.Discharge
            : line.To == $"{layout.Recuperator.Name}.high" ? VolumeState.Precooled
            : to == layout.Throttle.Name ? VolumeState.ColdHigh
            : to == layout.Coil.Name ? VolumeState.Throttled
            : line.To == $"{layout.Recuperator.Name}.low" ? VolumeState.ColdLow
            : null;
    }
}
