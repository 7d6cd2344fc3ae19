namespace Coldwright.Cli;

/// <summary>Where a command writes and how it learns that it should stop.</summary>
/// <param name="Output">Standard output: results.</param>
/// <param name="Error">Standard error: problems, notes, progress.</param>
/// <param name="Colour">True when the output is a terminal that shows colour.</param>
/// <param name="Cancel">Cancelled by Ctrl-C.</param>
internal sealed record Terminal(TextWriter Output, TextWriter Error, bool Colour, CancellationToken Cancel)
{
    /// <summary>Says what is wrong with the input.</summary>
    public int Refuse(InputException refusal)
    {
        foreach (var problem in refusal.Problems)
            Error.WriteLine(refusal.Where.Length > 0 ? $"coldwright: {refusal.Where}: {problem}" : $"coldwright: {problem}");
        if (refusal.Advice.Length > 0) Error.WriteLine($"  {refusal.Advice}");
        return ExitCode.BadInput;
    }

    /// <summary>Says something that is no error.</summary>
    public void Note(string text) => Error.WriteLine($"note: {text}");
}
