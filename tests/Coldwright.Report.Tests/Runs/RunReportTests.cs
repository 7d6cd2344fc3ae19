using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using Coldwright.Report.Runs;
using Coldwright.Runs;
using Coldwright.Runs.Tightness;

namespace Coldwright.Report.Tests.Runs;

/// <summary>An imported run on screen, as JSON and as a page: whatever its names are, and whatever is missing.</summary>
public sealed class RunReportTests
{
    internal const string Yaml = """
        name: "a <run> & more"
        start: 2026-03-14
        room: {pressure: 1000 mbara}
        log: {}
        channels:
          "a channel with a <very> long name & signs": {column: T, at: coil, end: outlet, sensor: thermocouple-K, unit: °C}
          p: {column: p, at: recuperator.high, end: outlet, sensor: pressure-gauge, unit: barg}
          w: {column: w, at: machine, sensor: power-meter, unit: kW}
          g: {column: g, at: flask, sensor: balance, unit: g}
          lost: {column: lost, at: vessel, sensor: Pt100, unit: ohm, class: A}
        readings:
          - {time: "09:10", values: {g: 12.5 g}}
        events:
          - {time: "09:01", what: start, at: compressor, note: "<b>bold</b>"}
          - {time: "09:05", what: weighed, at: flask, mass: 1.2 kg}
        """;

    internal const string Proof = """
        name: high side
        kind: proof-test
        room: {pressure: 1000 mbara, temperature: 20 °C}
        channels:
          p: {at: coil, sensor: pressure-gauge, class: 1, span: 60 bar}
          t: {at: coil, end: surface, sensor: thermometer, uncertainty: 0.2 K}
        readings:
          - {time: 0 min, values: {p: 35.4 barg, t: 20.1 °C}}
          - {time: 10 min, values: {p: 35.4 barg, t: 20.1 °C}}
          - {time: 20 min, values: {p: 35.3 barg, t: 20.1 °C}}
          - {time: 35 min, values: {p: 35.4 barg, t: 20.1 °C}}
        test: {gas: water, proof-pressure: 35 barg, hold: 30 min, allowed-drop: 0.5 bar, temperature-drift: 0.02 K}
        """;

    /// <summary>Without a thermometer of its own.</summary>
    internal static string Leak => """
        name: shut in
        kind: leak-test
        room: {pressure: 1000 mbara, temperature: 20 °C}
        channels:
          p: {at: coil, sensor: pressure-gauge, class: 1, span: 60 bar}
        readings:
          - {time: 0 h, values: {p: 15.4 barg}}
          - {time: 10 h, values: {p: 15.4 barg}}
          - {time: 20 h, values: {p: 15.3 barg}}
        test: {gas: nitrogen, volume: 13 L}
        """;

    internal static RunReport Report(string yaml, string log, UnitSystem units = UnitSystem.Si)
    {
        var folder = RunImporter.ReadTexts(yaml, Encoding.UTF8.GetBytes(log), TestContext.Current.CancellationToken);
        Assert.True(folder.Record is not null, string.Join('\n', folder.Problems));
        return new() { Record = folder.Record, Answer = TightnessAnswer.Of(folder.Record), Findings = [], Units = units };
    }

    internal static string Log() => "time,T,p,w,g,lost\n" + string.Concat(Enumerable.Range(0, 200).Select(i =>
        string.Create(CultureInfo.InvariantCulture, $"2026-03-14T09:{i / 6:00}:{i % 6 * 10:00},{20 - 0.8 * i + 0.11 * (i * 7 % 5):0.00},{15 + 0.01 * i:0.00},{0.8 + 0.001 * (i % 7):0.000},{0.5 * i:0.0},{(i == 3 ? "OL" : "")}\n")));

    public static TheoryData<UnitSystem> Systems => [UnitSystem.Si, UnitSystem.Us];

    [Theory]
    [MemberData(nameof(Systems))]
    public void LinesFitTheScreen(UnitSystem units)
    {
        var text = RunText.Write(Report(Yaml, Log(), units), colour: false);
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 88, l));
        Assert.Contains("weighed flask: 1200.0 ± 1.0 g", text, StringComparison.Ordinal);
        Assert.Contains("no good sample", text, StringComparison.Ordinal);
        Assert.Contains(units == UnitSystem.Us ? "psig" : "barg", text, StringComparison.Ordinal);
        // notes are wrapped
        Assert.Contains("class 2 of IEC 60584-1 is taken", string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Systems))]
    public void PicturesAreWellFormedAndNothingEscapes(UnitSystem units)
    {
        var page = RunPage.Write(Report(Yaml, Log(), units));
        Assert.DoesNotContain("<very>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>bold", page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", page, StringComparison.Ordinal);
        var pictures = 0;
        for (var at = page.IndexOf("<svg", StringComparison.Ordinal); at >= 0; at = page.IndexOf("<svg", at + 1, StringComparison.Ordinal))
        {
            XDocument.Parse(page[at..(page.IndexOf("</svg>", at, StringComparison.Ordinal) + 6)]);
            pictures++;
        }
        // Temperatures, pressures, power, masses; each for page and telephone.
        Assert.Equal(8, pictures);
    }

    [Fact]
    public void JsonHoldsNumbersOnly()
    {
        using var document = JsonDocument.Parse(RunJson.Write(Report(Yaml, Log())));
        var root = document.RootElement;
        Assert.Equal("coldwright/import/1", root.GetProperty("schema").GetString());
        Assert.Equal(5, root.GetProperty("channels").GetArrayLength());
        Assert.Equal(0, root.GetProperty("channels")[4].GetProperty("good").GetInt32());
        Assert.Equal(1.2, root.GetProperty("events")[1].GetProperty("mass_kg").GetDouble());
    }

    [Fact]
    public void AProofTestIsShown()
    {
        var report = Report(Proof, "");
        Assert.Equal(TightnessVerdict.Passed, report.Answer.Verdict);
        Assert.False(report.IsNo);
        Assert.Contains("Passed: held for 35 min", RunText.Write(report, colour: false), StringComparison.Ordinal);
        Assert.Contains("The proof test", RunPage.Write(report), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.437e-7, 2.31e-8, "(1.44 ± 0.23)e-7 mol/s")]
    [InlineData(-3e-9, 2e-8, "(-0.3 ± 2.0)e-8 mol/s")]
    [InlineData(0, 2e-8, "(0.0 ± 2.0)e-8 mol/s")]
    [InlineData(186, 2, "186.0 ± 2.0 mol/s")]
    [InlineData(0, 0, "0 mol/s")]
    public void AValueStopsWhereItsUncertaintyBegins(double value, double spread, string text) =>
        Assert.Equal(text, new RunUnits(Report(Yaml, Log()), typographic: false).WithSpread(value, spread, "mol/s"));

    [Theory]
    [InlineData(12.34, "12.3 s")]
    [InlineData(600, "10 min")]
    [InlineData(18720, "5 h 12 min")]
    [InlineData(7199.9, "120 min")]
    [InlineData(86399, "24 h 0 min")]
    [InlineData(5 * 86400, "5 days")]
    [InlineData(3.2e8, "10 years")]
    public void DurationsAreSaidInOneOrTwoUnits(double s, string text) => Assert.Equal(text, RunUnits.Duration(s));
}
