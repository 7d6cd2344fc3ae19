namespace Coldwright.Machine.Layout;

/// <summary>Why a layout is not one the solvers can handle.</summary>
/// <param name="FileLine">Line in the machine file, from 1; 0 when the machine did not come from a file.</param>
/// <param name="Message">Names the part and what was expected.</param>
public sealed record LayoutRefusal(int FileLine, string Message);
