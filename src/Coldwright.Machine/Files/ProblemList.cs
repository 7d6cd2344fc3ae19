using Coldwright.Machine.Files.Tree;

namespace Coldwright.Machine.Files;

/// <summary>Collects the problems of one file, so that all of them are shown in one go.</summary>
/// <param name="file">File name shown in front of each problem.</param>
public sealed class ProblemList(string file)
{
    /// <summary>After this many the rest is only counted: nobody reads more, and a wrecked file must not fill the memory.</summary>
    public const int Most = 100;

    private readonly List<FileProblem> _problems = [];
    private int _left;

    /// <summary>File name shown in front of each problem.</summary>
    public string File => file;

    /// <summary>True when nothing was found.</summary>
    public bool IsEmpty => _problems.Count == 0;

    /// <summary>The problems in file order, with a last line that counts those left out.</summary>
    public IReadOnlyList<FileProblem> InFileOrder()
    {
        var sorted = _problems.OrderBy(p => p.Line).ThenBy(p => p.Column).Distinct().ToList();
        if (_left > 0) sorted.Add(new FileProblem(file, 0, 0, $"{_left} more problems are not shown"));
        return sorted;
    }

    /// <summary>Adds a problem at a place.</summary>
    public void Add(int line, int column, string message)
    {
        if (_problems.Count < Most) _problems.Add(new FileProblem(file, line, column, message));
        else _left++;
    }

    /// <summary>Adds a problem at a node.</summary>
    public void Add(FileNode node, string message) => Add(node.Line, node.Column, message);

    /// <summary>Adds a problem of the file as a whole.</summary>
    public void Add(string message) => Add(0, 0, message);
}
