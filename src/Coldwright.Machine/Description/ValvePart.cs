namespace Coldwright.Machine.Description;

/// <summary>kind <c>valve</c>: a shut-off; closes a volume when shut.</summary>
public sealed record ValvePart : Part;
