namespace Coldwright.Machine.Description;

/// <summary>kind <c>block</c>: a metal block cooled instead of a vessel.</summary>
public sealed record BlockPart : Part;
