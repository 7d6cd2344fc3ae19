using Coldwright.Machine.Streams;
using Coldwright.Numerics;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Brings a run on tables to the model's own: where it was looked at, slopes and balances are evaluated once more with every property a flash and every
/// correlation asked at its place. The difference, a smooth function of time, is added to what the tables give, and the run repeated until it changes no more
/// (deferred correction: Newton's method on the whole run with the tables' Jacobian). Not thread-safe.
/// </summary>
internal sealed class DirectPath
{
    private const double LeastCoolingShare = 0.1;

    private readonly PlantEquations _table, _flashed;
    private readonly Plant _plant;
    private readonly double[] _factors, _dyTable, _dyFlashed;
    private readonly DirectStreams _streams;
    private readonly (LoopMap Map, LoopHandover? Handover) _until;
    // by piece and look
    private readonly double[][][] _found;
    private readonly (DirectPass High, DirectPass Low)[][] _passes;
    private (DirectPass High, DirectPass Low) _last = (new(), new());
    private double _mostW;

    /// <param name="plant">The machine.</param>
    /// <param name="maps">Maps of its parts.</param>
    /// <param name="charge">What was filled in.</param>
    /// <param name="streams">Flashes.</param>
    /// <param name="factors">Of <see cref="PlantParameters"/>.</param>
    /// <param name="pieces">The run on tables.</param>
    /// <param name="until">Tables and maps of the run until its first piece.</param>
    public DirectPath(Plant plant, PlantMaps maps, PlantCharge charge, DirectStreams streams, double[] factors, IReadOnlyList<PathPiece> pieces, (LoopMap Map, LoopHandover? Handover) until)
    {
        (_plant, _factors, Pieces, _streams, _until) = (plant, factors, pieces, streams, until);
        (_table, _flashed) = (new PlantEquations(plant, maps, charge), new PlantEquations(plant, maps, charge, streams));
        (_dyTable, _dyFlashed) = (new double[plant.Layout.Count], new double[plant.Layout.Count]);
        (_found, _passes) = ([.. pieces.Select(p => new double[p.Looks.Count][])], [.. pieces.Select(p => new (DirectPass, DirectPass)[p.Looks.Count])]);
    }

    /// <summary>The run's pieces.</summary>
    public IReadOnlyList<PathPiece> Pieces { get; }
    /// <summary>Evaluations with flashes.</summary>
    public int Evaluations { get; private set; }
    /// <summary>Largest heat that the last call saw flow otherwise than the run had it, summed over the bodies, over the cooling.</summary>
    public double HeatResidual { get; private set; }
    /// <summary>Largest balance of the loop that it saw otherwise.</summary>
    public double BalanceResidual { get; private set; }

    /// <summary>Evaluates at every look and gives the pieces their corrections.</summary>
    /// <exception cref="SolveException">A part has no answer wherever a piece was looked at.</exception>
    public void Sweep(CancellationToken cancel)
    {
        (HeatResidual, BalanceResidual) = (0, 0);
        double[]? leaving = null;
        for (int k = 0; k < Pieces.Count; k++)
        {
            var piece = Pieces[k];
            if (k == 0 && piece.Handover is not null)
            {
                Take(_until.Map, _until.Handover);
                _streams.Pass = (new(), new());
                leaving = Evaluated(piece.Looks[0]) ? Balances(piece.FromS) : null;
            }
            Take(piece.Map, piece.Handover);
            for (int i = 0; i < piece.Looks.Count; i++)
            {
                cancel.ThrowIfCancellationRequested();
                // the same state a moment ago, with other tables: its phases serve
                if (i > 0 || k == 0) _last = (_last.High.Offsets(), _last.Low.Offsets());
                _streams.Pass = _last;
                if (Difference(piece.Looks[i]) is not { } found) continue;
                (_found[k][i], _passes[k][i]) = (found, (_last.High.Copy(), _last.Low.Copy()));
                Note(found, null);
                if (i == 0 && piece.Handover is { } handover && leaving is not null)
                    piece.Handover = handover.With([.. _dyFlashed.AsSpan(_plant.Layout.High, leaving.Length).ToArray().Select((v, j) => v - leaving[j])]);
                if (i == piece.Looks.Count - 1) (_flashed.Handover, leaving) = (piece.Handover, Balances(piece.ToS));
            }
            Mend(_found[k], piece);
            Correct(k);
        }
    }

    /// <summary>After the run was repeated: evaluates half-way through every piece, and mends all corrections by what changed there.</summary>
    public void Refine(CancellationToken cancel)
    {
        (HeatResidual, BalanceResidual) = (0, 0);
        var changes = new List<(double TimeS, double[] Change)>();
        for (int k = 0; k < Pieces.Count; k++)
        {
            cancel.ThrowIfCancellationRequested();
            int middle = Pieces[k].Looks.Count / 2;
            Take(Pieces[k].Map, Pieces[k].Handover);
            _streams.Pass = _passes[k][middle];
            if (Difference(Pieces[k].Looks[middle]) is not { } found) continue;
            Note(found, _found[k][middle]);
            changes.Add((Pieces[k].Looks[middle].TimeS, [.. found.Select((v, r) => v - _found[k][middle][r])]));
        }
        if (changes.Count == 0) return;
        var change = new DirectCorrection(_plant, _factors, [.. changes.Select(c => c.TimeS)], [.. changes.Select(c => c.Change)]);
        for (int k = 0; k < Pieces.Count; k++)
        {
            for (int i = 0; i < _found[k].Length; i++)
            {
                var by = change.At(Pieces[k].Looks[i].TimeS);
                double[] mended = [.. _found[k][i]];
                for (int r = 0; r < mended.Length; r++) mended[r] += by[r];
                _found[k][i] = mended;
            }
            Correct(k);
        }
    }

    /// <summary>What flashes see otherwise than the corrected run has it, at moments it was not looked at: largest heat, summed over the bodies, over the cooling; largest balance.</summary>
    /// <param name="moments">Piece, time (s) and state.</param>
    /// <param name="cancel">Cancels the work.</param>
    public void Check(IEnumerable<(PathPiece Piece, double TimeS, double[] State)> moments, CancellationToken cancel)
    {
        (HeatResidual, BalanceResidual) = (0, 0);
        foreach (var (piece, time, state) in moments)
        {
            cancel.ThrowIfCancellationRequested();
            Take(piece.Map, piece.Handover);
            _streams.Pass = (new(), new());
            if (Difference((time, state)) is { } found) Note(found, piece.Correction!.At(time));
        }
    }

    private void Correct(int k) => Pieces[k].Correction = new DirectCorrection(_plant, _factors, [.. Pieces[k].Looks.Select(l => l.TimeS)], _found[k]);

    private void Take(LoopMap map, LoopHandover? handover)
    {
        (_table.Loop, _table.Handover) = (map, handover);
        (_flashed.Loop, _flashed.Handover) = (map, handover);
    }

    // the tables go to the composition before the flashes begin from them
    private bool Evaluated((double TimeS, double[] State) look)
    {
        Evaluations++;
        _table.NowS = _flashed.NowS = look.TimeS;
        return _table.Evaluate(look.State, _factors, _dyTable, slopes: false) && _flashed.Evaluate(look.State, _factors, _dyFlashed, slopes: false);
    }

    // of the loop in the state last evaluated, with what the handover takes off
    private double[] Balances(double timeS)
    {
        double[] balances = _dyFlashed.AsSpan(_plant.Layout.High, _plant.Layout.Balances).ToArray();
        _flashed.Handover?.Take(timeS, balances);
        return balances;
    }

    private double[]? Difference((double TimeS, double[] State) look) => Evaluated(look) ? DirectCorrection.Of(_dyFlashed, _flashed.At, _dyTable, _table.At) : null;

    private void Note(ReadOnlySpan<double> found, ReadOnlySpan<double> known)
    {
        _mostW = Math.Max(_mostW, _flashed.At.CoolingW);
        var l = _plant.Layout;
        double heatW = 0, balance = 0;
        for (int r = 0; r < l.High + l.Balances; r++)
        {
            double change = Math.Abs(found[r] - (known.IsEmpty ? 0 : known[r]));
            if (r < l.High) heatW += change * _plant.CapacityOf(r, _factors);
            else balance = Math.Max(balance, change);
        }
        HeatResidual = Math.Max(HeatResidual, heatW / Math.Max(_flashed.At.CoolingW, LeastCoolingShare * _mostW));
        BalanceResidual = Math.Max(BalanceResidual, balance);
    }

    // where a part had no answer (at the very start, before the loop has come to its balances) what the nearest moment has
    private static void Mend(double[]?[] found, PathPiece piece)
    {
        for (int i = 0; i < found.Length; i++)
            found[i] ??= Enumerable.Range(0, found.Length).Where(j => found[j] is not null).OrderBy(j => Math.Abs(j - i)).Select(j => found[j]).FirstOrDefault()
                ?? throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, FormattableString.Invariant($"a part has no answer with the model's own properties between {piece.FromS:0} and {piece.ToS:0} s")));
    }
}
