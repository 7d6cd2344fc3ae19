using System.Globalization;
using System.Runtime.CompilerServices;

namespace Coldwright.Quantities;

/// <summary>
/// A sentence made below the faces that keeps the amounts in it, so that a face says them in the units its reader chose. As plain text,
/// and for programs, it speaks SI. Two are equal when their SI texts are.
/// </summary>
public sealed class Spoken : IEquatable<Spoken>
{
    private readonly IReadOnlyList<(string Text, SpokenAmount? Amount)> _pieces;

    internal Spoken(IReadOnlyList<(string Text, SpokenAmount? Amount)> pieces) => _pieces = pieces;

    /// <summary>A sentence from an interpolated string; numbers in it are written for no country in particular.</summary>
    /// <param name="words">Words, amounts and other sentences.</param>
    public static Spoken Of(Words words) => new(words.Pieces);

    /// <summary>A sentence that was made where amounts are known but sentences are not (a solver's advice).</summary>
    /// <param name="words">Words with amounts, numbers and other words in them.</param>
    public static Spoken From(FormattableString words) => AmountFinder.Sentence(words);

    /// <summary>A sentence without amounts whose unit depends on the reader.</summary>
    /// <param name="text">Its text.</param>
    public static implicit operator Spoken(string text) => new([(text, null)]);

    /// <summary>The same of many.</summary>
    /// <param name="texts">Sentences without amounts.</param>
    public static IEnumerable<Spoken> All(IEnumerable<string> texts) => texts.Select(t => (Spoken)t);

    /// <summary>The same of many that are sentences already.</summary>
    /// <param name="sentences">Sentences.</param>
    public static IEnumerable<Spoken> All(IEnumerable<Spoken> sentences) => sentences;

    /// <summary>True when the sentence in SI holds the words.</summary>
    /// <param name="words">Words.</param>
    /// <param name="comparison">How letters are compared.</param>
    public bool Contains(string words, StringComparison comparison = StringComparison.Ordinal) => ToString().Contains(words, comparison);

    /// <summary>True when the sentence in SI begins with the words.</summary>
    /// <param name="words">Words.</param>
    /// <param name="comparison">How letters are compared.</param>
    public bool StartsWith(string words, StringComparison comparison = StringComparison.Ordinal) => ToString().StartsWith(words, comparison);

    /// <summary>One after the other.</summary>
    /// <param name="first">First.</param>
    /// <param name="second">Second.</param>
    public static Spoken operator +(Spoken first, Spoken second) => new([.. first._pieces, .. second._pieces]);

    /// <summary>Several with something between them.</summary>
    /// <param name="between">Stands between two.</param>
    /// <param name="parts">The parts.</param>
    public static Spoken Join(string between, IEnumerable<Spoken> parts)
    {
        var pieces = new List<(string, SpokenAmount?)>();
        foreach (var part in parts)
        {
            if (pieces.Count > 0) pieces.Add((between, null));
            pieces.AddRange(part._pieces);
        }
        return new(pieces);
    }

    /// <summary>True without a word.</summary>
    public bool IsEmpty => _pieces.All(p => p.Text.Length == 0 && p.Amount is null);

    /// <summary>The sentence with every amount said by the reader's own means.</summary>
    /// <param name="say">Says an amount.</param>
    public string With(Func<SpokenAmount, string> say) => string.Concat(_pieces.Select(p => p.Amount is { } amount ? say(amount) : p.Text));

    /// <summary>The sentence in SI.</summary>
    public override string ToString() => With(a => a.SiText);

    /// <inheritdoc/>
    public bool Equals(Spoken? other) => other is not null && ToString() == other.ToString();

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Spoken);

    /// <inheritdoc/>
    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);

    /// <summary>Collects the pieces of an interpolated string; the compiler calls it.</summary>
    [InterpolatedStringHandler]
    public readonly struct Words
    {
        private readonly List<(string Text, SpokenAmount? Amount)> _pieces;

        /// <summary>For a string with so many holes.</summary>
        /// <param name="literalLength">Characters outside the holes.</param>
        /// <param name="formattedCount">Holes.</param>
        public Words(int literalLength, int formattedCount) => _pieces = new(2 * formattedCount + (literalLength > 0 ? 1 : 0));

        internal IReadOnlyList<(string Text, SpokenAmount? Amount)> Pieces => _pieces;

        /// <summary>Words between holes.</summary>
        /// <param name="text">Text.</param>
        public void AppendLiteral(string text) => _pieces.Add((text, null));

        /// <summary>An amount.</summary>
        /// <param name="amount">The amount.</param>
        public void AppendFormatted(SpokenAmount amount) => _pieces.Add(("", amount));

        /// <summary>A sentence inside the sentence.</summary>
        /// <param name="inner">The inner one.</param>
        public void AppendFormatted(Spoken inner) => _pieces.AddRange(inner._pieces);

        /// <summary>Words that are not known beforehand.</summary>
        /// <param name="text">Text.</param>
        public void AppendFormatted(string? text) => _pieces.Add((text ?? "", null));

        /// <summary>A number.</summary>
        /// <param name="value">Number.</param>
        /// <param name="format">Number format.</param>
        public void AppendFormatted(double value, string? format = null) => _pieces.Add((value.ToString(format, CultureInfo.InvariantCulture), null));

        /// <summary>A whole number.</summary>
        /// <param name="value">Number.</param>
        public void AppendFormatted(int value) => _pieces.Add((value.ToString(CultureInfo.InvariantCulture), null));
    }
}
