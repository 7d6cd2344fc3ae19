using Coldwright.Design.Blending;
using Coldwright.Design.Charging;
using Coldwright.Design.Sizing;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;
using Coldwright.Report.Blending;
using Coldwright.Report.Charging;
using Coldwright.Report.Sizing;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;

namespace Coldwright.Report.Tests.Design;

/// <summary>Invented answers of the design room with everything that a report can hold: no number here was computed.</summary>
internal static class FakeDesign
{
    private static readonly Composition _mixture = new(["nitrogen", "methane", "isobutane"], [0.3, 0.55, 0.15]);
    private static readonly BlendPoint _point = new()
    {
        Merit = 35.12, CoolingW = 35.12, CollectedLPerH = 0.324, NoLoadK = 100.6, DifferenceJPerMol = 1214.3, FlowMolPerS = 0.08, InletK = 238, PrecoolingW = 51, DischargeK = 396.3, Freezing = ("isobutane", 3.41), TwoLiquids = true,
    };

    public static Finding[] Findings => [FakeRating.Working.Findings[0] with { Part = "charge" }, Cautions.LocalCodes];

    public static BlendChoice Choice(double merit, bool reference, Spoken[]? broken = null) => new()
    {
        Mixture = _mixture, Cubic = _point with { Merit = merit, Broken = broken ?? [] }, Reference = reference ? _point with { Merit = merit - 1, DifferenceJPerMol = 1300 } : null, WorstMerit = merit - 2, Flammable = 0.7, PricePerKg = 16.03,
    };

    public static BlendReport Blend(bool reference, BlendGoal goal = BlendGoal.Cooling, UnitSystem units = UnitSystem.Si) => new()
    {
        Machine = FakeRating.Working.Machine with { Name = "<b>cooler</b>" }, Currency = "EUR", Findings = Findings, Units = units, Notes = ["a note of the folder"],
        Result = new()
        {
            Goal = goal, TemperatureK = 113.7, HighPressurePa = 18.5e5, LowPressurePa = 4.6e5, Gases = ["nitrogen", "methane", "isobutane", "propane"], Best = Choice(35.12, reference), Now = Choice(27.2, reference), Near = [Choice(6.2, reference)],
            Sensitivities = [new("nitrogen", 0.3, -0.27, 0.16, null), new("methane", 0.55, 1.09, -1.18, -11.3), new("isobutane", 0.15, null, 1.91, 5.72), new("propane", 0, -1.23, null, null)],
            Prices = [new("high pressure", "Pa", 18.5e5, 20.35e5, 0.4), new("discharge temperature", "K", 398.15, 408.15, 7.89), new("share of gases that burn", "1", 0.7, 0.8, 2.84), new("one liquid before the throttle", "1", 1, null, 0.5)],
            Rated = (1657, reference ? 350 : 0), Seconds = 12.94, ProcessorSeconds = 8.21, FillingError = 0.01, Warnings = ["argon + ethane: no parameters fitted"],
        },
    };

    public static SizeReport Size(bool fits, UnitSystem units = UnitSystem.Si) => new()
    {
        Machine = FakeRating.Working.Machine with { Name = "<b>cooler</b>" }, Currency = "EUR", Findings = Findings, Units = units,
        Result = new()
        {
            Part = "long-coil", Kind = "coil", Target = new("difference_K", "Load warmer than the mixture leaving", 2.5, "K") { IsDifference = true }, TargetRemark = Spoken.Of($"with the load at {SpokenAmount.Temperature(113.7)}"), Method = "boiling mixture in the coil",
            Options =
            [
                .. fits ? [Option("1/4 in ACR", 3.2, "")] : Array.Empty<SizeOption>(),
                Option("3/16 in ACR", 5.1, Spoken.Of($"the mixture loses {SpokenAmount.PressureDifference(1.2e5)} of {SpokenAmount.Pressure(4.6e5)} in it")),
                new SizeOption { Stock = "1/2 in ACR", Figures = [], Cut = [], Keys = [], WhyNot = "no coil of it goes into this vessel" },
            ],
            Columns = ["length_m", "drop_Pa"], Sources = ["docs/theory/size.md"], Warnings = ["a warning"],
        },
    };

    public static ChargeReport Charge(bool tooMuch, UnitSystem units = UnitSystem.Si)
    {
        double end = tooMuch ? 26e5 : 17.7e5;
        FillingStep Step(string gas, double kg, double from, double until, FillingMeasure by, double liquid) => new()
        {
            Gas = gas, MassKg = kg, Moles = kg / 0.03, FromPa = from, UntilPa = until, LiquidShare = liquid, BottlePa = gas == "isobutane" ? 3.02e5 : null, By = by, ByScaleKg = 1.4e-3, ByGaugeKg = liquid > 0 ? null : 2e-3, ToleranceKg = 2.3e-3,
            TolerancePa = liquid > 0 ? null : 1.3e4, Error = new(0.005, 1.2e4, -0.012),
        };
        return new()
        {
            Machine = FakeRating.Working.Machine with { Name = "<b>cooler</b>" }, Units = units, Notes = ["a note of the folder"],
            Result = new()
            {
                Mixture = _mixture, MassKg = 0.32, Moles = 11.5, Places = [("coil", 6e-5), ("buffer", 0.01)], Evacuation = new(50, 2, "nitrogen", 1.5e5, 1e-9, 1e-9), ColdestK = 111, Model = "reference", Findings = Findings, Warnings = [Spoken.Of($"its mass comes to {SpokenAmount.Pressure(17.8e5)}")],
                Recipe = new([Step("nitrogen", 0.02, 50, 1.2e5, FillingMeasure.Pressure, 0), Step("isobutane", 0.12, 1.2e5, 3.1e5, FillingMeasure.Weight, 0.2), Step("methane", 0.18, 3.1e5, end, FillingMeasure.Pressure, 0)], [3.4, 6.3, 1.7], end, 0),
                Traces = [new("oxygen", 1e-9, 5e-6, null, null), new("water", 2e-8, 3e-6, 190, 1e-9)], LowestLimit = ("loop-relief", 25e5),
                TopUps = [new("a wide leak: all gases alike", 0.04, [0.3, 0.55, 0.15], 15e5, [0.01, 0.02, 0.01]), new("a fine leak: light gases first", 0.04, [0.28, 0.54, 0.18], 14.8e5, [0.012, 0.022, 0.006])],
            },
        };
    }

    private static SizeOption Option(string stock, double length, Spoken whyNot) => new()
    {
        Stock = stock, WhyNot = whyNot, Figures = [new("length_m", "Length", length, "m"), new("drop_Pa", "Mixture loses", 4e3, "Pa") { IsDifference = true }, PartFigure.Word("cap", "Cap", "beyond its formula")],
        Cut = [new(stock, length, "m", 2.9), new("capillary, 0.9 mm bore", 1.7, "m")], Keys = [("tube", stock), ("length", "3.20 m")],
    };
}
