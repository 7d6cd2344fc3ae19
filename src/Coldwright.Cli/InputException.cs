namespace Coldwright.Cli;

/// <summary>The input is wrong: what, where, and what to do about it. Ends the command with exit code 2.</summary>
/// <param name="where">The option, argument or file concerned; empty when the sentence says it.</param>
/// <param name="problems">One sentence each, with value, limit and unit.</param>
/// <param name="advice">What to do; empty when the sentences say it.</param>
internal sealed class InputException(string where, IReadOnlyList<string> problems, string advice = "") : Exception(string.Join("; ", problems))
{
    public InputException(string where, string problem, string advice = "")
        : this(where, [problem], advice)
    {
    }

    public string Where => where;

    public IReadOnlyList<string> Problems => problems;

    public string Advice => advice;
}
