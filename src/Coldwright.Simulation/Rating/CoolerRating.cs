using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Compression;

namespace Coldwright.Simulation.Rating;

/// <summary>The steady rating of a described cooler: its loop closed from hardware and charge, or between given pressures.</summary>
public static class CoolerRating
{
    /// <summary>Which pressures a rating holds: the option, else what the file says, else both.</summary>
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
        var names = machine.Charge.Mixture.Names;
        bool cubic = options.Model == RatingModel.Cubic, both = options.Model == RatingModel.Both;
        ModelRating main;
        Func<ModelRating>? opinion = null;
        if (given)
        {
            ModelRating One(HelmholtzModel model) => new ModelRatingSolver(machine, layout, shop, model, options, cancel).Solve();
            observer?.Invoke($"rating with the {(cubic ? "cubic" : "reference")} model");
            main = One(cubic ? CubicModel.Create(names) : ReferenceModel.Create(names));
            opinion = both ? () => One(CubicModel.Create(names)) : null;
        }
        else
        {
            // The cubic model closes the loop from nothing; the reference model starts from where that ended, which costs a fraction.
            var compressor = DescribedCompressor.Of(layout.Compressor, cancel);
            var quick = CubicModel.Create(names);
            observer?.Invoke("closing the loop with the cubic model");
            ClosedSolver? first = null;
            SolveException? refused = null;
            try
            {
                first = ClosedRating.Close(machine, layout, quick, held, options, cancel, compressor, begin: cubic);
            }
            catch (SolveException e) when (!cubic)
            {
                refused = e;
            }
            if (cubic) main = ClosedRating.Of(first!, shop, quick, options, cancel);
            else
            {
                observer?.Invoke("closing the loop with the reference model");
                var reference = ReferenceModel.Create(names);
                main = ClosedRating.Of(ClosedRating.Close(machine, layout, reference, held, options, cancel, compressor, first, begin: true), shop, reference, options, cancel);
                opinion = !both ? null : first is null ? () => throw refused! : () => ClosedRating.Of(first, shop, quick, options with { Sensitivity = false }, cancel);
            }
        }
        var warnings = new List<Spoken>(main.Warnings);
        if (given && missing.Count == 0 && options.Hold is null && machine.Operation.Hold is null) warnings.Add("rated between the two pressures of the file, with the plain figures of its parts: the hardware is described closely enough to let them follow, with --hold neither or hold: neither in operation");
        ModelRating? second = null;
        if (opinion is not null)
            try
            {
                if (given) observer?.Invoke("rating with the cubic model");
                second = opinion();
                warnings.AddRange(second.Warnings);
            }
            catch (SolveException e)
            {
                // the answer stands without it, but a person must know that nothing confirms it
                warnings.Add(Spoken.From($"there is no second opinion: the cubic model has no answer for this cooler ({e.Report.Told})"));
            }
        return new RatingResult { Main = main, SecondOpinion = second, Warnings = warnings.Distinct().ToArray() };
    }
}
