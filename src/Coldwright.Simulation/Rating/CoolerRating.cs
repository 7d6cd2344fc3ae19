using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Compression;

namespace Coldwright.Simulation.Rating;

/// <summary>The steady rating of a described cooler: its loop closed from hardware and charge, or between given pressures.</summary>
public static class CoolerRating
{
    /// <summary>Which pressures a rating holds: the option, else the file, else neither where the hardware is described closely enough for a closed loop.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="options">Options.</param>
    /// <param name="missing">What a closed loop would still need to be told; empty when nothing.</param>
    public static HeldPressure Held(MachineDescription machine, LoopLayout layout, RatingOptions options, out IReadOnlyList<MissingKey> missing)
    {
        missing = HardwareReader.Missing(machine, layout);
        return options.Hold ?? machine.Operation.Hold ?? HeldPressure.Both;
    }

    /// <summary>Rates the cooler by the chosen model or models.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout (<see cref="LoopLayout.TryFind"/>).</param>
    /// <param name="shop">Prices.</param>
    /// <param name="options">How.</param>
    /// <param name="observer">Receives a line for each stage of longer work; may be null.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">A balance that cannot be met; the report says which.</exception>
    /// <exception cref="MissingKeysException">A closed loop was asked for and the hardware is not described closely enough.</exception>
    public static RatingResult Rate(MachineDescription machine, LoopLayout layout, ShopDescription shop, RatingOptions options,
        Action<string>? observer = null, CancellationToken cancel = default)
    {
        var held = Held(machine, layout, options, out var missing);
        bool given = held == HeldPressure.Both && !(options.Sensitivity && missing.Count == 0);
        if (!given && missing.Count > 0) throw new MissingKeysException("the whole loop", "closed loop", missing);
        // a nameplate is worked out once for both models
        var compressor = given ? null : DescribedCompressor.Of(layout.Compressor, cancel);
        ModelRating One(HelmholtzModel model, RatingOptions how) => given
            ? new ModelRatingSolver(machine, layout, shop, model, how, cancel).Solve()
            : ClosedRating.Rate(machine, layout, shop, model, held, how, cancel, compressor);

        var names = machine.Charge.Mixture.Names;
        bool cubic = options.Model == RatingModel.Cubic;
        observer?.Invoke($"rating with the {(cubic ? "cubic" : "reference")} model");
        // the second opinion on the other core meanwhile
        var other = options.Model == RatingModel.Both ? Task.Run(() => One(CubicModel.Create(names), options with { Sensitivity = false }), CancellationToken.None) : null;
        ModelRating main;
        try
        {
            main = One(cubic ? CubicModel.Create(names) : ReferenceModel.Create(names), options);
        }
        catch
        {
            // its own answer no longer matters, nor why it has none
            other?.ContinueWith(t => t.Exception, TaskScheduler.Default);
            throw;
        }
        var warnings = new List<string>(main.Warnings);
        if (given && missing.Count > 0 && options.Hold is null && machine.Operation.Hold is null) warnings.Add($"rated between the two pressures of the file: to let them follow from hardware and charge, add {string.Join("; ", missing)}");
        ModelRating? second = null;
        if (other is not null)
            try
            {
                second = other.GetAwaiter().GetResult();
                warnings.AddRange(second.Warnings);
            }
            catch (SolveException e)
            {
                // the answer stands without it, but a person must know that nothing confirms it
                warnings.Add($"there is no second opinion: the cubic model has no answer for this cooler ({e.Report.Advice})");
            }
        return new RatingResult { Main = main, SecondOpinion = second, Warnings = warnings.Distinct().ToArray() };
    }
}
