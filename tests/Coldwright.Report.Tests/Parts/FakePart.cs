using Coldwright.Machine.Compression;
using Coldwright.Report.Parts;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Report.Tests.Parts;

/// <summary>An invented part with everything that a report can hold: no number here was computed.</summary>
internal static class FakePart
{
    private static readonly PictureAxis Length = new("from the warm end (left) to the cold end", "m");

    public static PartReport Si { get; } = new()
    {
        Machine = FakeRating.Working.Machine,
        Findings = [FakeRating.Working.Findings[0] with { Part = "long-coil" }, Cautions.LocalCodes],
        Rating = new()
        {
            Part = "long-coil",
            Kind = "recuperator",
            Method = "local heat transfer along a tube in a tube",
            FluidModel = "reference",
            Point = new() { Text = "the operating point of the rating with the pressures given", LoadTemperatureK = 108.4, HighPressurePa = 19e5, LowPressurePa = 2.5e5, MolarFlow = 0.0821, MassFlow = 0.00238 },
            Verdict = "It exchanges less heat than it should; the streams come closest inside.",
            Sections =
            [
                new("inlet", "What arrives", new PartFigure("mass_flow_kg_s", "Flow by mass", 0.00238, "kg/s"), new("high_temperature_K", "High-pressure stream in", 238.15, "K", null, "vapour + liquid")),
                new("figures", "The exchanger at work",
                [
                    PartFigure.PlusMinus("duty_W", "Heat exchanged", 1024.3, "W", 23.4),
                    PartFigure.PlusMinus("drop_Pa", "Pressure lost, low side", 1034, "Pa", 350) with { IsDifference = true },
                    new("pinch_K", "Streams closest", 11.1, "K", null, "a note that is much too long to stand beside its figure on one line of a terminal and so goes below") { IsDifference = true },
                    new("level_Pa", "Pressure", 4.61e5, "Pa", new(4e5, 5e5)),
                    PartFigure.Word("choked", "Choked", "no"),
                    new("share", "Oil that passes, of the gas by mass", 0.0006, "1", new(8e-5, 2.7e-3)),
                    new("endless_s", "Closes in", double.PositiveInfinity, "s", new(3600, double.PositiveInfinity)),
                    new("size_m3", "Displacement", 10.6e-6, "m3"), new("heat_J", "Heat in the wall", 382e3, "J"), new("nothing_W", "Nothing", 0, "W"),
                ], ["a sentence about these figures that is long enough to be broken over two lines of a terminal of eighty-eight columns"]),
            ],
            Limits = [new("discharge temperature", 391.4, 383.15, "K", new CompressorLimits().Judge(391.4, 391.4, 391.4, 1e5, 1e6, 500, null, null)[0].Reason), new("pressure", 19e5, 62e5, "Pa", "stamped on it")],
            Balances = [("energy", 2e-13)],
            Pictures =
            [
                new LinePicture("temperatures", "Temperatures along it", "How to read this picture in a sentence that is long enough to be called a caption by anybody who looks.")
                {
                    X = Length, Y = new("temperature", "K"),
                    Lines = [Line("high", PictureRole.HighSide, 240, -7), Line("low", PictureRole.LowSide, 220, -7) with { RelativeBand = 0.02 }, new("limit", "allowed", PictureRole.Leak, [(0, 250), (16, 250)], true)],
                    Marks = [new("pinch", PictureRole.Plain, 8, 174) { Shown = (11.1, new("streams apart", "K", true)) }], Uprights = [new("vapour appears here", PictureRole.Plain, 5)],
                    Above = new("high", PictureRole.HighSide, [.. Enumerable.Range(0, 17).Select(i => ((double)i, i < 9 ? "vapour+liquid" : "liquid+second_liquid"))]),
                    Below = new("low", PictureRole.LowSide, [.. Enumerable.Range(0, 17).Select(i => ((double)i, "vapour"))]),
                },
                new LinePicture("pressure", "Pressure lost", "Another caption that says how to read the picture above it, and it is also long enough.")
                {
                    X = Length, Y = new("pressure lost", "Pa", true), FromZero = true, Lines = [Line("high", PictureRole.HighSide, 0, 120)],
                },
                new BarPicture("paths", "By path", "Bars from the longest to the shortest, each with its own deviation where it is known.")
                {
                    Axis = new("heat flow", "W"), Bars = [new("insulation", 19.02, 2.83, PictureRole.Leak), new("wire", 0.163, null, PictureRole.Leak)],
                },
            ],
            Sources = ["docs/theory/recuperator.md"],
            Warnings = ["no heat from the room was counted"],
        },
    };

    public static PartReport Us { get; } = Si with { Units = UnitSystem.Us };

    private static PictureLine Line(string id, PictureRole role, double from, double slope) => new(id, $"{id} stream", role, [.. Enumerable.Range(0, 17).Select(i => ((double)i, from + slope * i))]);
}
