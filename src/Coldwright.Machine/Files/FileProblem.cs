namespace Coldwright.Machine.Files;

/// <summary>Something wrong in a machine folder, where it stands and what to do about it.</summary>
/// <param name="File">File name inside the folder.</param>
/// <param name="Line">Line, from 1; 0 when the problem is the file as a whole.</param>
/// <param name="Column">Column, from 1; 0 when the problem is the file as a whole.</param>
/// <param name="Message">One sentence with value, limit and unit.</param>
public sealed record FileProblem(string File, int Line, int Column, string Message)
{
    /// <summary><c>machine.yaml:12:5: message</c>.</summary>
    public override string ToString() => Line > 0 ? $"{File}:{Line}:{Column}: {Message}" : $"{File}: {Message}";
}
