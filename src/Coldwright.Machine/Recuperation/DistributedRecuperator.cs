using Coldwright.Materials.Solids;
using Coldwright.Numerics;

namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Counterflow exchanger in one dimension: local heat transfer, friction, conduction along the metal and heat from the room, cell by
/// cell. The warm stream enters at position 0, the cold stream at the other end. Theory, ranges and measured agreement:
/// docs/theory/recuperator.md. Immutable; solves from several threads do not disturb one another.
/// </summary>
public sealed class DistributedRecuperator
{
    /// <summary>Metal used when none is named: phosphorus-deoxidised copper, which ordinary tube is made of.</summary>
    public const string DefaultMetal = "copper-dhp";

    /// <summary>Grid error, relative to the duty, above which the grid is refined.</summary>
    public const double GridTolerance = 2e-3;

    private const int MostRefinement = 8;

    /// <param name="geometry">Shape.</param>
    /// <param name="wall">Metal of all tubes; null: <see cref="DefaultMetal"/>.</param>
    /// <param name="leak">Heat from the room; null: none.</param>
    /// <param name="options">How to solve; null: the usual.</param>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    public DistributedRecuperator(RecuperatorGeometry geometry, SolidMaterial? wall = null, RoomLeak? leak = null, RecuperatorOptions? options = null)
    {
        (Geometry, Wall, Leak, Options) = (geometry, wall ?? SolidLibrary.Default.Find(DefaultMetal), leak, options ?? new RecuperatorOptions());
        Leak?.Check();
        Options.Check();
    }

    /// <summary>Shape.</summary>
    public RecuperatorGeometry Geometry { get; }
    /// <summary>Metal of all tubes.</summary>
    public SolidMaterial Wall { get; }
    /// <summary>Heat from the room; null: none.</summary>
    public RoomLeak? Leak { get; }
    /// <summary>How to solve.</summary>
    public RecuperatorOptions Options { get; }

    /// <summary>Solves for both outlets.</summary>
    /// <param name="hot">Warm (high-pressure) stream, entering at the warm end.</param>
    /// <param name="cold">Cold (low-pressure) stream, entering at the cold end.</param>
    /// <param name="warm">Result of a similar case to start from; the answer is the same without.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public RecuperatorResult Solve(StreamInlet hot, StreamInlet cold, RecuperatorResult? warm = null, CancellationToken cancel = default)
    {
        hot.Check("warm");
        cold.Check("cold");
        var question = new RecuperatorCase(Geometry, Wall, Leak, hot, cold, Options);
        // a grid that is too coarse shows in its error, or in balances that do not close: twice as many cells, at most eight times. Next to a case that
        // closed on this grid one that does not is no matter of the grid
        int most = warm is not null && !Options.GridError ? Options.Cells : MostRefinement * Options.Cells;
        for (int cells = Options.Cells; ; cells *= 2)
        {
            bool last = cells >= most;
            try
            {
                var result = OnGrid(question, cells, warm?.State, cancel);
                if (last || Options.GridError is false || Math.Abs(result.GridErrorW ?? 0) <= GridTolerance * Math.Abs(result.DutyW)) return result;
            }
            catch (SolveException e) when (!last && (e.Report.Status is SolveStatus.NotConverged or SolveStatus.Outside))
            {
                warm = null;
            }
        }
    }

    private RecuperatorResult OnGrid(RecuperatorCase question, int cells, RecuperatorState? warm, CancellationToken cancel)
    {
        RecuperatorState? coarse = null;
        double coarseDuty = double.NaN;
        if (Options.GridError)
        {
            var half = new RecuperatorSolver(question, cells / 2, cancel, RecuperatorSolver.Rough);
            coarse = half.Solve(warm);
            coarseDuty = RecuperatorAnswer.Duty(half.Equations, coarse);
        }
        var solver = new RecuperatorSolver(question, cells, cancel, Options.Tolerance);
        var state = solver.Solve(warm ?? coarse);
        var result = RecuperatorAnswer.Make(question, solver, state);
        // second order: the difference to the coarse grid is three times what is left
        if (Options.GridError) result = result with { GridErrorW = (result.DutyW - coarseDuty) / 3 };
        if (Options.GridError && Math.Abs(result.GridErrorW ?? 0) > GridTolerance * Math.Abs(result.DutyW))
            result = result with { Warnings = [.. result.Warnings, FormattableString.Invariant($"the grid of {cells} cells errs by about {100 * Math.Abs(result.GridErrorW ?? 0) / Math.Abs(result.DutyW):0.##} % of the duty; more cells would help")] };
        return Options.Band ? result with { Band = Band(question, cells / 2, coarse ?? state, cancel) } : result;
    }

    private RecuperatorBand Band(RecuperatorCase question, int cells, RecuperatorState state, CancellationToken cancel)
    {
        double duty = 0, hotK = 0, coldK = 0, hotP = 0, coldP = 0;
        // fixed films and switched-off drops have no uncertainty; half the cells tell a derivative well enough
        bool hotFilm = Options.Hot.FixedFilm is null, coldFilm = Options.Cold.FixedFilm is null;
        var reference = Answer(question, state);
        if (hotFilm) Add(question with { HotFilmSigma = 1 });
        if (coldFilm) Add(question with { ColdFilmSigma = 1 });
        if (Options.PressureDrop && Options.Hot.FrictionScale > 0) Add(question with { HotFrictionSigma = 1 });
        if (Options.PressureDrop && Options.Cold.FrictionScale > 0) Add(question with { ColdFrictionSigma = 1 });
        return new RecuperatorBand(Math.Sqrt(duty), Math.Sqrt(hotK), Math.Sqrt(coldK), Math.Sqrt(hotP), Math.Sqrt(coldP));

        RecuperatorResult Answer(RecuperatorCase asked, RecuperatorState? from)
        {
            var solver = new RecuperatorSolver(asked, cells, cancel, RecuperatorSolver.Roughest);
            var found = solver.Solve(from);
            return RecuperatorAnswer.Make(asked, solver, found);
        }

        void Add(RecuperatorCase shifted)
        {
            var other = Answer(shifted, reference.State);
            duty += Square(other.DutyW - reference.DutyW);
            hotK += Square(other.Hot.OutletK - reference.Hot.OutletK);
            coldK += Square(other.Cold.OutletK - reference.Cold.OutletK);
            hotP += Square(other.Hot.PressureDropPa - reference.Hot.PressureDropPa);
            coldP += Square(other.Cold.PressureDropPa - reference.Cold.PressureDropPa);
        }
    }

    private static double Square(double v) => v * v;
}
