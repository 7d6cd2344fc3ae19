using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Quantities;
using Coldwright.Report.Rating;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Tests;

/// <summary>Invented results with the shape of real ones: no number here was computed from a fluid.</summary>
internal static class FakeRating
{
    private const double LoadK = 108.4;

    public static RatingReport Working { get; } = new()
    {
        Machine = Machine,
        Result = new()
        {
            Main = Model("reference", 1),
            SecondOpinion = Model("cubic", 1.07),
            Warnings = ["steady operation only: the charge's liquid hold-up is not taken into account, so the circulating mixture is taken as charged"],
        },
        Findings = Findings(),
    };

    /// <summary>Leaks too much to condense anything, one model, a limit broken.</summary>
    public static RatingReport TooWarm { get; } = Working with
    {
        Result = new()
        {
            Main = Model("reference", 0.45) with
            {
                NoLoadTemperatureK = 148.56,
                EnergyKWhPerL = null,
                CostPerL = null,
                Liquid = Working.Result.Main.Liquid! with { RateKgPerS = 0, RateLPerH = 0, CollectedLPerH = 0, FlashFraction = 0 },
                LimitedBy = new(LimitationKind.Leak, Spoken.Of($"It stops at {SpokenAmount.Temperature(148.6)}, {SpokenAmount.Difference(40.2)} above where nitrogen condenses at {SpokenAmount.Pressure(16e5, "0")}: the heat leak, 21 W, eats all the cooling. Half the leak would reach {SpokenAmount.Temperature(112, "0")}.")),
                Limits = [new("discharge temperature", "compressor", 391.4, 383.15, "K", true)],
            },
            Warnings = [],
        },
    };

    /// <summary>A block without product: no liquid, no second opinion, no lowest temperature.</summary>
    public static RatingReport Block { get; } = Working with
    {
        Units = UnitSystem.Us,
        Result = new()
        {
            Main = Model("cubic", 1) with { NoLoadTemperatureK = null, Liquid = null, EnergyKWhPerL = null, CostPerL = null, Warnings = [], Limits = [], OperatingTemperatureK = 120 },
            Warnings = [],
        },
        Findings = [Cautions.LocalCodes],
    };

    /// <summary>More to say than fits on a screen.</summary>
    public static RatingReport Wordy { get; } = Working with
    {
        Machine = Machine with { Name = "The very long name of a cooler that somebody typed without thinking of the width of any screen at all" },
        Result = Working.Result with { Warnings = [.. Enumerable.Range(1, 30).Select(i => $"warning {i}: pair parameters of argon with isobutane are estimated by a published scheme, and this sentence goes on and on")] },
        Findings = [.. Enumerable.Range(1, 12).Select(i => new Finding($"f{i}", Grade.Stop, $"part-{i}", 1e7, 5e6, "Pa", "a rule that is long enough to fill a line of the screen", "somewhere, 2020", "it bursts", "do something about it that needs quite a few words to be described and even more to be understood")), Cautions.LocalCodes],
    };

    /// <summary>A loop closed from hardware and charge, with sensitivities.</summary>
    public static RatingReport Closed { get; } = Working with
    {
        Result = Working.Result with { Main = Working.Result.Main with { Closed = FakeClosed.Loop }, SecondOpinion = Working.Result.SecondOpinion! with { Closed = FakeClosed.Loop with { Sensitivity = null } } },
    };

    /// <summary>A pressure held, charge and throttle for answers, no product, no buffer, no sensitivities.</summary>
    public static RatingReport ClosedBlock { get; } = Block with { Result = Block.Result with { Main = Block.Main with { Closed = FakeClosed.Held } } };

    /// <summary>The same too warm for a product, with sensitivities of what there is.</summary>
    public static RatingReport ClosedTooWarm { get; } = TooWarm with { Units = UnitSystem.Us, Result = TooWarm.Result with { Main = TooWarm.Result.Main with { Closed = FakeClosed.WithoutProduct } } };

    public static IEnumerable<RatingReport> All => [Working, TooWarm, Block, Wordy, Working with { Units = UnitSystem.Us }, Closed, ClosedBlock, ClosedTooWarm];

    private static MachineDescription Machine => new()
    {
        Name = "School workshop cooler",
        Room = new() { TemperatureK = 295, PressurePa = 101325, FloorAreaM2 = 30, HeightM = 2.7, AirChangesPerHour = 1 },
        Charge = new() { Mixture = Mixture, MassKg = 0.35 },
        Operation = new() { HighPressurePa = 19e5, LowPressurePa = 2.5e5 },
        Parts =
        [
            new VesselPart { Name = "vessel", Tube = new("1-5/8 in ACR", 0.0413, 0.0015), LengthM = 0.3 },
            new FeedPart { Name = "feed", Gas = "nitrogen", PressurePa = 16e5 },
        ],
        Lines = [],
    };

    internal static Composition Mixture => new(["nitrogen", "methane", "ethane", "propane", "isobutane"], [0.32, 0.27, 0.18, 0.12, 0.11]);

    private static Finding[] Findings() =>
    [
        new("trapped-liquid", Grade.Stop, "vessel", 2929e5, 62e5, "Pa", "every space that valves can close on cold liquid needs a relief device of its own",
            "computed from Span et al. 2000 (nitrogen); relief devices for cryogenic vessels: ISO 21013-3", "shut-in liquid warms to room temperature and bursts any tube", "put a relief valve or burst disc between the valves around vessel"),
        new("flammable-charge", Grade.Serious, "charge", 0.35, 0.21, "kg", "the charge of a flammable mixture stays below the amount that the room can dilute",
            "IEC 60335-2-40 Annex GG", "a leak makes an explosive cloud", "use it in a larger room, add ventilation, or charge less"),
        new("cold-surface", Grade.Caution, "capillary", null, null, "", "nothing colder than the room within reach", "common practice", "skin freezes to it", "cover it"),
        Cautions.LocalCodes,
    ];

    private static ModelRating Model(string name, double strength) => new()
    {
        Model = name,
        NoLoadTemperatureK = strength > 1 ? 96.74 : 97.26,
        ThrottleOutletK = LoadK - 6.2,
        OperatingTemperatureK = LoadK,
        CoolingCurve = [.. Enumerable.Range(0, 24).Select(i => Point(90 + 5 * i, strength))],
        Recuperator = [.. Enumerable.Range(0, 41).Select(i => Station(i / 40.0))],
        IsothermalEnthalpyDifference = [.. Enumerable.Range(0, 60).Select(i => (88 + 4.0 * i, Difference(88 + 4.0 * i, strength)))],
        Loop = Loop,
        Power = new(842.3, 318.4, 0, 55),
        HeatLeakW = new Dictionary<string, double> { ["insulation"] = 6.66, ["tubes through the wall"] = 2.9, ["wires"] = 0.35 },
        Liquid = new()
        {
            Substance = "nitrogen", CondensingPressurePa = 16e5, CondensingTemperatureK = LoadK, LiquidTemperatureK = LoadK, RateKgPerS = 7.15e-5 * strength, RateLPerH = 0.429 * strength,
            CollectedLPerH = 0.193 * strength, FlashFraction = 0.395, HeatPerKgJ = 171.3e3,
        },
        EnergyKWhPerL = 6.30 / strength,
        CostPerL = new("EUR", 1.953, 0.417, 0.031),
        CarnotFraction = 0.0271,
        Exergy = new(1215.7, 41.2, 64.8, [("compressor", 472.1), ("aftercooler", 118.3), ("precooler", 231.6), ("recuperator", 173.2), ("throttle", 92.4), ("coil", 21.7), ("heat leak", 17.9), ("flash vapour", 49.2), ("motor", 15.4), ("mixing of feed", 0.3)]),
        Balance = new(0, 3.1e-12, 4.4e-9),
        Limits = [new("discharge temperature", "compressor", 371.9, 383.15, "K", false), new("pressure", "vessel", 16e5, 62e5, "Pa", false), new("pinch difference", "recuperator", 1.62, 0.1, "K", false)],
        LimitedBy = new(LimitationKind.Works, Spoken.Of($"It makes 0.19 L/h of nitrogen at {SpokenAmount.Temperature(108.4)}; the largest lever is the recuperator: its streams come within {SpokenAmount.Difference(1.6)} at {SpokenAmount.Temperature(187, "0")}, where the high-pressure stream begins to condense."), 187, "vapour / vapour+liquid"),
        Warnings = ["nitrogen with isobutane: pair parameters estimated by a published scheme"],
    };

    private static CoolingPoint Point(double t, double strength) => new(t, strength * (46 * (1 - Math.Exp(-(t - 90) / 28))), 0.059 * (295 - t) * (strength < 0.9 ? 2.1 : 0.9), 4.1, 1.6, 187);

    private static double Difference(double t, double strength) => strength * (520 + 900 * Math.Exp(-(t - 88) / 24) + 1500 * Math.Exp(-Math.Pow((t - 262) / 45, 2)) - 130 * Math.Exp(-Math.Pow((t - 165) / 30, 2)));

    private static RecuperatorStation Station(double share)
    {
        var high = 250 - 145 * Math.Pow(share, 0.8) + 8 * Math.Sin(Math.PI * share);
        var gap = 1.6 + 9 * Math.Pow(share - 0.42, 2) * 4;
        return new(share, high, high - gap, share < 0.41 ? "vapour" : share < 0.93 ? "vapour+liquid" : "liquid", share < 0.24 ? "vapour" : share < 0.9 ? "vapour+liquid" : "vapour+liquid+second_liquid");
    }

    private static LoopState Loop => new()
    {
        HighPressurePa = 19e5, LowPressurePa = 2.5e5, MolarFlow = 0.0821, MassFlow = 0.00238, DischargeTemperatureK = 371.9, PrecoolingW = 214.7, RecuperatorDutyW = 812.5, Composition = Mixture,
        Points =
        [
            new("suction", "recuperator", 246.3, 2.5e5, -2212.4, -3.41, 1, "vapour"), new("discharge", "compressor", 371.9, 19.2e5, 3421.7, -1.92, 1, "vapour"),
            new("after the aftercooler", "aftercooler", 300, 19e5, -412.3, -14.2, 1, "vapour"), new("after the precooler", "precooler", 250, 19e5, -3121.9, -24.1, 0.93, "vapour+liquid"),
            new("throttle inlet", "recuperator", 105.1, 19e5, -13021.4, -85.2, 0, "liquid"), new("throttle outlet", "throttle", 102.2, 2.5e5, -13021.4, -84.1, 0.08, "vapour+liquid+second_liquid"),
            new("after the coil", "coil", 106.4, 2.5e5, -12704.8, -81.3, 0.12, "vapour+liquid+second_liquid"),
        ],
    };
}
