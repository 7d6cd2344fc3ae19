namespace Coldwright.Fluids.Substances;

/// <summary>
/// The molar gas constant used by every model. A pure fluid evaluated by its reference equation uses the value of
/// its paper (they were fitted with it); every mixture and the cubic model use <see cref="Mixture"/>.
/// </summary>
public static class GasConstant
{
    /// <summary>R = 8.314462618 J/(mol K), exact to ten digits since the 2019 SI (CODATA 2018).</summary>
    public const double Mixture = 8.314462618;
}
