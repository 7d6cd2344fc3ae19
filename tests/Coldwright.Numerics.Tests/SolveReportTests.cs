using Xunit;

namespace Coldwright.Numerics.Tests;

/// <summary>The advice of a report and the words it was made of.</summary>
public class SolveReportTests
{
    [Fact]
    public void WordsAreKeptAndSayWhatTheAdviceSays()
    {
        var report = SolveReport.Telling(SolveStatus.NoSolution, 3, 0.5, $"no root above {1.5:0.00}");
        Assert.Equal("no root above 1.50", report.Advice);
        Assert.Equal(1.5, report.Words!.GetArgument(0));
        var longer = report.Telling($"part: {report.Told}");
        Assert.Equal("part: no root above 1.50", longer.Advice);
        Assert.Equal((SolveStatus.NoSolution, 3, 0.5), (longer.Status, longer.Iterations, longer.Residual));
        Assert.Equal("plain", new SolveReport(SolveStatus.NoSolution, 0, 0, "plain").Told);
    }

    /// <summary>An advice that was replaced as plain text has no words left, and words make no two reports different.</summary>
    [Fact]
    public void WordsNeverOutliveTheirAdvice()
    {
        var report = SolveReport.Telling(SolveStatus.NoSolution, 3, 0.5, $"no root above {1.5:0.00}");
        Assert.Null((report with { Advice = "other" }).Words);
        Assert.Equal(new SolveReport(SolveStatus.NoSolution, 3, 0.5, "no root above 1.50"), report);
    }
}
