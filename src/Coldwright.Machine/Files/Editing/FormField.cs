namespace Coldwright.Machine.Files.Editing;

/// <summary>A key of the machine file as a person fills it in.</summary>
/// <param name="Place">Keys from the root, joined by <c>/</c>.</param>
/// <param name="Label">The key.</param>
/// <param name="Meaning">One sentence for the person who fills it in; empty when the key is its own.</param>
/// <param name="Value">What stands in the file; null when the key is not there.</param>
/// <param name="Example">A text that would be accepted; empty when there is none.</param>
/// <param name="Choices">The words of which it must be one; empty when it is not a choice.</param>
/// <param name="IsQuantity">True for a number with a unit, which can be moved up and down.</param>
/// <param name="IsRequired">True when the key must be there.</param>
/// <param name="IsEditable">False for a list or group that is changed in the file itself.</param>
public sealed record FormField(string Place, string Label, string Meaning, string? Value, string Example, IReadOnlyList<string> Choices, bool IsQuantity, bool IsRequired, bool IsEditable);

/// <summary>A group of fields: the room, a part, a line.</summary>
/// <param name="Place">Keys from the root, joined by <c>/</c>.</param>
/// <param name="Title">What it is: <c>room</c>, a part's name, a line's two ends.</param>
/// <param name="Kind">A part's kind; empty for what is no part.</param>
/// <param name="Fields">Its fields, those in the file first, in the order of the key table within.</param>
public sealed record FormSection(string Place, string Title, string Kind, IReadOnlyList<FormField> Fields);
