using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Numerics.LinearAlgebra;
using Coldwright.Runs.Explain;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Identifiability;

/// <summary>
/// Fisher information of every cause in a record: from the figures it gives, the slopes of the model by each cause, the sensors' classes and the model's doubts. It depends on
/// what was measured and hardly on what the readings were, so it can be asked before a run.
/// </summary>
public static class IdentifiabilityStudy
{
    private const double Apart = 4;

    /// <summary>All causes that the record and its machine have.</summary>
    /// <param name="record">The record; its machine must have been read.</param>
    /// <param name="layout">The machine's layout.</param>
    /// <param name="runs">Runs of the machine of the same length.</param>
    /// <exception cref="SolveException">There is nothing to look at.</exception>
    public static IReadOnlyList<IdentifiedCause> Of(RunRecord record, LoopLayout layout, ModelRuns runs)
    {
        var c = ComparisonMaker.Make(Observer.Read(record, layout), runs);
        var fit = new EvidenceFit(c);
        int n = c.Suspects.Count;
        // what a clear fault does, in standard deviations of the figures
        var clear = new double[n][];
        for (int i = 0; i < n; i++) clear[i] = fit.Whiten(ExplanationBuilder.Change(c.Suspects[i], c.Suspects[i].Usual));
        var information = new double[n * n];
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++) information[i * n + j] = Dot(clear[i], clear[j]) + (i == j ? 1 : 0);
        var list = new List<IdentifiedCause>();
        for (int i = 0; i < n; i++)
        {
            double size = Dot(clear[i], clear[i]);
            var alikes = new List<string>();
            for (int j = 0; j < n; j++)
            {
                if (c.Suspects[j].Id == c.Suspects[i].Id) continue;
                double other = Dot(clear[j], clear[j]), both = Dot(clear[i], clear[j]), best = other > 0 ? both / other : 0;
                // a one-sided cause cannot stand in with the wrong sign, nor with more than three times a clear fault
                if (!c.Suspects[j].TwoSided) best = Math.Max(0, best);
                best = Math.Clamp(best, -3, 3);
                if (size - 2 * best * both + best * best * other < Apart && size >= Apart && !alikes.Contains(c.Suspects[j].Id)) alikes.Add(c.Suspects[j].Id);
            }
            list.Add(new IdentifiedCause(c.Suspects[i].Id, c.Suspects[i].Detail, Math.Sqrt(size), 1 / Deviation(information, n, i), alikes));
        }
        return list;
    }

    private static double Deviation(double[] information, int n, int i)
    {
        double[] a = [.. information], e = new double[n];
        e[i] = 1;
        return Dense.TrySolve(a, e, n) ? Math.Sqrt(Math.Max(e[i], 1e-12)) : 1;
    }

    private static double Dot(double[] a, double[] b)
    {
        double s = 0;
        for (int i = 0; i < a.Length; i++) s += a[i] * b[i];
        return s;
    }
}
