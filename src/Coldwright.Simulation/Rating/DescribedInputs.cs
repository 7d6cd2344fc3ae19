using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;

namespace Coldwright.Simulation.Rating;

/// <summary>Values of a closed loop's inputs as a machine file gives them, by the ids of <see cref="InputSensitivity"/>. SI.</summary>
internal static class DescribedInputs
{
    /// <summary>Key of the charge's mixture, which moves one input for each gas.</summary>
    public const string Mixture = "charge.mixture";

    /// <summary>Prefix of the inputs that are amounts of a gas, kg.</summary>
    public const string Gas = "charge.";

    public static IReadOnlyDictionary<string, double> Of(MachineDescription machine, LoopLayout layout)
    {
        var values = new Dictionary<string, double>();
        void Add(string id, double? value)
        {
            if (value is { } v) values[id] = v;
        }
        Add($"{layout.Compressor.Name}.displacement", layout.Compressor.DisplacementM3);
        var recuperator = layout.Recuperator;
        Add($"{recuperator.Name}.length", recuperator.LengthM);
        Add($"{recuperator.Name}.high-tube", recuperator.HighTube?.InsideDiameterM);
        Add($"{recuperator.Name}.low-tube", recuperator.LowTube?.InsideDiameterM);
        var throttle = layout.Throttle;
        Add($"{throttle.Name}.capillary.length", throttle.Capillary?.LengthM);
        Add($"{throttle.Name}.capillary.bore", throttle.Capillary?.BoreM);
        Add($"{throttle.Name}.valve.opening", throttle.Valve?.Opening);
        // a coil of tube is rated by its length, one without by its difference
        bool wound = layout.Coil is { Tube: not null, LengthM: not null };
        Add($"{layout.Coil.Name}.length", wound ? layout.Coil.LengthM : null);
        Add($"{layout.Coil.Name}.difference", wound ? null : layout.Coil.GivenDifferenceK);
        Add("room.temperature", machine.Room.TemperatureK);
        Add($"{layout.Aftercooler.Name}.approach", layout.Aftercooler.ApproachK);
        if (layout.WarmExchanger is { } warm) Add($"{warm.Name}.conductance", warm.ConductanceWPerK);
        if (layout.Precooler is { } precooler)
        {
            Add($"{precooler.Name}.outlet-temperature", precooler.Loop is null ? precooler.OutletTemperatureK : null);
            Add($"{precooler.Name}.loop.displacement", precooler.Loop?.DisplacementM3);
            Add($"{precooler.Name}.loop.evaporator-conductance", precooler.Loop?.EvaporatorConductanceWPerK);
            Add($"{precooler.Name}.loop.condenser-conductance", precooler.Loop?.CondenserConductanceWPerK);
        }
        if (layout.ColdBox is { } box)
        {
            Add($"{box.Name}.wall", box.Layers.Count == 0 ? box.WallM : null);
            if (box.Layers.Count > 0) Add($"{box.Name}.layers.{box.Layers.Count}.thickness", box.Layers[^1].ThicknessM);
        }
        if (layout.Buffer is { } buffer)
        {
            Add($"{buffer.Name}.volume", buffer.VolumeM3);
            Add($"{buffer.Name}.opening-pressure", buffer.OpeningPressurePa);
        }
        // without a weighed charge the amounts follow from volumes and a pressure at rest, which have no slopes
        if (machine.Charge.MassKg is not { } mass) return values;
        Add("charge.mass", mass);
        var (names, z) = (machine.Charge.Mixture.Names, machine.Charge.Mixture.MoleFractions);
        double[] weights = [.. names.Select((n, i) => z[i] * SubstanceCatalog.Get(n).MolarMass)];
        for (int i = 0; i < names.Count; i++) Add(Gas + names[i], mass * weights[i] / weights.Sum());
        return values;
    }
}
