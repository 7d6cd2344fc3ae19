using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Parts;

/// <summary>What every part's rating starts from: the machine, the loop's operating point, the fluid.</summary>
internal sealed class PartContext
{
    /// <summary>Begins a warning that comes from the operating point.</summary>
    public const string OfThePoint = "operating point: ";

    private readonly Lazy<TransportModel> _transport;

    public PartContext(MachineDescription machine, LoopLayout layout, ModelRating loop, PartPoint point, HelmholtzModel model, IReadOnlyList<Spoken> warnings, CancellationToken cancel)
    {
        (Machine, Layout, Loop, Point, Model, Warnings, Cancel) = (machine, layout, loop, point, model, warnings, cancel);
        Z = machine.Charge.Mixture.MoleFractions.ToArray();
        Flash = new Flash(model);
        _transport = new(() => new TransportModel(model));
    }

    public MachineDescription Machine { get; }
    public LoopLayout Layout { get; }
    /// <summary>The rating with given pressures.</summary>
    public ModelRating Loop { get; }
    public PartPoint Point { get; }
    public HelmholtzModel Model { get; }
    public Flash Flash { get; }
    public TransportModel Transport => _transport.Value;
    public double[] Z { get; }
    /// <summary>Of the operating point.</summary>
    public IReadOnlyList<Spoken> Warnings { get; }
    public CancellationToken Cancel { get; }
    public double RoomK => Machine.Room.TemperatureK;

    /// <summary>A state round the loop by its name.</summary>
    public LoopPoint At(string name) => Loop.Loop.Points.Single(p => p.Name == name);

    /// <summary>Its full state.</summary>
    public FluidState State(LoopPoint point) => Flash.PressureEnthalpy(point.PressurePa, point.MolarEnthalpy, Z, point.TemperatureK);

    /// <summary>The group that says what arrives.</summary>
    public PartSection Inlet(params PartFigure[] more) => new("inlet", "What arrives",
        [new PartFigure("molar_flow_mol_s", "Flow", Point.MolarFlow, "mol/s"), new PartFigure("mass_flow_kg_s", "Flow by mass", Point.MassFlow, "kg/s"), .. more]);

    /// <summary>Temperature, pressure and phases of a state round the loop.</summary>
    public static PartFigure[] Arriving(string id, string name, LoopPoint p) =>
    [
        new($"{id}_temperature_K", $"{name}", p.TemperatureK, "K", null, p.Phases.Replace("+", " + ").Replace('_', ' ')),
        new($"{id}_pressure_Pa", $"{name}, pressure", p.PressurePa, "Pa"),
    ];

    /// <summary>Warnings of the operating point and of the part, each once.</summary>
    public IReadOnlyList<Spoken> Told(IReadOnlyList<Spoken> ofThePart)
    {
        var again = ofThePart.Select(w => OfThePoint + w).ToHashSet();
        return [.. Warnings.Where(w => !again.Contains(w)).Concat(ofThePart).Distinct()];
    }
}
