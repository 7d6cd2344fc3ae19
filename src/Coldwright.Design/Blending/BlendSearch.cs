using System.Diagnostics;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Numerics.Optimisation;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Design.Blending;

/// <summary>
/// The mixture that gives most on a machine: differential evolution over all gases with the cubic model, local search on the worst of all filling errors, then
/// local search on the worst of filling errors and both models. Fewer gases, each gas's slope and each limit's price follow from the best.
/// </summary>
public static class BlendSearch
{
    private const double LastStep = 0.005, FinestStep = 0.0025, ReferenceStep = 0.02, Felt = 0.02, Relax = 0.1, PerCent = 0.01;
    private const int MostGases = 8, Polished = 3;

    /// <summary>Searches.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="shop">Gases and prices; null: <see cref="BlendOptions.Gases"/> must name the gases.</param>
    /// <param name="options">Goal, limits, gases.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="cancel">Ends it early; the best so far is the answer, once there is one.</param>
    /// <exception cref="ArgumentException">Too few or too many gases, or a value outside its range.</exception>
    /// <exception cref="SolveException">No mixture of these gases keeps the limits and cools.</exception>
    public static BlendResult Find(MachineDescription machine, LoopLayout layout, ShopDescription? shop, BlendOptions options, Action<string>? observer = null, CancellationToken cancel = default)
    {
        options.Check();
        var watch = Stopwatch.StartNew();
        var said = new List<string>();
        string[] gases = Gases(machine, shop, options, said);
        observer?.Invoke("rating the mixture of the file");
        var (plain, plainLayout, loadK, flow) = Start(machine, layout, options, said, cancel);
        double?[] prices = [.. gases.Select(g => shop is not null && shop.GasPerKg.TryGetValue(g, out double p) ? (double?)p : null)];
        if (options.Limits.PricePerKg is not null && prices.Any(p => p is null)) throw new ArgumentException($"a price is limited, and the shop file has none for {string.Join(", ", gases.Where((_, i) => prices[i] is null))}", nameof(options));
        var cubic = new BlendRater(plain, plainLayout, gases, CubicModel.Create, options, loadK, flow, prices);
        var reference = options.Reference ? new BlendRater(plain, plainLayout, gases, ReferenceModel.Create, options, loadK, flow, prices) : null;
        var worst = new WorstCase(cubic, reference, options.FillingError);

        // global, with the plain cubic model
        double[] now = [.. gases.Select(g => machine.Charge.Mixture.Names.ToList().IndexOf(g) is var i and >= 0 ? machine.Charge.Mixture.MoleFractions[i] : 0)];
        bool known = now.Sum() > 0.999;
        var starts = new List<double[]>();
        if (known) starts.Add(Fractions.Cube(now));
        starts.Add([.. gases.Select(_ => 1.0)]);
        var evolution = new DifferentialEvolution { Generations = options.Generations, Population = options.Population, Threads = options.Threads, Seed = options.Seed };
        var global = evolution.Maximise(gases.Length, (u, floor) => cubic.Of(Fractions.Of(u), floor).Merit, starts,
            (g, value) => observer?.Invoke(FormattableString.Invariant($"generation {g} of {options.Generations}, best {value:0.###}, {cubic.Ratings / watch.Elapsed.TotalSeconds:0} ratings a second")), cancel);
        if (global.Value <= BlendPoint.Unusable)
        {
            cancel.ThrowIfCancellationRequested();
            throw new SolveException(new SolveReport(SolveStatus.NoSolution, global.Evaluations, global.Value,
                $"no mixture of {string.Join(", ", gases)} was found that keeps the limits and has an answer at {loadK:0.#} K: {string.Join("; ", cubic.Of(Fractions.Of(global.Place), full: true).Broken)}"));
        }

        // local, robust, by the cubic model
        observer?.Invoke("making it safe against filling errors");
        (double[] X, double Merit) best = (Fractions.Of(global.Place), double.NegativeInfinity);
        var local = new TransferSearch((x, floor) => worst.Cubic(x, floor), options.Threads, cancel);
        foreach (var start in Distinct(global.Members.Where(m => m.Value > BlendPoint.Unusable).Select(m => Fractions.Of(m.Place))).Take(Polished))
        {
            var found = local.From(start, worst.Cubic(start, double.NegativeInfinity), LastStep);
            if (found.Merit > best.Merit) best = found;
            if (local.Stopped) break;
        }
        bool stopped = global.Stopped || local.Stopped;

        // the same with both models, the worse of them counting
        if (reference is not null && !stopped)
        {
            observer?.Invoke("refining with the reference model");
            var both = new TransferSearch((x, floor) => worst.Both(x, floor), options.Threads, cancel);
            best = both.From(best.X, worst.Both(best.X, double.NegativeInfinity), FinestStep, null, ReferenceStep);
            stopped = both.Stopped;
        }
        BlendChoice Choice(double[] x, bool robust = true) => Chosen(gases, x, cubic, reference, robust ? worst : null, prices);
        observer?.Invoke("what each gas and each limit is worth");
        var choice = Choice(best.X, !stopped);
        var without = stopped ? [] : Fewer(gases, best.X, worst, cubic, options.Threads, cancel);
        var near = without.GroupBy(w => w.X.Count(v => v > 0)).Select(g => g.MaxBy(w => w.Merit)).OrderByDescending(w => w.X.Count(v => v > 0)).Select(w => Choice(w.X)).Where(c => c.Main.IsGood && (options.Goal != BlendGoal.Cooling || c.Main.Merit > 0)).ToArray();
        var result = new BlendResult
        {
            Goal = options.Goal,
            TemperatureK = loadK,
            HighPressurePa = plain.Operation.HighPressurePa,
            LowPressurePa = plain.Operation.LowPressurePa,
            Gases = gases,
            Best = choice,
            Now = known ? Choice(now, !stopped) : choice,
            Near = near,
            Sensitivities = [.. Slopes(gases, best.X, reference ?? cubic, without)],
            Prices = stopped || options.Goal == BlendGoal.Endless ? [] : [.. Prices(gases, best.X, options, choice, worst, o => new BlendRater(plain, plainLayout, gases, CubicModel.Create, o, loadK, flow, prices), cancel)],
            Rated = (cubic.Ratings, reference?.Ratings ?? 0, cubic.Bounded + (reference?.Bounded ?? 0)),
            Seconds = watch.Elapsed.TotalSeconds,
            FillingError = options.FillingError,
            Stopped = stopped || cancel.IsCancellationRequested,
            Warnings = [.. said, .. known ? Array.Empty<string>() : ["the file's own mixture has a gas that may not be used here: it is not compared with"],
                .. !choice.Main.IsGood ? [$"the best breaks a limit in one of the models: {string.Join("; ", choice.Main.Broken)}"] : Array.Empty<string>(),
                .. (reference is null ? CubicModel.Create(choice.Mixture.Names).Warnings : ReferenceModel.Create(choice.Mixture.Names).Warnings)],
        };
        return result;
    }

    private static string[] Gases(MachineDescription machine, ShopDescription? shop, BlendOptions options, List<string> said)
    {
        if (options.Gases.Count > 0) return [.. options.Gases];
        string[] at = [.. (shop?.GasPerKg.Keys ?? []).Where(g => SubstanceNames.TryFind(g, out _) && g is not ("oxygen" or "carbon-dioxide" or "water"))];
        if (at.Length < 2) throw new ArgumentException("two gases or more are needed: name them with their price under 'gases' in shop.yaml, or with --gases", nameof(options));
        if (at.Length > MostGases) throw new ArgumentException($"shop.yaml has {at.Length} gases; at most {MostGases} are searched at a time: name them with --gases", nameof(options));
        if (shop!.GasPerKg.Keys.Except(at).Any()) said.Add($"left out, because they burn others, freeze or are blends: {string.Join(", ", shop.GasPerKg.Keys.Except(at))}");
        return at;
    }

    private static (MachineDescription, LoopLayout, double LoadK, double Flow) Start(MachineDescription machine, LoopLayout layout, BlendOptions options, List<string> said, CancellationToken cancel)
    {
        // without hardware nothing has to be rated first
        if (options is { Goal: BlendGoal.Endless, TemperatureK: { } asked }) return (machine, layout, asked, 1);
        var model = CubicModel.Create(machine.Charge.Mixture.Names);
        var (plain, plainLayout, words) = StandIns.Fill(machine, layout, model, cancel);
        said.AddRange(words);
        var shop = new ShopDescription { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() };
        var (loop, _) = OperatingLoop.Find(machine, layout, shop, model, new RatingOptions { Model = RatingModel.Cubic, Hold = HeldPressure.Both, OperatingTemperatureK = options.TemperatureK, CurveStepK = 15 }, cancel);
        if (layout.Recuperator.GivenConductanceWPerK is null) (plain, plainLayout) = StandIns.With(plain, plainLayout, RecuperatorRater.Conductance(plain, plainLayout.Recuperator, loop, model, cancel));
        double load = options.TemperatureK ?? loop.OperatingTemperatureK;
        return (plain, plainLayout, load, loop.Loop.MolarFlow);
    }

    private static IEnumerable<double[]> Distinct(IEnumerable<double[]> members)
    {
        var kept = new List<double[]>();
        foreach (var x in members)
        {
            if (kept.Any(k => k.Zip(x, (a, b) => Math.Abs(a - b)).Max() < 0.08)) continue;
            kept.Add(x);
            yield return x;
        }
    }

    // one gas less, the rest made best again, and the best set of so many gases that the global search met; from the best of those once more
    private static List<(double[] X, double Merit, int Without)> Fewer(string[] gases, double[] best, WorstCase worst, BlendRater met, int threads, CancellationToken cancel)
    {
        var found = new List<(double[], double, int)>();
        var at = best;
        while (at.Count(v => v > 0) is > 2 and var count && !cancel.IsCancellationRequested)
        {
            var starts = Enumerable.Range(0, gases.Length).Where(i => at[i] > 0).Select(gone => (X: Fractions.Clean([.. at.Select((v, i) => i == gone ? 0 : v)]), Gone: ReferenceEquals(at, best) ? gone : -1))
                .Concat(met.BestOfEachSet.Where(m => m.Merit > BlendPoint.Unusable && m.X.Count(v => v > 0) == count - 1).OrderByDescending(m => m.Merit).Take(1).Select(m => (m.X, Gone: -1))).ToArray();
            var level = new List<(double[] X, double Merit, int Without)>();
            foreach (var (x, gone) in starts.Where(x => x.X.All(double.IsFinite)))
            {
                var search = new TransferSearch((y, floor) => worst.Cubic(y, floor), threads, cancel);
                var (moved, merit) = search.From(x, worst.Cubic(x, double.NegativeInfinity), 2 * LastStep, [.. Enumerable.Range(0, gases.Length).Where(i => x[i] > 0)]);
                level.Add((moved, merit, gone));
            }
            if (level.Count == 0) break;
            found.AddRange(level.Where(l => l.Merit > BlendPoint.Unusable));
            at = level.MaxBy(l => l.Merit).X;
        }
        return found;
    }

    private static BlendChoice Chosen(string[] gases, double[] x, BlendRater cubic, BlendRater? reference, WorstCase? worst, double?[] prices)
    {
        int[] present = [.. Enumerable.Range(0, x.Length).Where(i => x[i] > 0)];
        var main = reference?.Of(x, full: true);
        var opinion = cubic.Of(x, full: true);
        return new BlendChoice
        {
            Mixture = new Composition([.. present.Select(i => gases[i])], [.. present.Select(i => x[i])]),
            Cubic = opinion,
            Reference = main,
            WorstMerit = worst is null ? Math.Min(opinion.Merit, main?.Merit ?? double.MaxValue) : worst.Both(x, double.NegativeInfinity),
            Flammable = cubic.Flammable(x),
            PricePerKg = present.All(i => prices[i] is not null) ? cubic.PricePerKg(x) : null,
        };
    }

    private static IEnumerable<GasSensitivity> Slopes(string[] gases, double[] x, BlendRater rater, List<(double[] X, double Merit, int Without)> without)
    {
        double here = rater.Of(x).Merit;
        for (int i = 0; i < gases.Length; i++)
        {
            double? Change(double by) => Fractions.Off(x, i, by) is { } off && rater.Of(off) is { IsGood: true } p ? p.Merit - here : null;
            // of a gas that is not in it: a per cent let in
            double? more = x[i] > 0 ? Change(PerCent) : rater.Of(Fractions.Clean([.. x.Select((v, k) => k == i ? PerCent : v * (1 - PerCent))])) is { IsGood: true } p ? p.Merit - here : null;
            var gone = without.Where(w => w.Without == i).ToArray();
            yield return new(gases[i], x[i], more, x[i] > 0 ? Change(-PerCent) : null, gone.Length > 0 ? gone.Max(g => g.Merit) : null);
        }
    }

    // a limit is felt when the mixture stands at it: a tenth more room, and what that brings
    private static IEnumerable<LimitPrice> Prices(string[] gases, double[] x, BlendOptions options, BlendChoice choice, WorstCase worst, Func<BlendOptions, BlendRater> rater, CancellationToken cancel)
    {
        var limits = options.Limits;
        double here = worst.Cubic(x, double.NegativeInfinity);
        double Gain(BlendLimits relaxed)
        {
            var with = new WorstCase(rater(options with { Limits = relaxed }), null, options.FillingError);
            var search = new TransferSearch((y, floor) => with.Cubic(y, floor), options.Threads, cancel);
            return Math.Max(0, search.From(x, with.Cubic(x, double.NegativeInfinity), LastStep).Merit - here);
        }
        if (limits.Flammable is { } f && choice.Flammable > f - 0.03) yield return new("share of gases that burn", "1", f, Math.Min(1, f + Relax), Gain(limits with { Flammable = Math.Min(1, f + Relax) }));
        if (limits.PricePerKg is { } price && choice.PricePerKg > (1 - 2 * Felt) * price) yield return new("price of a kilogram", "", price, (1 + Relax) * price, Gain(limits with { PricePerKg = (1 + Relax) * price }));
        if (choice.Cubic.Freezing is { } ice && ice.Margin < 1.5 * limits.FreezingMargin) yield return new($"freezing margin of {ice.Gas}", "1", limits.FreezingMargin, 1 + 0.5 * (limits.FreezingMargin - 1), Gain(limits with { FreezingMargin = 1 + 0.5 * (limits.FreezingMargin - 1) }));
        if (limits.OneLiquid) yield return new("one liquid before the throttle", "1", 1, null, Gain(limits with { OneLiquid = false }));
        if (choice.Cubic.DischargeK is { } k && limits.DischargeK is { } hottest && k > hottest - 6) yield return new("discharge temperature", "K", hottest, hottest + 10, Gain(limits with { DischargeK = hottest + 10 }));
    }
}
