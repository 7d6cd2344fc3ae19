using Coldwright.Machine.Description;

namespace Coldwright.Machine.Layout;

/// <summary>A station on a path of the gas.</summary>
/// <param name="Part">The part that is reached.</param>
/// <param name="Port">The port it is reached at.</param>
/// <param name="Line">The line that leads there; null at the start.</param>
public sealed record PathStep(Part Part, string Port, Line? Line);
