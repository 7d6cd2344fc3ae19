namespace Coldwright.Report.Terminal;

/// <summary>Colour for terminals that want it; without it the same text stays plain.</summary>
/// <param name="Colour">True to send ANSI colour codes.</param>
internal readonly record struct TerminalStyle(bool Colour)
{
    public string Bold(string text) => Wrap("1", text);
    public string Quiet(string text) => Wrap("2", text);
    public string Cold(string text) => Wrap("36", text);
    public string Warm(string text) => Wrap("33", text);
    public string Alarm(string text) => Wrap("1;31", text);

    private string Wrap(string code, string text) => Colour && text.Length > 0 ? $"\e[{code}m{text}\e[0m" : text;
}
