using Coldwright.Report.Rating;

namespace Coldwright.Report.Tests;

/// <summary>Writes the pages to the folder named by COLDWRIGHT_RENDER so that a person can look at them; does nothing without it.</summary>
public class RenderForEyes
{
    [Fact]
    public void WritesThePages()
    {
        if (Environment.GetEnvironmentVariable("COLDWRIGHT_RENDER") is not { Length: > 0 } folder) return;
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "state.txt"), States.StateText.Write(JsonTests.State, colour: false));
        foreach (var (report, i) in FakeRating.All.Select((r, i) => (r, i)))
        {
            File.WriteAllText(Path.Combine(folder, $"{i}.html"), RatingPage.Write(report));
            File.WriteAllText(Path.Combine(folder, $"{i}.txt"), RatingText.Write(report, colour: false));
            File.WriteAllText(Path.Combine(folder, $"{i}.json"), RatingJson.Write(report));
        }
    }
}
