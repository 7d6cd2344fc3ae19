using System.Text.Json;
using Coldwright.Design.Blending;
using Coldwright.Report.Batch;
using Coldwright.Report.Blending;
using Coldwright.Report.Charging;
using Coldwright.Report.Cooldown;
using Coldwright.Report.Explain;
using Coldwright.Report.Next;
using Coldwright.Report.Parts;
using Coldwright.Report.Rating;
using Coldwright.Report.Runs;
using Coldwright.Report.Safety;
using Coldwright.Report.Sizing;
using Coldwright.Report.Tests.Batch;
using Coldwright.Report.Tests.Design;
using Coldwright.Report.Tests.Parts;
using Coldwright.Report.Tests.Runs;
using Coldwright.Runs.Explain;
using Coldwright.Runs.Next;

namespace Coldwright.Report.Tests;

/// <summary>Every answer about a cooler opens alike for a program: schema, machine, findings; and it has its warnings.</summary>
public sealed class JsonHeadTests
{
    private static Dictionary<string, Func<string>> Written { get; } = new()
    {
        ["rate"] = () => RatingJson.Write(FakeRating.Closed),
        ["rate-part"] = () => PartJson.Write(FakePart.Si),
        ["cooldown"] = () => CooldownJson.Write(CooldownReportTests.Report()),
        ["batch"] = () => BatchJson.Write(FakeBatch.Full),
        ["blend"] = () => BlendJson.Write(FakeDesign.Blend(true, BlendGoal.Cooling)),
        ["charge"] = () => ChargeJson.Write(FakeDesign.Charge(true)),
        ["size"] = () => SizeJson.Write(FakeDesign.Size(true)),
        ["safety"] = () => FindingsJson.Write(new SafetyReport { Machine = FakeRating.Working.Machine, Review = new(FakeRating.Working.Findings, []) }),
        ["import"] = () => RunJson.Write(RunReportTests.Report(RunReportTests.Yaml, RunReportTests.Log())),
        ["explain"] = () => ExplainJson.Write(new ExplainReport { Machine = FakeRating.Working.Machine, Findings = FakeRating.Working.Findings, Run = "a day", Result = Explained }),
        ["next"] = () => NextJson.Write(new NextReport { Machine = FakeRating.Working.Machine, Findings = FakeRating.Working.Findings, Run = "a day", Result = new(Change("now"), [Change("longer")], "nitrogen", ["leak"], []) }),
    };

    public static TheoryData<string> Commands => [.. Written.Keys];

    [Theory]
    [MemberData(nameof(Commands))]
    public void OpensAlike(string command)
    {
        using var document = JsonDocument.Parse(Written[command]());
        Assert.Equal(["schema", "machine", "findings"], document.RootElement.EnumerateObject().Take(3).Select(p => p.Name));
        Assert.Equal($"coldwright/{command}/1", document.RootElement.GetProperty("schema").GetString());
        Assert.Equal(JsonValueKind.Array, document.RootElement.GetProperty("findings").ValueKind);
        Assert.Equal(JsonValueKind.Array, document.RootElement.GetProperty("warnings").ValueKind);
        // The cooler of this run cannot be read: nothing is invented for it.
        if (command == "import") Assert.Equal(JsonValueKind.Null, document.RootElement.GetProperty("machine").ValueKind);
        else Assert.NotEqual("", document.RootElement.GetProperty("machine").GetString());
    }

    private static NextChange Change(string id) => new(id, "a change", 0.2, 0.1, 0.3, 104, 3.5);

    // What is drawn of it and not written stays out.
    private static Explanation Explained => new()
    {
        Phases = [new("pull-down", 0, 3600)], Causes = [new("leak", "more heat leaks in", "", 2.5, "", 2, 3, 1, true, 0.9, 1)], Indistinguishable = [["leak", "coil"]], Tests = [new("test", "wait", 0.1)],
        Watts = [new("leak", "heat leak", 40, 1)], PullDownHeat = [], Grams = [], Figures = [], Misfit = 1, Correlations = [], Measured = null!, Described = null!, Fitted = null!, End = (149, 108), Paragraph = "It leaks.", Said = ["a note"],
    };
}
