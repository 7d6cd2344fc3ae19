using Coldwright.Numerics.Integration;

namespace Coldwright.Numerics.Tests.Integration;

/// <summary>A test problem with a published end value; <paramref name="Smallest"/> is the size of each component that still matters.</summary>
internal sealed record ClassicProblem(string Name, InitialValueProblem Problem, double[] Initial, double End, double[] Expected, double[] Smallest)
{
    private const string Source = "F. Mazzia, C. Magherini, Test Set for Initial Value Problem Solvers, release 2.4, University of Bari 2008: "
        + "reference solutions by RADAU or RADAU5 in extended precision; read in public copies of the set";

    /// <summary>Where the end values come from.</summary>
    public string Origin => Source;

    /// <summary>H. H. Robertson's autocatalytic reaction, to 1e11.</summary>
    public static ClassicProblem Robertson { get; } = new("Robertson", new(3, (_, y, _, f) =>
    {
        f[0] = -0.04 * y[0] + 1e4 * y[1] * y[2];
        f[2] = 3e7 * y[1] * y[1];
        f[1] = -f[0] - f[2];
        return true;
    }), [1, 0, 0], 1e11, [0.2083340149701255e-7, 0.8333360770334713e-13, 0.9999999791665050], [1e-8, 1e-14, 1e-2]);

    /// <summary>Van der Pol, mu = 1000, in the set's scaling: epsilon = 1e-6.</summary>
    public static ClassicProblem VanDerPol { get; } = new("van der Pol", new(2, (_, y, _, f) =>
    {
        f[0] = y[1];
        f[1] = ((1 - y[0] * y[0]) * y[1] - y[0]) / 1e-6;
        return true;
    }), [2, 0], 2, [1.706167732170483, -0.8928097010247975], [1]);

    /// <summary>HIRES, E. Schaefer's plant physiology problem.</summary>
    public static ClassicProblem Hires { get; } = new("HIRES", new(8, (_, y, _, f) =>
    {
        f[0] = -1.71 * y[0] + 0.43 * y[1] + 8.32 * y[2] + 0.0007;
        f[1] = 1.71 * y[0] - 8.75 * y[1];
        f[2] = -10.03 * y[2] + 0.43 * y[3] + 0.035 * y[4];
        f[3] = 8.32 * y[1] + 1.71 * y[2] - 1.12 * y[3];
        f[4] = -1.745 * y[4] + 0.43 * (y[5] + y[6]);
        f[5] = -280 * y[5] * y[7] + 0.69 * y[3] + 1.71 * y[4] - 0.43 * y[5] + 0.69 * y[6];
        f[6] = 280 * y[5] * y[7] - 1.81 * y[6];
        f[7] = -f[6];
        return true;
    }), [1, 0, 0, 0, 0, 0, 0, 0.0057], 321.8122,
        [0.7371312573325668e-3, 0.1442485726316185e-3, 0.5888729740967575e-4, 0.1175651343283149e-2, 0.2386356198831331e-2, 0.6238968252742796e-2, 0.2849998395185769e-2, 0.2850001604814231e-2],
        [1e-4]);

    /// <summary>The Oregonator, Field and Noyes.</summary>
    public static ClassicProblem Oregonator { get; } = new("OREGO", new(3, (_, y, _, f) =>
    {
        f[0] = 77.27 * (y[1] + y[0] * (1 - 8.375e-6 * y[0] - y[1]));
        f[1] = (y[2] - (1 + y[0]) * y[1]) / 77.27;
        f[2] = 0.161 * (y[0] - y[2]);
        return true;
    }), [1, 2, 3], 360, [0.1000814870318523e1, 0.1228178521549917e4, 0.1320554942846706e3], [1]);

    public IntegrationResult Run(double relativeTolerance) => TestRun.Integrate(Problem, 0, Initial, End,
        new() { RelativeTolerance = relativeTolerance, AbsoluteTolerances = Smallest.Select(a => a * relativeTolerance).ToArray() }).OrThrow();

    /// <summary>Largest relative error at the end.</summary>
    public double Error(IntegrationResult result) => Expected.Zip(result.State, (e, y) => Math.Abs(y / e - 1)).Max();
}
