using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>An input of the closed loop that a figure may be asked to answer to.</summary>
/// <param name="Id">Its key, part first.</param>
/// <param name="Name">In words.</param>
/// <param name="Unit">SI; empty for a factor.</param>
/// <param name="Value">Its value.</param>
/// <param name="Step">A step a builder might take, or a standard deviation.</param>
/// <param name="IsDoubt">True for a standard deviation.</param>
/// <param name="Changed">The hardware with the input changed by so much.</param>
/// <param name="OnThrottle">True when the throttle's own model must be asked again.</param>
internal sealed record LoopInput(string Id, string Name, string Unit, double Value, double Step, bool IsDoubt, Func<Hardware, double, Hardware> Changed, bool OnThrottle = false);
