using Coldwright.Runs.Next;

namespace Coldwright.Report.Next;

/// <summary>What a report about the next change is made from.</summary>
public sealed record NextReport : CoolerReport
{
    /// <summary>The run's name.</summary>
    public required string Run { get; init; }
    /// <summary>The ranking.</summary>
    public required NextResult Result { get; init; }

    /// <summary>Heading.</summary>
    internal string Title => $"{Machine.Name}: what to change after '{Run}'";

    /// <summary>One sentence.</summary>
    internal string Sentence(Readout r)
    {
        var best = Result.Changes[0];
        string named = Result.Named.Contains("none") ? "Nothing was found wrong with it." : $"The run was explained by {string.Join(" and ", Result.Named)}.";
        return Result.Product is { } product
            ? $"{named} As it was found it makes {r.Figures(Result.Now.LitresPerHour, 2)} L/h of {product}; most is gained thus: {best.What}, {r.Figures(best.LitresPerHour, 2)} L/h ({r.Figures(best.Low, 2)} to {r.Figures(best.High, 2)})."
            : $"{named} As it was found it ends at {r.Temperature(Result.Now.EndK)}, too warm for liquid, and no single change below makes any; coldest thus: {best.What}, {r.Temperature(best.EndK)}.";
    }

    /// <summary>Rows: change, litres per hour, interval, end, energy.</summary>
    internal IEnumerable<string[]> Rows(Readout r) => Result.Changes.Prepend(Result.Now).Select(c => new[]
    {
        c.What, r.Figures(c.LitresPerHour, 2), $"{r.Figures(c.Low, 2)} to {r.Figures(c.High, 2)}", r.Temperature(c.EndK), c.EnergyKWhPerL is { } e ? r.Figures(e, 2) : "",
    });
}
