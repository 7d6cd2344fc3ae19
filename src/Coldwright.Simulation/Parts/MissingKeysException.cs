namespace Coldwright.Simulation.Parts;

/// <summary>The machine file does not describe a part, or the whole loop, closely enough for its own model.</summary>
/// <param name="part">Name of the part.</param>
/// <param name="kind">Its kind.</param>
/// <param name="keys">What to add.</param>
public sealed class MissingKeysException(string part, string kind, IReadOnlyList<MissingKey> keys)
    : Exception($"part '{part}' ({kind}) is not described closely enough; add {string.Join("; ", keys)}")
{
    /// <summary>Name of the part.</summary>
    public string Part => part;
    /// <summary>Its kind.</summary>
    public string Kind => kind;
    /// <summary>What to add.</summary>
    public IReadOnlyList<MissingKey> Keys => keys;
}

/// <summary>A key, or one of several ways to say the same, that is missing.</summary>
/// <param name="Where">Name of the part that it belongs to.</param>
/// <param name="Key">The key or keys, as written in the file.</param>
/// <param name="Example">How it may look.</param>
public sealed record MissingKey(string Where, string Key, string Example)
{
    /// <inheritdoc/>
    public override string ToString() => $"'{Key}' to {Where} ({Example})";
}
