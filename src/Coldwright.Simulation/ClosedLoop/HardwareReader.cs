using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Charge;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Oil;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Throttling;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Compression;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Reads a machine's hardware for the closed loop, or says what is missing for it.</summary>
internal static class HardwareReader
{
    // W/(m2 K), our assumption: where the search begins, until the vessel's model has fitted it; and a block soldered to its coil
    private const double UsualOutsideFilm = 1500, SolderedPerMetre = 1e6;

    /// <summary>What the closed loop still needs to be told; empty when it can be solved.</summary>
    public static IReadOnlyList<MissingKey> Missing(MachineDescription machine, LoopLayout layout)
    {
        var missing = new List<MissingKey>();
        foreach (Part part in new Part?[] { layout.Compressor, layout.Recuperator, layout.Throttle, layout.Buffer }.OfType<Part>()) missing.AddRange(PartNeeds.Missing(part, layout));
        if (layout.Coil.GivenDifferenceK is null && (layout.Coil.Tube is null || layout.Coil.LengthM is null)) missing.Add(new(layout.Coil.Name, "tube and length, or difference", "tube: 1/4 in ACR, length: 3.5 m"));
        if (machine.Charge.MassKg is null && machine.Operation.StandstillPressurePa is null) missing.Add(new("charge", "mass, or standstill-pressure in operation", "mass: 320 g"));
        return missing;
    }

    /// <summary>The hardware.</summary>
    /// <exception cref="MissingKeysException">Names every key to add.</exception>
    public static Hardware Read(MachineDescription machine, LoopLayout layout, HelmholtzModel model, CancellationToken cancel, DescribedCompressor? known = null)
    {
        var missing = Missing(machine, layout);
        if (missing.Count > 0) throw new MissingKeysException("the whole loop", "closed loop", missing);
        var said = new List<string>();
        var compressor = known ?? DescribedCompressor.Of(layout.Compressor, cancel);
        var volumes = LoopVolumes.Of(machine, layout, compressor, said);
        var r = layout.Recuperator;
        var (coil, vessel) = Coil(layout, said);
        var hardware = new Hardware
        {
            Machine = machine,
            Layout = layout,
            Compressor = compressor,
            Recuperator = RecuperatorRater.Geometry(r),
            RecuperatorLeak = r.InsulationConductanceWPerMK is { } g ? new RoomLeak(g, machine.Room.TemperatureK) : null,
            Capillary = layout.Throttle.Capillary is { } tube ? ThrottleRater.Tube(tube) : null,
            Valve = layout.Throttle.Valve is { } v ? new ControlValve { Kv = v.FlowCoefficientKv, Opening = v.Opening } : null,
            Coil = coil,
            Vessel = vessel,
            Precooler = layout.Precooler is { Loop: { } loop } pc ? PrecoolerRater.Machine(pc, loop, DescribedCompressor.Of(loop, cancel)) : null,
            Buffer = layout.Buffer is { } buffer ? Buffer(buffer, machine) : null,
            Volumes = volumes,
            OilMol = layout.Compressor.Oil is { MolarMass: { } perMol } oil ? (oil.ChargeKg ?? OilCircuitInput.UsualChargeKg) / perMol : 0,
            ChargeMol = 0,
            Said = said,
        };
        return hardware with { ChargeMol = Charge(hardware, model, said) };
    }

    private static (IsothermalCoil?, (ColdCoilGeometry, VesselGeometry)?) Coil(LoopLayout layout, List<string> said)
    {
        var part = layout.Coil;
        if (part.Tube is not { } tube || part.LengthM is not { } length) return (null, null);
        double width = Math.PI * tube.OutsideDiameterM;
        var coil = new IsothermalCoil
        {
            BoreM = tube.InsideDiameterM, OutsideDiameterM = tube.OutsideDiameterM, LengthM = length, CoilDiameterM = part.CoilDiameterM, OutsideConductancePerLength = UsualOutsideFilm * width,
        };
        if (layout.Vessel is not { } v || (part.CoilDiameterM is null && part.Place != CoilPlace.Around))
            return (coil with { OutsideConductancePerLength = SolderedPerMetre }, null);
        var vessel = ColdEndRater.Vessel(v);
        var (shape, words) = CoilShape.Of(part, vessel);
        said.AddRange(words);
        return (coil with { LengthM = shape.LengthM }, (shape, vessel));
    }

    private static BufferInput Buffer(BufferPart part, MachineDescription machine) => BufferRater.Input(part, machine.Room.TemperatureK, BufferRater.UsualGasViscosity);

    // by weight, or by the pressure of the loop at rest: everything warm and gas
    private static double Charge(Hardware h, HelmholtzModel model, List<string> said)
    {
        var mixture = h.Machine.Charge.Mixture;
        double molarMass = 0;
        for (int i = 0; i < mixture.MoleFractions.Count; i++) molarMass += mixture.MoleFractions[i] * model.Substances[i].MolarMass;
        if (h.Machine.Charge.MassKg is { } kg) return kg / molarMass;
        double p = h.Machine.Operation.StandstillPressurePa!.Value;
        said.Add("the charge is not weighed: it was worked out from the standstill pressure and the volumes of the loop");
        return Standstill.MolesAt(h, model, p);
    }
}
