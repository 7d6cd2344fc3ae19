using System.Diagnostics;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Design.Blending;

/// <summary>
/// The mixture that gives most on a machine, at the worst of all filling errors and of both models. Fewer gases, each gas's slope and each limit's price follow
/// from the best.
/// </summary>
public static class BlendSearch
{
    private const int MostGases = 8;

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
        double processor = Environment.CpuUsage.TotalTime.TotalSeconds;
        var said = new List<Spoken>();
        string[] gases = Gases(machine, shop, options, said);
        observer?.Invoke("rating the mixture of the file");
        var (plain, plainLayout, loadK) = Start(machine, layout, options, said, cancel);
        double?[] prices = [.. gases.Select(g => shop is not null && shop.GasPerKg.TryGetValue(g, out double p) ? (double?)p : null)];
        if (options.Limits.PricePerKg is not null && prices.Any(p => p is null)) throw new ArgumentException($"a price is limited, and the shop file has none for {string.Join(", ", gases.Where((_, i) => prices[i] is null))}", nameof(options));
        double? litresPerWatt = LitresPerWatt(machine, layout, options, loadK);
        BlendRater Rater(MachineDescription m, Func<IReadOnlyList<string>, HelmholtzModel> model, BlendOptions o) => new(m, plainLayout, gases, model, o, loadK, litresPerWatt, prices);
        var cubic = Rater(plain, CubicModel.Create, options);
        var reference = options.Reference ? Rater(plain, ReferenceModel.Create, options) : null;
        var worst = new WorstCase(cubic, reference, options.FillingError);
        double[] now = [.. gases.Select(g => machine.Charge.Mixture.Names.ToList().IndexOf(g) is var i and >= 0 ? machine.Charge.Mixture.MoleFractions[i] : 0)];
        bool known = now.Sum() > 0.999;
        var search = new RobustSearch(cubic, worst, options, (what, merit) => observer?.Invoke(FormattableString.Invariant(
            $"{what}, best {merit:0.###}, {(cubic.Ratings + (reference?.Ratings ?? 0)) / watch.Elapsed.TotalSeconds:0} ratings a second")), cancel);
        var best = search.From(gases.Length, known ? now : null);
        if (best.Merit <= BlendPoint.Unusable)
        {
            cancel.ThrowIfCancellationRequested();
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, cubic.Ratings, best.Merit,
                $"no mixture of {string.Join(", ", gases)} was found that keeps the limits and has an answer at {SpokenAmount.Temperature(loadK, "0.#")}: {string.Join("; ", cubic.Of(best.X, full: true).Broken)}"));
        }
        var fewer = new FewerGases(search, worst, options, cancel);
        if (!search.Stopped)
        {
            observer?.Invoke("what fewer gases give");
            best = fewer.Of(best);
        }
        bool stopped = search.Stopped || cancel.IsCancellationRequested;
        BlendChoice Choice(double[] x, bool robust = true) => Chosen(gases, x, cubic, reference, robust ? worst : null, prices);
        observer?.Invoke("what each gas and each limit is worth");
        var choice = Choice(best.X, !stopped);
        var worth = new BlendWorth(gases, best.X, options, worst, plain, layout.Compressor.MaximumDischargeTemperatureK, (m, o) => Rater(m, CubicModel.Create, o), cancel);
        return new BlendResult
        {
            Goal = options.Goal,
            TemperatureK = loadK,
            HighPressurePa = plain.Operation.HighPressurePa,
            LowPressurePa = plain.Operation.LowPressurePa,
            Gases = gases,
            Best = choice,
            Now = known ? Choice(now, !stopped) : choice,
            Near = stopped ? [] : [.. fewer.Near.Select(x => Choice(x)).Where(c => c.Main.IsGood && (options.Goal is BlendGoal.Lowest or BlendGoal.Endless || c.Main.Merit > 0))],
            Sensitivities = [.. worth.Gases(reference ?? cubic, fewer.Without)],
            Prices = stopped || options.Goal == BlendGoal.Endless ? [] : [.. worth.Limits(choice)],
            Rated = (cubic.Ratings, reference?.Ratings ?? 0),
            Seconds = watch.Elapsed.TotalSeconds,
            ProcessorSeconds = Environment.CpuUsage.TotalTime.TotalSeconds - processor,
            FillingError = options.FillingError,
            Stopped = stopped || cancel.IsCancellationRequested,
            Warnings = [.. said, .. known ? Array.Empty<string>() : ["the file's own mixture has a gas that may not be used here: it is not compared with"],
                .. !choice.Main.IsGood ? [Spoken.Of($"the best breaks a limit in one of the models: {Spoken.Join("; ", choice.Main.Broken)}")] : Array.Empty<Spoken>(),
                .. (reference is null ? CubicModel.Create(choice.Mixture.Names).Warnings : ReferenceModel.Create(choice.Mixture.Names).Warnings)],
        };
    }

    private static string[] Gases(MachineDescription machine, ShopDescription? shop, BlendOptions options, List<Spoken> said)
    {
        if (options.Gases.Count > 0) return [.. options.Gases];
        string[] at = [.. (shop?.GasPerKg.Keys ?? []).Where(g => SubstanceNames.TryFind(g, out _) && g is not ("oxygen" or "carbon-dioxide" or "water"))];
        if (at.Length < 2) throw new ArgumentException("two gases or more are needed: name them with their price under 'gases' in shop.yaml, or with --gases", nameof(options));
        if (at.Length > MostGases) throw new ArgumentException($"shop.yaml has {at.Length} gases; at most {MostGases} are searched at a time: name them with --gases", nameof(options));
        if (shop!.GasPerKg.Keys.Except(at).Any()) said.Add($"left out, because they burn others, freeze or are blends: {string.Join(", ", shop.GasPerKg.Keys.Except(at))}");
        return at;
    }

    internal static (MachineDescription Machine, LoopLayout Layout, double LoadK) Start(MachineDescription machine, LoopLayout layout, BlendOptions options, List<Spoken> said, CancellationToken cancel)
    {
        // without hardware nothing has to be rated first
        if (options is { Goal: BlendGoal.Endless, TemperatureK: { } asked }) return (machine, layout, asked);
        var model = CubicModel.Create(machine.Charge.Mixture.Names);
        var (plain, plainLayout, words) = StandIns.Fill(machine, layout, model, cancel);
        said.AddRange(words);
        var shop = new ShopDescription { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() };
        var (loop, _) = OperatingLoop.Find(machine, layout, shop, model, new RatingOptions { Model = RatingModel.Cubic, Hold = HeldPressure.Both, OperatingTemperatureK = options.TemperatureK, CurveStepK = 15 }, cancel);
        if (layout.Recuperator.GivenConductanceWPerK is null) (plain, plainLayout) = StandIns.With(plain, plainLayout, RecuperatorRater.Conductance(plain, plainLayout.Recuperator, loop, model, cancel));
        double load = options.TemperatureK ?? loop.OperatingTemperatureK;
        return (plain, plainLayout, load);
    }

    // at one load temperature liquid goes with cooling
    private static double? LitresPerWatt(MachineDescription machine, LoopLayout layout, BlendOptions options, double loadK)
    {
        if (layout.Feed is not { } feed)
            return options.Goal != BlendGoal.Litres ? null : throw new ArgumentException("nothing is liquefied by this machine: litres cannot be asked for", nameof(options));
        var product = new ProductSolver(feed, machine.Room);
        double arriving = product.Arriving(layout.FeedPrecooled ? layout.Precooler?.OutletTemperatureK : null).MolarEnthalpy, leaving = product.Leaving(loadK).Enthalpy;
        return (1 - product.LetDown(leaving).VapourFraction) / (arriving - leaving) / product.BoilingLiquid.MolarDensity * 3.6e6;
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
}
