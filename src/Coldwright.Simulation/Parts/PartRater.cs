using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.Parts.Compression;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Parts;

/// <summary>
/// Rates one part of a cooler alone, by the model of its own, with the inlet states that the rating with given pressures
/// finds at its operating point.
/// </summary>
public static class PartRater
{
    /// <summary>Names of the parts that have a model of their own, in file order.</summary>
    /// <param name="machine">The machine.</param>
    public static IReadOnlyList<string> Rateable(MachineDescription machine) => [.. machine.Parts.Where(HasModel).Select(p => p.Name)];

    /// <summary>Rates a part.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="shop">Prices; they do not matter here.</param>
    /// <param name="part">Name of the part, one of <see cref="Rateable"/>.</param>
    /// <param name="options">How the operating point is found; of <see cref="RatingModel.Both"/> the reference model alone answers.</param>
    /// <param name="observer">Receives a line for each stage; may be null.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="MissingKeysException">The file does not describe the part closely enough.</exception>
    /// <exception cref="ArgumentException">No such part, or one without a model of its own; or a value outside the model's range.</exception>
    /// <exception cref="Numerics.SolveException">No operating point, or the part's model has no answer.</exception>
    public static PartRating Rate(MachineDescription machine, LoopLayout layout, ShopDescription shop, string part, RatingOptions options,
        Action<string>? observer = null, CancellationToken cancel = default)
    {
        var chosen = machine.Parts.FirstOrDefault(p => p.Name == part) ?? throw new ArgumentException($"'{part}' is no part of {machine.Name}", nameof(part));
        if (!HasModel(chosen)) throw new ArgumentException($"part '{part}' has no model of its own", nameof(part));
        // what is missing in the file is better known before the work than after it
        PartNeeds.Check(chosen, layout);
        return Of(Context(machine, layout, shop, options, observer, cancel), chosen, observer);
    }

    /// <summary>Rates every part that has a model of its own and is described closely enough.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="shop">Prices; they do not matter here.</param>
    /// <param name="options">As for one part.</param>
    /// <param name="observer">Receives a line for each stage; may be null.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="Numerics.SolveException">No operating point.</exception>
    public static PartRatings RateAll(MachineDescription machine, LoopLayout layout, ShopDescription shop, RatingOptions options, Action<string>? observer = null, CancellationToken cancel = default)
    {
        PartContext? context = null;
        var ratings = new List<PartRating>();
        var left = new List<(string, string)>();
        foreach (var part in machine.Parts.Where(HasModel))
            try
            {
                PartNeeds.Check(part, layout);
                ratings.Add(Of(context ??= Context(machine, layout, shop, options, observer, cancel), part, observer));
            }
            catch (MissingKeysException e)
            {
                left.Add((part.Name, $"add {string.Join("; ", e.Keys)}"));
            }
            catch (Exception e) when (context is not null && (e is ArgumentException or Numerics.SolveException))
            {
                left.Add((part.Name, e.Message));
            }
        return new PartRatings(ratings, left);
    }

    private static PartContext Context(MachineDescription machine, LoopLayout layout, ShopDescription shop, RatingOptions options, Action<string>? observer, CancellationToken cancel)
    {
        var single = options.Model == RatingModel.Cubic ? RatingModel.Cubic : RatingModel.Reference;
        HelmholtzModel model = single == RatingModel.Cubic ? CubicModel.Create(machine.Charge.Mixture.Names) : ReferenceModel.Create(machine.Charge.Mixture.Names);
        observer?.Invoke($"finding the operating point of {machine.Name}");
        var (loop, warnings) = OperatingLoop.Find(machine, layout, shop, model, options with { Model = single }, cancel);
        return new PartContext(machine, layout, loop, Point(loop), model, warnings, cancel);
    }

    private static PartRating Of(PartContext context, Part part, Action<string>? observer)
    {
        observer?.Invoke($"rating {part.Name}");
        return part switch
        {
            CompressorPart p => CompressorRater.Rate(context, p),
            PrecoolerPart p => PrecoolerRater.Rate(context, p),
            RecuperatorPart p => RecuperatorRater.Rate(context, p),
            ThrottlePart p => ThrottleRater.Rate(context, p),
            CoilPart or VesselPart => ColdEndRater.Rate(context, part),
            ColdBoxPart p => ColdBoxRater.Rate(context, p),
            BufferPart p => BufferRater.Rate(context, p),
            _ => throw new ArgumentException($"part '{part.Name}' has no model of its own", nameof(part)),
        };
    }

    private static bool HasModel(Part part) =>
        part is CompressorPart or PrecoolerPart or RecuperatorPart or ThrottlePart or CoilPart or VesselPart or ColdBoxPart or BufferPart;

    private static PartPoint Point(ModelRating loop)
    {
        bool product = loop.Liquid is { RateKgPerS: > 0 };
        return new PartPoint
        {
            Text = "the operating point of the rating with the pressures, conductances and temperatures given in the file: " +
                (product ? "the load at the product's temperature in the vessel"
                    : loop.NoLoadTemperatureK is { } noLoad && Math.Abs(noLoad - loop.OperatingTemperatureK) < 1e-6 ? "the load at its no-load temperature" : "the load at the best point of the cooling curve"),
            LoadTemperatureK = loop.OperatingTemperatureK,
            HighPressurePa = loop.Loop.HighPressurePa,
            LowPressurePa = loop.Loop.LowPressurePa,
            MolarFlow = loop.Loop.MolarFlow,
            MassFlow = loop.Loop.MassFlow,
        };
    }
}
