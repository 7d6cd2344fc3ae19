using System.Globalization;
using System.Text;

namespace Coldwright.Runs.Live;

/// <summary>
/// A log whose columns are topics. What comes within a second stands in one row with the time of its first message. Every call leaves the file whole and on disk;
/// a new column is added to the rows before it, which are then written anew beside the file and moved into place.
/// </summary>
internal sealed class TopicTable : IDisposable
{
    /// <summary>More columns than any logger has.</summary>
    public const int MostColumns = 500;
    // sensors that are read in one go publish one after the other; nothing here changes within it. Our assumption.
    private static readonly TimeSpan _oneRow = TimeSpan.FromSeconds(1);

    private readonly string _path;
    private readonly List<string> _columns = [];
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly Dictionary<int, string> _row = [];
    private FileStream _file;
    private DateTime _rowTime;
    private long _rowStart;

    /// <param name="path">The file; it must not be there yet.</param>
    /// <param name="columns">Columns from the beginning.</param>
    public TopicTable(string path, IReadOnlyList<string> columns)
    {
        _path = path;
        foreach (var column in columns) Name(column);
        _file = Open(path, FileMode.CreateNew);
        WriteAt(0, Heading());
        _rowStart = _file.Length;
    }

    /// <summary>Columns in the order of the log.</summary>
    public IReadOnlyList<string> Columns => _columns;
    /// <summary>Rows begun.</summary>
    public int Rows { get; private set; }

    /// <summary>True when the log has that column.</summary>
    public bool Has(string column) => _index.ContainsKey(column);

    /// <summary>Writes cells; columns that are not there yet are made.</summary>
    /// <param name="time">When they came.</param>
    /// <param name="cells">Column and text.</param>
    public void Put(DateTime time, IReadOnlyList<(string Column, string Text)> cells)
    {
        var before = _columns.Count;
        foreach (var (column, _) in cells) Name(column);
        if (_columns.Count > before) Widen();
        if (_row.Count == 0 || time - _rowTime >= _oneRow || time < _rowTime || cells.Any(c => _row.ContainsKey(_index[c.Column]))) Begin(time);
        foreach (var (column, text) in cells) _row[_index[column]] = text;
        WriteAt(_rowStart, Line());
    }

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();

    private void Name(string column)
    {
        if (_index.TryAdd(column, _columns.Count)) _columns.Add(column);
    }

    private void Begin(DateTime time)
    {
        _rowStart = _file.Length;
        _rowTime = time;
        _row.Clear();
        Rows++;
    }

    private string Heading() => "time" + string.Concat(_columns.Select(c => $";{c}")) + "\n";

    private string Line() => _rowTime.ToString("yyyy-MM-dd HH:mm:ss.fff", CultureInfo.InvariantCulture) + string.Concat(_columns.Select((_, i) => $";{_row.GetValueOrDefault(i, "")}")) + "\n";

    private void WriteAt(long at, string text)
    {
        _file.Position = at;
        _file.Write(Encoding.UTF8.GetBytes(text));
        _file.SetLength(_file.Position);
    }

    private void Widen()
    {
        var beside = _path + ".writing";
        _file.Dispose();
        using (var wide = new FileStream(beside, FileMode.Create))
        {
            using var writer = new StreamWriter(wide, leaveOpen: true) { NewLine = "\n" };
            writer.Write(Heading());
            var last = "";
            foreach (var line in File.ReadLines(_path).Skip(1)) writer.WriteLine(last = line + new string(';', _columns.Count - Cells(line)));
            writer.Flush();
            wide.Flush(flushToDisk: true);
            _rowStart = last.Length == 0 ? wide.Length : wide.Length - Encoding.UTF8.GetByteCount(last) - 1;
        }
        File.Move(beside, _path, overwrite: true);
        _file = Open(_path, FileMode.Open);
    }

    // no cell holds a semicolon
    private static int Cells(string line) => line.AsSpan().Count(';');

    // written through: when a call returns, a pulled plug takes nothing of it
    private static FileStream Open(string path, FileMode mode) => new(path, mode, FileAccess.ReadWrite, FileShare.Read, 0, FileOptions.WriteThrough);
}
