using System.Globalization;

namespace Coldwright.Verification;

/// <summary>A small CSV of tests/data: comment lines start with #, then a header.</summary>
public sealed class Table
{
    private readonly Dictionary<string, int> _columns = [];

    public List<string[]> Rows { get; } = [];

    public static Table Read(string name)
    {
        var table = new Table();
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "data", name)))
        {
            if (line.StartsWith('#') || line.Length == 0) continue;
            var cells = line.Split(',');
            if (table._columns.Count == 0)
                for (int i = 0; i < cells.Length; i++) table._columns[cells[i]] = i;
            else table.Rows.Add(cells);
        }
        return table;
    }

    public bool Has(string column) => _columns.ContainsKey(column);

    public string Text(string[] row, string column) => row[_columns[column]];

    /// <summary>The number in a cell; NaN when empty.</summary>
    public double Number(string[] row, string column)
    {
        var text = row[_columns[column]];
        return text.Length == 0 ? double.NaN : double.Parse(text, CultureInfo.InvariantCulture);
    }

    public IEnumerable<string> Columns => _columns.Keys;

    /// <summary>Names and fractions of the columns <c>prefix_substance</c> that are filled and above zero.</summary>
    public (string[] Names, double[] Fractions) Composition(string[] row, string prefix)
    {
        var filled = Columns.Where(c => c.StartsWith(prefix, StringComparison.Ordinal) && Number(row, c) > 0).ToArray();
        return (filled.Select(c => c[prefix.Length..]).ToArray(), filled.Select(c => Number(row, c)).ToArray());
    }
}
