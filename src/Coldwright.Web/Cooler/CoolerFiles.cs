using Coldwright.Machine.Files;
using Coldwright.Machine.Files.Editing;

namespace Coldwright.Web.Cooler;

/// <summary>
/// The cooler's folder. Its files are the truth: they are looked at again for every answer, changed value by value where the value stands, and a
/// value that has changed under the person's hand is shown and not overwritten. Steps back and forward are kept while the page is served.
/// </summary>
internal sealed class CoolerFiles
{
    private const int MostSteps = 200, Attempts = 4;

    private readonly Lock _gate = new();
    private readonly MachineFile _machine, _shop;
    private readonly List<Step> _done = [], _undone = [];
    private (byte[]? Machine, byte[]? Shop) _read;
    private Snapshot? _last;

    public CoolerFiles(string directory)
    {
        Directory = Path.GetFullPath(directory);
        _machine = new MachineFile(Path.Combine(Directory, MachineFolderReader.MachineFile));
        _shop = new MachineFile(Path.Combine(Directory, MachineFolderReader.ShopFile));
    }

    private sealed record Step(IReadOnlyList<Change> Changes, string Before, string After);

    /// <summary>The folder's full path.</summary>
    public string Directory { get; }

    /// <summary>What the next step back would change; null when there is none.</summary>
    public string? UndoName => Name(_done);

    /// <summary>What the next step forward would change; null when there is none.</summary>
    public string? RedoName => Name(_undone);

    /// <summary>The files as they are now.</summary>
    public Snapshot Now()
    {
        lock (_gate) return Look();
    }

    /// <summary>Changes values and writes the file, unless a value is no longer what the person saw or the result would be no good machine file.</summary>
    public EditOutcome Edit(IReadOnlyList<Change> changes)
    {
        lock (_gate)
        {
            var outcome = Write(text => changes.Aggregate(text, (t, c) => ValueEditor.Set(t, c.Place, c.Value)), changes, out var step);
            if (step is not null) Keep(step);
            return outcome;
        }
    }

    /// <summary>Puts a whole text in place of the file's, a variant's for example.</summary>
    public EditOutcome Exchange(string text)
    {
        lock (_gate)
        {
            var outcome = Write(_ => text, [], out var step);
            if (step is not null) Keep(step);
            return outcome;
        }
    }

    /// <summary>One step back.</summary>
    public EditOutcome Undo()
    {
        lock (_gate) return Turn(_done, _undone, s => s.After, s => s.Before, c => new Change(c.Place, c.Value, c.Was));
    }

    /// <summary>One step forward again.</summary>
    public EditOutcome Redo()
    {
        lock (_gate) return Turn(_undone, _done, s => s.Before, s => s.After, c => c);
    }

    private static string? Name(List<Step> steps) => steps.Count == 0 ? null : steps[^1].Changes is [var first, ..] ? first.Place : MachineFolderReader.MachineFile;

    private void Keep(Step step)
    {
        _done.Add(step);
        if (_done.Count > MostSteps) _done.RemoveAt(0);
        _undone.Clear();
    }

    private EditOutcome Turn(List<Step> from, List<Step> to, Func<Step, string> expected, Func<Step, string> wanted, Func<Change, Change> way)
    {
        if (from.Count == 0) return EditOutcome.Refused("there is nothing to take back");
        var step = from[^1];
        var changes = step.Changes.Select(way).ToArray();
        // The very text that was left: put the other one back to the letter. Changed since by somebody else: only the values of this step.
        var outcome = Look().Text == expected(step) ? Write(_ => wanted(step), [], out _)
            : changes.Length == 0 ? EditOutcome.Refused($"{MachineFolderReader.MachineFile} has changed since; this step exchanged the whole file and cannot be taken back without losing that")
            : Write(text => changes.Aggregate(text, (t, c) => ValueEditor.Set(t, c.Place, c.Value)), changes, out _);
        if (!outcome.IsWritten) return outcome;
        from.RemoveAt(from.Count - 1);
        to.Add(step);
        return outcome;
    }

    private EditOutcome Write(Func<string, string> make, IReadOnlyList<Change> changes, out Step? step)
    {
        step = null;
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            var now = Look();
            if (now.Text is not { } text || _read.Machine is not { } bytes) return EditOutcome.Refused("the file cannot be read just now, so nothing was written");
            var clashes = changes.Select(c => new Clash(c.Place, c.Value, ValueEditor.Find(text, c.Place))).Where((c, i) => c.Theirs != changes[i].Was && c.Theirs != c.Mine).ToArray();
            if (clashes.Length > 0) return new EditOutcome([], clashes);
            try
            {
                var changed = make(text);
                var then = now.With(changed);
                if (then.Folder.Problems.Count > 0 && now.Folder.IsGood) return new EditOutcome(then.Folder.Problems, []);
                if (changed == text) return EditOutcome.Written;
                if (!_machine.Replace(changed, bytes)) continue;
                step = new Step(changes, text, changed);
                return EditOutcome.Written;
            }
            catch (Exception e) when (e is ArgumentException or IOException or UnauthorizedAccessException)
            {
                return EditOutcome.Refused(e.Message);
            }
        }
        return EditOutcome.Refused("another program keeps writing the file; nothing was written from here");
    }

    private Snapshot Look()
    {
        var (machine, shop) = (_machine.Bytes(), _shop.Bytes());
        if (_last is not null && Same(machine, _read.Machine) && Same(shop, _read.Shop)) return _last;
        _read = (machine, shop);
        return _last = MachineFile.Text(machine) is { } text
            ? Snapshot.Of(text, MachineFile.Text(shop), Directory)
            // Missing, too large or no text: the reader of whole folders says which.
            : new Snapshot(null, null, MachineFolderReader.Read(Directory));
    }

    private static bool Same(byte[]? a, byte[]? b) => ReferenceEquals(a, b) || (a is not null && b is not null && a.AsSpan().SequenceEqual(b));
}
