namespace Coldwright.Numerics.Integration;

/// <summary>
/// f in M dy/dt = f(t, y, p). Writes the slope of every component; false when the equations mean nothing at this state: the step is
/// then shortened. Must be smooth between events; what jumps belongs into an <see cref="IntegrationEvent"/>.
/// </summary>
/// <param name="time">t.</param>
/// <param name="state">y.</param>
/// <param name="parameters">p; empty when the problem has none.</param>
/// <param name="slope">Result, same length as <paramref name="state"/>.</param>
public delegate bool RightHandSide(double time, ReadOnlySpan<double> state, ReadOnlySpan<double> parameters, Span<double> slope);

/// <summary>Writes df/dy into a cleared matrix; elements outside its band are refused.</summary>
/// <param name="time">t.</param>
/// <param name="state">y.</param>
/// <param name="parameters">p; empty when the problem has none.</param>
/// <param name="jacobian">Result.</param>
public delegate void JacobianFunction(double time, ReadOnlySpan<double> state, ReadOnlySpan<double> parameters, JacobianMatrix jacobian);
