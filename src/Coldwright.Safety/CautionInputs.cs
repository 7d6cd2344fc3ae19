using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Simulation.Rating;

namespace Coldwright.Safety;

/// <summary>What the findings need to know beyond the machine's description. What is null is not known.</summary>
public sealed record CautionInputs
{
    /// <summary>What a folder and, where there is one, a rating of its cooler tell.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="shop">Its shop, for the purity of the feed gas as sold; null when there is none.</param>
    /// <param name="rating">A rating of it; null before one.</param>
    public static CautionInputs Of(MachineDescription machine, ShopDescription? shop = null, ModelRating? rating = null)
    {
        var oxygen = machine.PartsOf<FeedPart>().FirstOrDefault() is { } feed ? ProductPurity.Oxygen(feed.Gas, shop) : null;
        return new()
        {
            MolarMassKgPerMol = name => SubstanceCatalog.Get(name).MolarMass,
            HighPressurePa = rating?.Loop.HighPressurePa,
            LowPressurePa = rating?.Loop.LowPressurePa,
            DischargeTemperatureK = rating?.Loop.DischargeTemperatureK,
            ColdestTemperatureK = rating is null ? null : rating.Loop.Points.Select(p => p.TemperatureK).Append(rating.NoLoadTemperatureK ?? double.PositiveInfinity).Append(rating.ThrottleOutletK).Min(),
            VentedProductKgPerS = rating?.Liquid?.RateKgPerS,
            OxygenInFeed = oxygen?.MoleFraction,
            OxygenIsMost = oxygen is { IsMost: true },
        };
    }

    /// <summary>Molar mass, kg/mol, of a substance by its canonical name.</summary>
    public required Func<string, double> MolarMassKgPerMol { get; init; }

    /// <summary>Pressure, Pa absolute, that a space filled with this liquid at its normal boiling point reaches at constant volume at a
    /// temperature in K; null (or a null answer) when it was not computed.</summary>
    public Func<Composition, double, double?>? TrappedPressurePa { get; init; }

    /// <summary>Computed high pressure, Pa absolute; the higher of it and the file's counts. Null before a rating.</summary>
    public double? HighPressurePa { get; init; }

    /// <summary>Computed low pressure, Pa absolute; it takes the place of the file's. Null before a rating.</summary>
    public double? LowPressurePa { get; init; }

    /// <summary>Computed discharge temperature, K; null before a rating, then the compressor's own limit is used.</summary>
    public double? DischargeTemperatureK { get; init; }

    /// <summary>Coldest temperature computed anywhere in the loop, K; null before a rating.</summary>
    public double? ColdestTemperatureK { get; init; }

    /// <summary>Oxygen in the gas fed, mole fraction 0..1 (for nitrogen sold at 99.5 % at most 0.005).</summary>
    public double? OxygenInFeed { get; init; }

    /// <summary>True when <see cref="OxygenInFeed"/> is only the most that there can be: nothing but the purity is known.</summary>
    public bool OxygenIsMost { get; init; }

    /// <summary>Product gas let out into the room while running (flash, boil-off, purge), kg/s; at most all that is liquefied.</summary>
    public double? VentedProductKgPerS { get; init; }

    /// <summary>The machine at the pressures that were computed, where they were.</summary>
    internal MachineDescription Applied(MachineDescription machine) => machine with
    {
        Operation = machine.Operation with
        {
            HighPressurePa = Math.Max(machine.Operation.HighPressurePa, HighPressurePa ?? 0),
            LowPressurePa = LowPressurePa ?? machine.Operation.LowPressurePa,
        },
    };
}
