namespace Coldwright.Fluids.Transport.Terms;

/// <summary>
/// One additive term of a published viscosity (Pa s) or conductivity (W/(m K)) correlation of a pure fluid. Each
/// class below is one published form; the numbers are in data/transport, with their paper.
/// </summary>
internal abstract class TransportTerm
{
    /// <summary>The term at a point, Pa s or W/(m K).</summary>
    public abstract double Value(PurePoint p);

    /// <summary>The sum of several terms.</summary>
    public static double Sum(TransportTerm[] terms, PurePoint p)
    {
        double sum = 0;
        foreach (var term in terms) sum += term.Value(p);
        return sum;
    }
}
