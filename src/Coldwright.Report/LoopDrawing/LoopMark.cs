namespace Coldwright.Report.Loops;

/// <summary>A finding that must be seen on the drawing: the part is drawn in the colour of danger and carries a flag with the word.</summary>
/// <param name="Place">Name of the part or line; any other name (the machine, the room) is written at the head of the drawing.</param>
/// <param name="Word">One word: how much it weighs.</param>
/// <param name="Why">What was found, shown when the part is pointed at.</param>
public sealed record LoopMark(string Place, string Word, string Why);
