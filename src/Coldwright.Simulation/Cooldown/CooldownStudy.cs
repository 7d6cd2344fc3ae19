using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Streams;
using Coldwright.Numerics;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Parts;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// A machine ready to be followed in time again and again: property tables and maps of the parts that one run made are taken again by the next where composition and
/// pressures suit, within the drift that the options allow. For fits and comparisons. Not thread-safe.
/// </summary>
/// <remarks>
/// <see cref="Run"/> answers a question of a person (<see cref="CooldownOptions"/>: from where, how long, plateau, changes); <see cref="Follow"/> a fit's
/// (<see cref="CourseOptions"/>: factors on the parts by <see cref="CourseFactors.Ids"/>, cooldown, then warm-up).
/// Derivatives: give <see cref="CourseOptions.SlopeTimesS"/> (or <see cref="CooldownOptions.Sensitivity"/> and <see cref="CooldownOptions.SlopeTimesS"/>) and read
/// <see cref="Course.Slopes"/> (<see cref="CooldownResult.Slopes"/>): at every time asked, the value of each <see cref="CooldownQuantity"/> and its derivative by each factor
/// (leak, stored masses, films of exchanger and coil, compressor, throttle, precooler, charge and its lightest gas), forward sensitivities with the composition's response; they
/// hold to 6 % against differences of whole runs (docs/theory/cooldown.md). A run costs some 0.3 s of processor time once its tables are made, with derivatives less than three times as much.
/// </remarks>
public sealed class CooldownStudy
{
    private readonly Hardware _hardware;
    private readonly LoopMapMaker _maker;
    private readonly CancellationToken _cancel;
    private Plant? _plant;
    private (int Cells, int Insulation, double LoadW) _made;

    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout (<see cref="LoopLayout.TryFind"/>).</param>
    /// <param name="cubic">True: the cubic model; false: the reference model.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="MissingKeysException">The hardware is not described closely enough.</exception>
    public CooldownStudy(MachineDescription machine, LoopLayout layout, bool cubic, CancellationToken cancel = default)
    {
        var names = machine.Charge.Mixture.Names;
        HelmholtzModel model = cubic ? CubicModel.Create(names) : ReferenceModel.Create(names);
        _hardware = HardwareReader.Read(machine, layout, model, cancel);
        (_maker, _cancel) = (new LoopMapMaker(_hardware, model, StreamTableOptions.Default, cancel), cancel);
    }

    /// <summary>Property tables made so far.</summary>
    public int TablesMade => _maker.Made;

    /// <summary>Follows a cooldown or a warm-up.</summary>
    /// <param name="options">How; the model is the study's own.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <exception cref="SolveException">No answer; the report says where it stood.</exception>
    public CooldownResult Run(CooldownOptions options, Action<string>? observer = null)
    {
        options.Check();
        var wanted = (options.Cells, options.InsulationCells, options.LoadW);
        if (_plant is null || wanted != _made) (_plant, _made) = (new Plant(_hardware, options.Cells, options.InsulationCells, options.LoadW), wanted);
        return new CooldownSession(_plant, _maker, options, observer, _cancel).Run();
    }

    /// <summary>Follows a whole run: a cooldown with factors on the parts, then a warm-up from where it stood.</summary>
    /// <param name="options">How.</param>
    /// <exception cref="SolveException">No answer; the report says where it stood.</exception>
    public Course Follow(CourseOptions options)
    {
        var wanted = (options.Cells, options.InsulationCells, options.LoadW);
        if (_plant is null || wanted != _made) (_plant, _made) = (new Plant(_hardware, options.Cells, options.InsulationCells, options.LoadW), wanted);
        return new CourseSolver(_plant, _maker, options, _cancel).Solve();
    }
}
