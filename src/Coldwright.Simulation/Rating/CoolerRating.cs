using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;

namespace Coldwright.Simulation.Rating;

/// <summary>The steady rating of a described cooler, pressures given.</summary>
public static class CoolerRating
{
    /// <summary>Rates the cooler by the chosen model or models.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout (<see cref="LoopLayout.TryFind"/>).</param>
    /// <param name="shop">Prices.</param>
    /// <param name="options">How.</param>
    /// <param name="observer">Receives a line for each stage of longer work; may be null.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="Coldwright.Numerics.SolveException">A balance that cannot be met; the report says which.</exception>
    public static RatingResult Rate(MachineDescription machine, LoopLayout layout, ShopDescription shop, RatingOptions options,
        Action<string>? observer = null, CancellationToken cancel = default)
    {
        ModelRating One(HelmholtzModel model)
        {
            observer?.Invoke($"rating with the {model.Name} model");
            return new ModelRatingSolver(machine, layout, shop, model, options, cancel).Solve();
        }

        var names = machine.Charge.Mixture.Names;
        var main = One(options.Model == RatingModel.Cubic ? CubicModel.Create(names) : ReferenceModel.Create(names));
        var warnings = new List<string>(main.Warnings);
        ModelRating? second = null;
        if (options.Model == RatingModel.Both)
            try
            {
                second = One(CubicModel.Create(names));
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
