using System.Text.Json;
using System.Text.RegularExpressions;
using Coldwright.Machine.Description;
using Coldwright.Report.Rating;
using Coldwright.Report.Rating.Closed;

namespace Coldwright.Report.Tests;

/// <summary>What a loop closed from its hardware adds to screen, JSON and page.</summary>
public class ClosedReportTests
{
    [Fact]
    public void Json_has_the_published_keys()
    {
        var root = JsonDocument.Parse(RatingJson.Write(FakeRating.Closed)).RootElement;
        var closed = root.GetProperty("closed");
        Keys(closed, "held charge_kg charge_is_answer throttle_length_m throttle_opening charge_error loop_error charged contents liquid_share throttle_choked precooler_evaporating_K precooler_run_share recuperator_inlet_K buffer coil_difference_K start_up");
        Keys(closed.GetProperty("contents")[0], "place kg liquid_share liquid_kg");
        Keys(closed.GetProperty("buffer"), "pressure_Pa opening bypass_share");
        Keys(closed.GetProperty("start_up"), "standstill_pressure_Pa standstill_liquid_share read_standstill_pressure_Pa motor highest_standstill_pressure_Pa first_high_pressure_Pa first_low_pressure_Pa first_discharge_temperature_K allowed_high_pressure_Pa buffer_needed_m3 first_charge_kg sentence");
        Assert.Equal("neither", closed.GetProperty("held").GetString());
        Assert.Equal(0.27, closed.GetProperty("charged").GetProperty("nitrogen").GetDouble());
        Assert.Equal(0.32, root.GetProperty("loop").GetProperty("composition").GetProperty("nitrogen").GetDouble());
        var sensitivity = root.GetProperty("sensitivity");
        Keys(sensitivity.GetProperty("figures")[0], "id value deviation unit");
        Keys(sensitivity.GetProperty("inputs")[0], "id name unit value step doubt slopes");
        Assert.All(sensitivity.GetProperty("inputs").EnumerateArray(), i => Assert.Equal(
            sensitivity.GetProperty("figures").EnumerateArray().Select(f => f.GetProperty("id").GetString()), i.GetProperty("slopes").EnumerateObject().Select(s => s.Name)));
    }

    [Fact]
    public void Json_says_null_for_what_there_is_not()
    {
        var root = JsonDocument.Parse(RatingJson.Write(FakeRating.ClosedBlock)).RootElement;
        Assert.Equal(JsonValueKind.Null, root.GetProperty("sensitivity").ValueKind);
        Assert.Equal(JsonValueKind.Null, root.GetProperty("closed").GetProperty("buffer").ValueKind);
        Assert.Equal(JsonValueKind.Null, root.GetProperty("closed").GetProperty("start_up").GetProperty("first_high_pressure_Pa").ValueKind);
        Assert.Equal(1.83, root.GetProperty("closed").GetProperty("throttle_length_m").GetDouble());
        var friction = JsonDocument.Parse(RatingJson.Write(FakeRating.Closed)).RootElement.GetProperty("sensitivity").GetProperty("inputs").EnumerateArray().Last();
        Assert.Equal(JsonValueKind.Null, friction.GetProperty("slopes").GetProperty("power_W").ValueKind);
    }

    [Fact]
    public void The_screen_answers_in_the_order_a_builder_asks()
    {
        var text = RatingText.Write(FakeRating.Closed, colour: false);
        string[] order = ["No-load temperature", "Nitrogen collected", "Electrical power", "High pressure", "Low pressure", "At rest", "Flow", "Charged", "Circulates", "In the loop", "Buffer", "Start", "What matters most", "What is in doubt", "all doubts together"];
        var places = order.Select(w => text.IndexOf(w, StringComparison.Ordinal)).ToArray();
        Assert.All(places, p => Assert.True(p >= 0));
        Assert.Equal(places.Order(), places);
        foreach (var words in new[] { "97.3 K ± 7.5 K", "0.193 L/h ± 0.10 L/h", "1.8 bar above the file's gauge (16.0 bar abs)", "as the file's gauge: 19.0 bar abs", "recuperator, low side 128 g", "12.0 % open", "a step more of", "and 1 that is hardly felt", "Local codes" })
            Assert.Contains(words, Regex.Replace(text, @"\s+", " "), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_held_and_what_followed_is_said()
    {
        string Held(RatingReport report) => new ClosedWords(report, report.Result.Main.Closed!, report.Readout(typographic: false)).Held;
        Assert.StartsWith("Nothing is held", Held(FakeRating.Closed), StringComparison.Ordinal);
        Assert.Contains("Both pressures are held", Held(FakeRating.ClosedBlock), StringComparison.Ordinal);
        Assert.Contains("a charge of 320 g (11.3 oz) and a capillary of 1.83 m", Held(FakeRating.ClosedBlock), StringComparison.Ordinal);
        Assert.Contains("a valve open 1.12 times", Held(FakeRating.ClosedTooWarm), StringComparison.Ordinal);
        Assert.Contains("held", RatingText.Write(FakeRating.ClosedBlock, colour: false), StringComparison.Ordinal);
    }

    [Fact]
    public void The_start_is_told_in_the_readers_units()
    {
        string Start(RatingReport report) => new ClosedWords(report, report.Result.Main.Closed!, report.Readout(typographic: false)).Start;
        Assert.Equal("At rest and warm both sides stand at 17.8 bar absolute; whether the motor runs up against that is doubtful. While all is warm the high side runs at 27.9 bar absolute, above the 25 bar absolute allowed: a buffer of 12.1 L in place of the 10 L there are would hold it, or only 241 g let in at first and the rest once it is cold.", Start(FakeRating.Closed));
        Assert.Contains("stand at 243.5 psig", Start(FakeRating.ClosedTooWarm), StringComparison.Ordinal);
        Assert.EndsWith("the motor does not run up against that. The first minutes were not found.", Start(FakeRating.ClosedBlock), StringComparison.Ordinal);
    }

    [Fact]
    public void Ten_inputs_ranked_by_what_their_step_does()
    {
        var ranking = new SensitivityRanking(FakeClosed.Loop.Sensitivity!, makesLiquid: true);
        Assert.Equal("collected_L_h", ranking.Figure.Id);
        Assert.Equal(SensitivityRanking.Most, ranking.Choices.Count);
        Assert.Equal(["recuperator.low-tube", "recuperator.length", "compressor.displacement"], ranking.Choices.Take(3).Select(i => i.Id));
        Assert.All(ranking.Doubts, d => Assert.True(d.IsDoubt));
        Assert.DoesNotContain(ranking.Felt, d => d.Id == "doubt.low-friction");
        Assert.Equal("no_load_temperature_K", new SensitivityRanking(FakeClosed.WithoutProduct.Sensitivity!, makesLiquid: false).Figure.Id);
    }

    [Theory]
    [InlineData(UnitSystem.Si, "compressor.displacement", "10.8 cm³", "+1.1 cm³")]
    [InlineData(UnitSystem.Si, "room.temperature", "295.0 K", "+5.0 K")]
    [InlineData(UnitSystem.Us, "room.temperature", "71.3 °F", "+9.0 °F")]
    [InlineData(UnitSystem.Us, "aftercooler.approach", "10.8 °F", "+3.6 °F")]
    [InlineData(UnitSystem.Si, "buffer.opening-pressure", "20.0 bar abs", "+1.0 bar")]
    [InlineData(UnitSystem.Us, "buffer.opening-pressure", "275.4 psig", "+15 psi")]
    [InlineData(UnitSystem.Si, "charge.mass", "320 g", "+16 g")]
    [InlineData(UnitSystem.Si, "doubt.leak", "", "±13.0 %")]
    public void Inputs_and_steps_in_the_readers_units(UnitSystem units, string id, string value, string step)
    {
        var words = new SensitivityWords(new Readout(units, 101325, typographic: false), 101325);
        var input = FakeClosed.Loop.Sensitivity!.Inputs.Single(i => i.Id == id);
        Assert.Equal((value, step), (words.Value(input), words.Step(input)));
    }

    [Fact]
    public void A_band_wider_than_its_figure_is_said_aloud()
    {
        var text = RatingText.Write(FakeRating.Closed, colour: false);
        Assert.Contains("wider than the 0.0931 L/h", text, StringComparison.Ordinal);
        Assert.DoesNotContain("wider than", RatingText.Write(FakeRating.Working, colour: false), StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_shows_charge_mixture_start_and_what_matters()
    {
        var page = RatingPage.Write(FakeRating.Closed);
        foreach (var heading in new[] { "What hardware and charge make of it", "Where the charge is", "What was let in, and what circulates", "At rest and at the start", "What matters most", "What is in doubt" }) Assert.Contains($"<h2>{heading}</h2>", page, StringComparison.Ordinal);
        Assert.Contains("Buffer that would hold the first minutes", page, StringComparison.Ordinal);
        Assert.Contains("charge of each substance, the worst", page, StringComparison.Ordinal);
        Assert.DoesNotContain("What matters most", RatingPage.Write(FakeRating.ClosedBlock), StringComparison.Ordinal);
    }

    [Fact]
    public void A_warning_that_the_second_model_repeats_with_other_digits_comes_once()
    {
        var result = FakeRating.Closed.Result;
        var report = FakeRating.Closed with
        {
            Result = result with
            {
                Main = result.Main with { Warnings = ["the evaporator is at 47.3, too cold"] },
                SecondOpinion = result.SecondOpinion! with { Warnings = ["the evaporator is at 47.2, too cold", "something of its own"] },
                Warnings = ["the evaporator is at 47.3, too cold", "the evaporator is at 47.2, too cold", "something of its own"],
            },
        };
        Assert.Equal(["the evaporator is at 47.3, too cold", "something of its own"], report.Warnings);
    }

    private static void Keys(JsonElement element, string expected) => Assert.Equal(expected.Split(' ').Order(StringComparer.Ordinal), element.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
}
