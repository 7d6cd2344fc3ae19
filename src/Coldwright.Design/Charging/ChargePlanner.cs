using Coldwright.Design.Scoring;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Simulation.AtRest;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Design.Charging;

/// <summary>From a wanted mixture to a recipe: pump, rinse, gas after gas, what circulates once it is cold, what to add after a leak.</summary>
public static class ChargePlanner
{
    // our assumption where no product says how cold it gets
    private const double UsualColdestK = 95;
    // two readings that differ by less are the same
    private const double ReadApart = 0.05;

    /// <summary>Plans.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="shop">Purity of the gases; null: not known.</param>
    /// <param name="options">Amounts, pump, scale and gauge.</param>
    /// <param name="rating">Fluid model; of both the reference model alone answers.</param>
    /// <param name="observer">Told what is being done; may be null.</param>
    /// <param name="cancel">Ends the closed loop early; the recipe stands then. Before there is a recipe it ends everything.</param>
    /// <exception cref="MissingKeysException">The file does not describe the loop's space, or says nothing of the amount.</exception>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    /// <exception cref="SolveException">The amount does not go into the loop.</exception>
    public static ChargeResult Plan(MachineDescription machine, LoopLayout layout, ShopDescription? shop, ChargeOptions options, RatingOptions rating, Action<string>? observer = null, CancellationToken cancel = default)
    {
        options.Check(machine.Room.PressurePa);
        var mixture = Present(options.Mixture ?? machine.Charge.Mixture);
        bool cubic = rating.Model == RatingModel.Cubic;
        HelmholtzModel Model(IReadOnlyList<string> names) => cubic ? CubicModel.Create(names) : ReferenceModel.Create(names);
        observer?.Invoke("measuring the loop's space");
        var space = LoopSpace.Of(machine, layout, cancel);
        List<Spoken> said = [.. space.Said];
        var gas = new RestingGas(mixture.Names, space.VolumeM3, machine.Room.TemperatureK, Model);
        double[] z = [.. mixture.MoleFractions];
        double molarMass = mixture.Names.Zip(z, (n, x) => x * SubstanceCatalog.Get(n).MolarMass).Sum(), total = Amount(machine, options, gas, z, molarMass, said);
        double[] moles = [.. z.Select(x => x * total)];

        observer?.Invoke("working out the steps");
        double roomPa = machine.Room.PressurePa, product = Coldest(layout, said);
        var (high, low) = (machine.Operation.HighPressurePa, machine.Operation.LowPressurePa);
        var difference = new IsothermalDifference(CubicModel.Create(mixture.Names), high, low, product, layout.Precooler?.OutletTemperatureK ?? machine.Room.TemperatureK);
        var recipe = FillingRecipe.Make(gas, moles, roomPa, options, x => difference.Smallest([.. x]), cancel);
        if (options.Mixture is null && options.MassKg is null && machine.Charge.MassKg is not null && machine.Operation.StandstillPressurePa is { } read && Math.Abs(read / recipe.StandstillPa - 1) > ReadApart)
            said.Add(Spoken.Of($"the file says that the loop stands at {SpokenAmount.Pressure(read, "0.#")}; its mass in these volumes comes to {SpokenAmount.Pressure(recipe.StandstillPa, "0.#")}: weigh again, or check the volumes that were assumed"));
        var evacuation = Pumped(machine, options, mixture, space.VolumeM3, total, said);
        var topUps = TopUp.Of(gas, moles, options.LostKg, options.NowPa);

        var charged = machine with
        {
            Charge = machine.Charge with { Mixture = mixture, MassKg = total * molarMass, EvacuatedToPa = evacuation.VacuumPa },
            Operation = machine.Operation with { StandstillPressurePa = recipe.StandstillPa },
        };
        ModelRating? cold = null;
        bool stopped = false;
        if (options.Circulation) (cold, stopped) = Circulating(charged, layout, shop, rating with { Model = cubic ? RatingModel.Cubic : RatingModel.Reference }, observer, said, cancel);
        double coldest = cold is null ? product : Math.Min(product, cold.Loop.Points.Min(p => p.TemperatureK));
        var traces = stopped ? [] : ChargeTraces.Of(mixture, evacuation, total, shop, cold?.Loop.HighPressurePa ?? high, coldest, said);
        return new ChargeResult
        {
            Mixture = mixture,
            MassKg = total * molarMass,
            Moles = total,
            Places = space.Places,
            Evacuation = evacuation,
            Recipe = recipe,
            Traces = traces,
            TopUps = topUps,
            LowestLimit = ChargeFindings.LowestLimit(charged),
            Cold = cold,
            ColdestK = coldest,
            Model = cubic ? "cubic" : "reference",
            Findings = ChargeFindings.Of(charged, shop, recipe, evacuation, traces, cold, total),
            Warnings = [.. said.Concat(Spoken.All(Model(mixture.Names).Warnings)).Concat(cold?.Warnings ?? []).Distinct()],
            Stopped = stopped,
        };
    }

    private static Composition Present(Composition c)
    {
        var present = c.Names.Zip(c.MoleFractions).Where(p => p.Second > 0).ToArray();
        return new([.. present.Select(p => p.First)], [.. present.Select(p => p.Second)]);
    }

    internal static double Amount(MachineDescription machine, ChargeOptions options, RestingGas gas, double[] z, double molarMass, List<Spoken> said)
    {
        if ((options.MassKg ?? machine.Charge.MassKg) is { } kg) return kg / molarMass;
        if (machine.Operation.StandstillPressurePa is not { } rest)
            throw new MissingKeysException("the charge", "charge", [new("charge", "mass, or standstill-pressure in operation", "mass: 320 g")]);
        said.Add("the amount is not given: it is what stands at the file's standstill pressure; add 'mass' to charge, or --mass");
        double Off(double lnMoles) => Math.Log(gas.At([.. z.Select(x => x * Math.Exp(lnMoles))]).PressurePa / rest);
        double ideal = Math.Log(rest * gas.VolumeM3 / (8.314462618 * gas.TemperatureK));
        return Math.Exp(Numerics.Roots.Brent.Solve(Off, ideal - 1, Off(ideal - 1), ideal + 3, Off(ideal + 3), 1e-11));
    }

    private static double Coldest(LoopLayout layout, List<Spoken> said)
    {
        if (layout.Feed is { } feed)
        {
            var fluid = new ProductFluid(feed.Gas);
            return fluid.Saturation(Math.Min(feed.PressurePa, 0.99 * fluid.CriticalPressurePa))!.Value.TemperatureK - layout.Coil.DifferenceK;
        }
        said.Add(Spoken.Of($"how cold it gets is not told by a product: {SpokenAmount.Temperature(UsualColdestK, "0.#")} was taken (our assumption) to judge what an error costs and what freezes"));
        return UsualColdestK;
    }

    private static Evacuation Pumped(MachineDescription machine, ChargeOptions options, Composition mixture, double volumeM3, double total, List<Spoken> said)
    {
        double vacuum = options.VacuumPa ?? machine.Charge.EvacuatedToPa ?? ChargeOptions.UsualVacuumPa;
        if (options.VacuumPa is null && machine.Charge.EvacuatedToPa is null)
            said.Add(FormattableString.Invariant($"what the pump leaves is not given: {ChargeOptions.UsualVacuumPa} Pa were taken (our assumption); add 'evacuated-to' to charge, or --vacuum"));
        string rinse = mixture.Names.Contains("argon") && !mixture.Names.Contains("nitrogen") ? "argon" : "nitrogen";
        return Evacuation.Of(vacuum, options.Rinses, options.RinsePa ?? machine.Room.PressurePa + ChargeOptions.RinseOverRoomPa, rinse, volumeM3, machine.Room.TemperatureK, total, ChargeOptions.AllowedAir);
    }

    private static (ModelRating? Rating, bool Stopped) Circulating(MachineDescription charged, LoopLayout layout, ShopDescription? shop, RatingOptions options, Action<string>? observer, List<Spoken> said, CancellationToken cancel)
    {
        var prices = shop ?? new ShopDescription { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() };
        try
        {
            return (CoolerRating.Rate(charged, layout, prices, options with { Hold = HeldPressure.Neither }, observer, cancel).Main, false);
        }
        catch (SolveException e)
        {
            said.Add($"what circulates once it is cold could not be worked out: {e.Report.Advice}");
            return (null, false);
        }
        catch (MissingKeysException e)
        {
            said.Add($"what circulates once it is cold needs more of the file: {string.Join("; ", e.Keys.Select(k => $"add {k}"))}");
            return (null, false);
        }
        catch (OperationCanceledException)
        {
            said.Add("stopped: what circulates once it is cold is not worked out; the recipe stands");
            return (null, true);
        }
    }
}
