using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Charge;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Precooling;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Throttling;
using Coldwright.Simulation.Parts.Compression;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>A described machine as the inputs of its parts' models: what the closed loop is solved for. Immutable.</summary>
internal sealed record Hardware
{
    public required MachineDescription Machine { get; init; }
    public required LoopLayout Layout { get; init; }
    public required DescribedCompressor Compressor { get; init; }
    public required RecuperatorGeometry Recuperator { get; init; }
    public required RoomLeak? RecuperatorLeak { get; init; }
    public CapillaryTube? Capillary { get; init; }
    public ControlValve? Valve { get; init; }
    /// <summary>The coil; null when only its difference is given.</summary>
    public IsothermalCoil? Coil { get; init; }
    /// <summary>Coil and vessel for the condensing product; null for a block.</summary>
    public (ColdCoilGeometry Coil, VesselGeometry Vessel)? Vessel { get; init; }
    /// <summary>Null: the precooler is a given outlet temperature, or there is none.</summary>
    public PrecoolerMachine? Precooler { get; init; }
    public BufferInput? Buffer { get; init; }
    public required IReadOnlyList<LoopVolume> Volumes { get; init; }
    /// <summary>Charged amount, mol.</summary>
    public required double ChargeMol { get; init; }
    /// <summary>Oil in the compressor in which gas dissolves, mol; 0: what dissolves is not counted.</summary>
    public double OilMol { get; init; }
    public LoopKnobs Knobs { get; init; } = new();
    /// <summary>What was assumed.</summary>
    public required IReadOnlyList<string> Said { get; init; }

    public double RoomK => Machine.Room.TemperatureK;
    public double AftercooledK => RoomK + Layout.Aftercooler.ApproachK;

    /// <summary>The cold box with the tubes of the recuperator ending at a temperature (K); null without one.</summary>
    public InsulatedEnclosure? Enclosure(double warmEndK) => Layout.ColdBox is { } box ? Parts.BoxEnclosure.Of(Machine, box, warmEndK, []) : null;
}
