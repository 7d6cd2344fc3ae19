using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Batch;

/// <summary>From feed gas to liquid in the flask: the batch of a described cooler, with the schedule that collects most per hour.</summary>
public static class BatchSimulation
{
    // a mixture's overall composition is held while its liquid runs out; beyond this that is no longer good
    private const double FarFromPure = 0.02;

    /// <summary>Rates the cooler, seeks the schedule unless one is given, runs it and accounts for every gram and joule. Cancelled, it gives what was done.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="shop">What the feed gas is made of; null: pure.</param>
    /// <param name="rating">Fluid model of the rating.</param>
    /// <param name="options">Schedule, goal, number of batches.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="SolveException">There is no feed or vessel, no cold end, or no schedule that collects anything.</exception>
    /// <exception cref="OperationCanceledException">Cancelled before there was anything to keep.</exception>
    public static BatchResult Run(MachineDescription machine, LoopLayout layout, ShopDescription? shop, RatingOptions rating, BatchOptions options,
        Action<string>? observer = null, CancellationToken cancel = default)
    {
        options.Check();
        if (layout.Feed is null || layout.Vessel is null)
            throw new SolveException(new SolveReport(SolveStatus.Outside, 0, 0, "a batch needs a part of kind feed and one of kind vessel; this machine makes no liquid"));
        observer?.Invoke("rating the cold end");
        var prices = shop ?? new ShopDescription { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() };
        var rated = CoolerRating.Rate(machine, layout, prices, rating, observer, cancel);
        observer?.Invoke("tabulating the product");
        var purity = ProductPurity.Of(layout.Feed.Gas, shop);
        List<Spoken> said = [.. purity.Said];
        var cooler = BatchCoolerReader.Read(machine, layout, purity, rated.Main, options.StartTemperatureK, said, cancel);
        return Of(machine, layout, purity, cooler, rated.Main, [.. said, .. rated.Warnings], options, observer, cancel);
    }

    internal static BatchResult Of(MachineDescription machine, LoopLayout layout, ProductPurity purity, BatchCooler cooler, ModelRating rated, IReadOnlyList<Spoken> warnings,
        BatchOptions options, Action<string>? observer, CancellationToken cancel)
    {
        var said = new List<Spoken>(warnings);
        var optimizer = new BatchOptimizer(cooler, options, observer, cancel);
        var plan = options.Plan ?? optimizer.Best(options.Goal);
        if (plan is null)
        {
            // nothing to keep: a stop is then only a stop
            cancel.ThrowIfCancellationRequested();
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, optimizer.Tried, 0,
                $"no schedule puts liquid into the flask ({optimizer.Tried} tried): at {SpokenAmount.Temperature(cooler.StartK, "0.#")} the cold end has {cooler.NetCoolingW.At(cooler.StartK):0.#} W to spare. 'rate' says what limits it"));
        }
        BatchRun? other = null;
        var otherGoal = options.Goal == BatchGoal.LitresPerHour ? BatchGoal.EnergyPerLitre : BatchGoal.LitresPerHour;
        if (options.Plan is null && !optimizer.Stopped && optimizer.Best(otherGoal) is { } second && !optimizer.Stopped)
            other = new BatchRunner(cooler, second, options, keepSeries: false, cancel).Run();
        observer?.Invoke("running the batch");
        // a search that was stopped still shows its best schedule; a run that is stopped shows how far it came
        var run = new BatchRunner(cooler, plan, options, keepSeries: true, optimizer.Stopped ? CancellationToken.None : cancel).Run();
        said.AddRange(run.Said);
        if (optimizer.Stopped) said.Add($"stopped: the best of {optimizer.Tried} schedules tried is shown");
        if (run.Stopped) said.Add(FormattableString.Invariant($"stopped: the batch is shown as far as it came, {run.DurationS / 60:0.#} min"));
        observer?.Invoke("what waiting is worth");
        var waiting = run.Stopped || optimizer.Stopped ? [] : WaitingValue.Of(cooler, run, options, cancel);
        var duty = FeedDutyFinder.Of(cooler, plan.FeedPressurePa);
        double others = 1 - purity.Mixture.MoleFractions[0];
        if (others > FarFromPure) said.Add(FormattableString.Invariant($"{100 * others:0.#} % of the feed are other gases: vapour and liquid in the vessel count as one mixture of the feed's composition while the liquid runs out, which is then rough"));
        return new BatchResult
        {
            Run = run,
            OtherGoal = other is { Stopped: false } ? other : null,
            Goal = options.Plan is null ? options.Goal : null,
            Tried = optimizer.Tried,
            Waiting = waiting,
            Impurities = ImpurityAccount.Of(cooler, purity, run, said),
            Feed = duty,
            Coil = cooler.Coil,
            Rating = rated,
            Substance = layout.Feed!.Gas,
            VesselVolumeM3 = cooler.VesselM3,
            LiquidDensity = cooler.AtRoom.Density,
            Concerns = [.. BatchConcerns.Of(machine, layout, cooler, run, duty)],
            Warnings = said.Distinct().ToArray(),
            Stopped = run.Stopped || optimizer.Stopped || cancel.IsCancellationRequested,
        };
    }
}
