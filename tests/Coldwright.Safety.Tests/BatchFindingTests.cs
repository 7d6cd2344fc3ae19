using Coldwright.Machine.Files;
using Coldwright.Simulation.Batch;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Safety.Tests;

/// <summary>Findings that only a batch can make: each with a folder that triggers it; the workshop as it is triggers none.</summary>
public sealed class BatchFindingTests
{
    /// <summary>Finding, file, text and what takes its place.</summary>
    public static TheoryData<string, string, string, string> Breakages => new()
    {
        { "oxygen-in-flask", "shop.yaml", "purity: 99.9 %}", "purity: 94 %, oxygen: 6 %}" },
        { "oxygen-compressed", "machine.yaml", "    gas: nitrogen\n    pressure: 17 barg\n", "    gas: oxygen\n    pressure: 17 barg\n    supply-pressure: 1 barg\n    compressor-efficiency: 0.5\n" },
    };

    [Theory]
    [MemberData(nameof(Breakages))]
    public void A_breakage_is_found_and_the_workshop_is_without_it(string id, string file, string text, string instead)
    {
        Assert.Contains(Ids(file, text, instead), i => i == id);
        Assert.DoesNotContain(Ids("", "", ""), i => i == id);
    }

    private static IEnumerable<string> Ids(string file, string text, string instead)
    {
        string example = Path.Combine(CompletenessTests.Root(), "examples", "workshop"), folder = Directory.CreateTempSubdirectory("coldwright-batch").FullName;
        try
        {
            foreach (string name in new[] { "machine.yaml", "shop.yaml" })
            {
                string content = File.ReadAllText(Path.Combine(example, name));
                if (name == file) Assert.Contains(text, content, StringComparison.Ordinal);
                File.WriteAllText(Path.Combine(folder, name), name == file ? content.Replace(text, instead, StringComparison.Ordinal) : content);
            }
            var read = MachineFolderReader.Read(folder);
            Assert.True(read.IsGood, string.Join("; ", read.Problems));
            var result = BatchSimulation.Run(read.Machine!, read.Layout!, read.Shop, new RatingOptions { Model = RatingModel.Cubic }, new BatchOptions { Plan = new BatchPlan { FeedPressurePa = 18e5, FillShare = 0.4, OpeningPressurePa = 8e5 } }, null, TestContext.Current.CancellationToken);
            return [.. BatchFindings.Of(read.Machine!, read.Shop, result).Select(f => f.Id)];
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }
}
