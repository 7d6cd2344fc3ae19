namespace Coldwright.Numerics.Integration;

/// <summary>
/// Where a Jacobian may differ from zero, its bandwidth, and a grouping of its columns such that no two columns of a group share a
/// row: one evaluation of the right-hand side then gives the differences of a whole group (Curtis, Powell, Reid, J. Inst. Math.
/// Appl. 13 (1974) 117). Groups are chosen greedily, densest column first.
/// </summary>
public sealed class JacobianPattern
{
    private readonly int[][] _rowsOfColumn;

    private JacobianPattern(int[][] rowsOfColumn)
    {
        _rowsOfColumn = rowsOfColumn;
        for (int j = 0; j < Count; j++)
        {
            foreach (int i in rowsOfColumn[j])
            {
                Lower = Math.Max(Lower, i - j);
                Upper = Math.Max(Upper, j - i);
            }
        }
        Groups = Colour();
    }

    /// <summary>Number of components.</summary>
    public int Count => _rowsOfColumn.Length;

    /// <summary>Diagonals below the main one.</summary>
    public int Lower { get; }

    /// <summary>Diagonals above the main one.</summary>
    public int Upper { get; }

    /// <summary>Evaluations of the right-hand side that one difference Jacobian takes.</summary>
    public int GroupCount => Groups.Length;

    internal int[][] Groups { get; }

    /// <summary>Every component may depend on every other.</summary>
    /// <param name="count">Components.</param>
    public static JacobianPattern Full(int count)
    {
        int[] all = [.. Enumerable.Range(0, count)];
        return new([.. Enumerable.Repeat(all, count)]);
    }

    /// <summary>A band: row i depends on columns i - lower to i + upper.</summary>
    /// <param name="count">Components.</param>
    /// <param name="lower">Diagonals below the main one.</param>
    /// <param name="upper">Diagonals above the main one.</param>
    public static JacobianPattern Banded(int count, int lower, int upper)
    {
        if (lower < 0 || upper < 0) throw new ArgumentException($"a band has 0 or more diagonals a side, got {lower} and {upper}");
        var entries = from i in Enumerable.Range(0, count) from j in Enumerable.Range(i - lower, lower + upper + 1) where j >= 0 && j < count select (i, j);
        return FromEntries(count, entries);
    }

    /// <summary>The listed entries and no others.</summary>
    /// <param name="count">Components.</param>
    /// <param name="entries">Row and column of each entry that may differ from zero; repetitions are allowed.</param>
    public static JacobianPattern FromEntries(int count, IEnumerable<(int Row, int Column)> entries)
    {
        var columns = new SortedSet<int>[count];
        for (int j = 0; j < count; j++) columns[j] = [];
        foreach (var (row, column) in entries)
        {
            if ((uint)row >= count || (uint)column >= count) throw new ArgumentException($"entry ({row}, {column}) lies outside a matrix of {count} rows");
            columns[column].Add(row);
        }
        return new([.. columns.Select(c => c.ToArray())]);
    }

    internal ReadOnlySpan<int> Rows(int column) => _rowsOfColumn[column];

    private int[][] Colour()
    {
        var groups = new List<(List<int> Columns, bool[] Taken)>();
        foreach (int j in Enumerable.Range(0, Count).Where(j => _rowsOfColumn[j].Length > 0).OrderByDescending(j => _rowsOfColumn[j].Length))
        {
            var rows = _rowsOfColumn[j];
            int home = groups.FindIndex(g => !Array.Exists(rows, i => g.Taken[i]));
            if (home < 0)
            {
                home = groups.Count;
                groups.Add(([], new bool[Count]));
            }
            groups[home].Columns.Add(j);
            foreach (int i in rows) groups[home].Taken[i] = true;
        }
        return [.. groups.Select(g => g.Columns.ToArray())];
    }
}
