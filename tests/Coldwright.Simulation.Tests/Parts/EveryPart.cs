using Xunit;
using System.Text.RegularExpressions;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.Rating;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Tests.Parts;

/// <summary>What holds for every part that can be rated alone.</summary>
public partial class EveryPart
{
    public static TheoryData<string> Names => [.. PartRater.Rateable(RatedParts.Workshop)];

    [GeneratedRegex("^[a-z][a-z0-9]*(_[A-Za-z0-9]+)*$")]
    private static partial Regex Id();

    [Fact]
    public void AllKindsWithAModelAreThere() => Assert.Equal(["compressor", "precooler", "recuperator", "throttle", "coil", "vessel", "cold-box", "buffer"], PartRater.Rateable(RatedParts.Workshop));

    [Theory]
    [MemberData(nameof(Names))]
    public void BalancesClose(string part)
    {
        var rating = RatedParts.Of(part);
        // the capillary's is the agreement of its grid with a flash at the exit, the recuperator's second that of its grid
        Assert.All(rating.Balances, b => Assert.True(Math.Abs(b.Error) < (b.Name.Contains("exit", StringComparison.Ordinal) || b.Name.Contains("grid", StringComparison.Ordinal) ? 5e-3 : b.Name.Contains("expansion", StringComparison.Ordinal) ? 1e-3 : 1e-8), $"{b.Name}: {b.Error}"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void FiguresHaveNamesUnitsAndBandsAroundThem(string part)
    {
        var rating = RatedParts.Of(part);
        Assert.Equal(["inlet", "figures"], rating.Sections.Take(2).Select(s => s.Id));
        Assert.Equal(rating.Sections.Count, rating.Sections.Select(s => s.Id).Distinct().Count());
        foreach (var section in rating.Sections)
        {
            Assert.Equal(section.Figures.Count, section.Figures.Select(f => f.Id).Distinct().Count());
            foreach (var f in section.Figures)
            {
                Assert.Matches(Id(), f.Id);
                Assert.True(f.Value is null ? f.Text != "" : f.Unit != "" && !double.IsNaN(f.Value.Value), f.Id);
                if (f.Band is { } band) Assert.True(band.Low <= f.Value && f.Value <= band.High, $"{f.Id}: {f.Value} outside {band}");
            }
        }
        Assert.NotEmpty(rating.Sources);
        Assert.NotEqual("", rating.Verdict);
        Assert.Contains("operating point of the rating with the pressures", rating.Point.Text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void PicturesCanBeDrawn(string part)
    {
        var rating = RatedParts.Of(part);
        Assert.NotEmpty(rating.Pictures);
        Assert.Equal(rating.Pictures.Count, rating.Pictures.Select(p => p.Id).Distinct().Count());
        foreach (var picture in rating.Pictures)
        {
            Assert.True(picture.Reading.Length > 60, picture.Id);
            if (picture is not LinePicture lines) continue;
            Assert.NotEmpty(lines.Lines);
            foreach (var line in lines.Lines)
            {
                Assert.True(line.Points.Count > 1, $"{picture.Id}/{line.Id}");
                Assert.All(line.Points, p => Assert.True(double.IsFinite(p.X) && double.IsFinite(p.Y)));
                Assert.All(line.Points.Zip(line.Points.Skip(1)), p => Assert.True(p.First.X <= p.Second.X, $"{picture.Id}/{line.Id} runs back at {p.Second.X}"));
            }
            double low = lines.Lines.Min(l => l.Points[0].X), high = lines.Lines.Max(l => l.Points[^1].X);
            Assert.All(lines.Uprights, u => Assert.InRange(u.X, low, high));
        }
    }

    [Theory]
    [InlineData("recuperator", "high", "into the recuperator")]
    [InlineData("recuperator", "low", "coil outlet")]
    [InlineData("throttle", "inlet", "throttle inlet")]
    [InlineData("compressor", "suction", "compressor suction")]
    [InlineData("coil", "mixture", "throttle outlet")]
    [InlineData("precooler", "mixture", "before the precooler")]
    public void WhatArrivesIsTheLoopsOwnState(string part, string id, string place)
    {
        var rating = RatedParts.Of(part);
        var loop = Coolers.Rate(RatedParts.Workshop).Main.Loop;
        var point = loop.Points.Single(p => p.Name == place);
        Assert.Equal(point.TemperatureK, rating.Figure("inlet", $"{id}_temperature_K"), 1e-9);
        Assert.Equal(point.PressurePa, rating.Figure("inlet", $"{id}_pressure_Pa"), 1e-6);
        Assert.Equal(loop.MolarFlow, rating.Point.MolarFlow, 1e-15);
    }

    [Fact]
    public void AllTogetherAreTheSameAsEachAlone()
    {
        var machine = RatedParts.Workshop.With<ThrottlePart>(t => t with { Capillary = null });
        Assert.True(LoopLayout.TryFind(machine, out var layout, out _));
        var all = PartRater.RateAll(machine, layout, Coolers.Folder("workshop").Shop!, new RatingOptions { Model = RatingModel.Reference }, null, TestContext.Current.CancellationToken);
        Assert.Contains("capillary, or valve", Assert.Single(all.Left, l => l.Part == "throttle").Why, StringComparison.Ordinal);
        Assert.Equal(Names.Count - 1, all.Ratings.Count);
        foreach (var rating in all.Ratings) Assert.Equal(RatedParts.Of(rating.Part).Verdict, rating.Verdict);
    }
}
