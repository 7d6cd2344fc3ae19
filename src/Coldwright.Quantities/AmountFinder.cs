using System.Globalization;

namespace Coldwright.Quantities;

/// <summary>Writes a composite text for no country in particular and keeps the amounts in it, those of texts inside the text with them.</summary>
internal sealed class AmountFinder : IFormatProvider, ICustomFormatter
{
    // no text holds it
    private const char Mark = '\u0001';

    private readonly List<SpokenAmount> _found = [];

    /// <summary>The sentence.</summary>
    public static Spoken Sentence(FormattableString words)
    {
        var finder = new AmountFinder();
        var texts = words.ToString(finder).Split(Mark);
        var pieces = new List<(string, SpokenAmount?)> { (texts[0], null) };
        foreach (var (amount, text) in finder._found.Zip(texts.Skip(1)))
        {
            pieces.Add(("", amount));
            pieces.Add((text, null));
        }
        return new(pieces);
    }

    /// <inheritdoc/>
    public object? GetFormat(Type? formatType) => formatType == typeof(ICustomFormatter) ? this : CultureInfo.InvariantCulture.GetFormat(formatType!);

    /// <inheritdoc/>
    public string Format(string? format, object? arg, IFormatProvider? formatProvider) => arg switch
    {
        SpokenAmount amount => Keep(amount),
        Spoken sentence => sentence.With(Keep),
        FormattableString words => words.ToString(this),
        IFormattable number => number.ToString(format, CultureInfo.InvariantCulture),
        _ => arg?.ToString()?.Replace(Mark, ' ') ?? "",
    };

    private string Keep(SpokenAmount amount)
    {
        _found.Add(amount);
        return Mark.ToString();
    }
}
