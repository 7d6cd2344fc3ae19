using Coldwright.Numerics;

namespace Coldwright.Design.Sizing;

/// <summary>Goes through stock, keeping what was done when it is stopped.</summary>
internal static class StockLoop
{
    /// <summary>An option of each; one without an answer is told, a stop keeps those before it.</summary>
    public static List<SizeOption> Each<T>(SizeContext c, IEnumerable<T> stock, Func<T, string> name, Func<T, SizeOption?> size)
    {
        var found = new List<SizeOption>();
        foreach (var one in stock)
        {
            if (c.Cancel.IsCancellationRequested) break;
            c.Observer?.Invoke($"trying {name(one)}");
            try
            {
                if (size(one) is { } option) found.Add(option);
            }
            catch (OperationCanceledException)
            {
                break;
            }
            catch (Exception e) when (e is SolveException or ArgumentException)
            {
                found.Add(new SizeOption { Stock = name(one), Figures = [], Cut = [], Keys = [], WhyNot = e is SolveException s ? s.Report.Advice : e.Message.Split(" (Parameter")[0] });
            }
        }
        if (found.Count == 0) c.Cancel.ThrowIfCancellationRequested();
        return found;
    }
}
