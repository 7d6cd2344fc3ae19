using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>
/// How far beyond its triple point each pure equation is trusted. In a mixture every pure equation is evaluated at the
/// mixture's tau = T_r(x)/T, often far colder (in its own reduced terms) than it was fitted for; some have tau exponents
/// up to 50 and then swamp everything. Beyond the limit an equation is continued linearly in tau, which keeps pressure,
/// enthalpy and entropy continuous and every identity between them exact. Below the limit the published model is
/// untouched. Reasons and measurements: docs/decisions/008-tau-limits.md.
/// </summary>
public static class TauLimits
{
    /// <summary>Margin over the triple point's tau.</summary>
    public const double TripleMargin = 1.03;
    /// <summary>No equation is continued below this tau.</summary>
    public const double Least = 2.4;
    /// <summary>For the main fluids of cryogenic mixtures, whose equations behave further.</summary>
    public const double LeastForMainFluids = 3.2;

    /// <summary>
    /// Limit of the departure functions: the coldest reduced temperature of the data they were fitted to (90 K with a
    /// mixture's T_r near 300 K). Beyond it that of ethane+propane alone makes cv negative.
    /// </summary>
    public const double Departure = 3.2;

    private static readonly HashSet<string> MainFluids = ["nitrogen", "argon", "methane", "ethylene", "ethane", "propane", "isobutane", "butane"];

    /// <summary>The limit of a substance.</summary>
    public static double Of(Substance s) => Math.Max(TripleMargin * s.ReducingTemperatureK / s.TripleTemperatureK,
        MainFluids.Contains(s.Name) ? LeastForMainFluids : Least);
}
