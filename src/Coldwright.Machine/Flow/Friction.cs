namespace Coldwright.Machine.Flow;

/// <summary>Darcy friction factors of straight and coiled round tubes, continuous through all regimes.</summary>
public static class Friction
{
    private const double LaminarConstant = 64;
    private const double TransitionConstant = 37530;
    private const double StraightTransitionReynolds = 2300;

    /// <summary>Below this Reynolds number the creeping-flow law is exact and the twelfth powers would only lose digits.</summary>
    private const double CreepingReynolds = 1e-3;

    /// <summary>Source and uncertainty of <see cref="Churchill"/>.</summary>
    public static Correlation ChurchillCorrelation { get; } = new(
        "Churchill (1977) friction factor",
        "S. W. Churchill, Chemical Engineering 84(24), 1977, 91-92",
        0.03,
        "round tube, any Reynolds number above 0, relative roughness 0 to 0.05");

    /// <summary>Source and uncertainty of <see cref="Coiled"/>.</summary>
    public static Correlation CoiledCorrelation { get; } = new(
        "Coiled tube friction: White (1929) and Mishra-Gupta (1979) in Churchill's blend",
        "C. M. White, Proc. R. Soc. A 123, 1929, 645-663; P. Mishra, S. N. Gupta, Ind. Eng. Chem. Process Des. Dev. 18, 1979, 130-137; "
            + "E. F. Schmidt, Chem.-Ing.-Tech. 39, 1967, 781-789 (transition); the blend is our own",
        0.08,
        "diameter over coil 0.003 to 0.15; meets the straight tube at 0");

    /// <summary>
    /// Darcy friction factor of a straight round tube, laminar, transition and turbulent in one formula:
    /// f = 8 [(8/Re)^12 + (A + B)^(-3/2)]^(1/12), A = (-2.457 ln[(7/Re)^0.9 + 0.27 e/D])^16, B = (37530/Re)^16.
    /// </summary>
    /// <param name="reynolds">G D / viscosity, above 0.</param>
    /// <param name="relativeRoughness">Wall roughness over bore, 0 to 0.05 (drawn copper 1.5 micrometre: 0.0001 to 0.001).</param>
    /// <returns>Darcy (Moody) friction factor; 64/Re as Re -> 0. One standard deviation 3 % outside 2300 &lt; Re &lt; 4000, where no formula is sure.</returns>
    /// <remarks>Source: Churchill (1977), Chemical Engineering 84(24), 91.</remarks>
    public static double Churchill(double reynolds, double relativeRoughness)
    {
        FlowGuard.Positive(reynolds, nameof(reynolds), "(dimensionless)");
        FlowGuard.NotNegative(relativeRoughness, nameof(relativeRoughness), "(dimensionless)");
        return reynolds < CreepingReynolds
            ? LaminarConstant / reynolds
            : Blend(reynolds, LaminarConstant / reynolds, RoughTurbulent(reynolds, relativeRoughness), StraightTransitionReynolds);
    }

    /// <summary>
    /// Darcy friction factor of a coiled tube: Churchill's blend of the coil's own laminar limit (White) and turbulent limit
    /// (rough straight tube + Mishra-Gupta), its transition moved to <see cref="CoiledTransitionReynolds"/>.
    /// </summary>
    /// <param name="reynolds">G D / viscosity, above 0.</param>
    /// <param name="relativeRoughness">Wall roughness over bore, 0 to 0.05.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 (straight) to 0.5; data reach 0.15.</param>
    /// <returns>Darcy friction factor; equals <see cref="Churchill"/> at zero curvature, and 64/Re where the Dean number is below 11.6. One standard deviation 8 %.</returns>
    /// <remarks>Sources: White (1929); Mishra and Gupta (1979); Schmidt (1967). The joining is ours: each limit is a published law.</remarks>
    public static double Coiled(double reynolds, double relativeRoughness, double diameterOverCoil)
    {
        FlowGuard.Positive(reynolds, nameof(reynolds), "(dimensionless)");
        FlowGuard.NotNegative(relativeRoughness, nameof(relativeRoughness), "(dimensionless)");
        FlowGuard.Curvature(diameterOverCoil, nameof(diameterOverCoil));
        if (reynolds < CreepingReynolds)
        {
            return LaminarConstant / reynolds;
        }

        double laminar = CoilFriction.White(reynolds, diameterOverCoil);
        double turbulent = RoughTurbulent(reynolds, relativeRoughness) + CoilFriction.MishraGuptaRise(diameterOverCoil);
        return Blend(reynolds, laminar, turbulent, CoiledTransitionReynolds(diameterOverCoil));
    }

    /// <summary>Reynolds number at which the flow in a coil turns turbulent: Re_c = 2300 [1 + 8.6 (D/Dc)^0.45].</summary>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 to 0.5.</param>
    /// <returns>Critical Reynolds number, 2300 for a straight tube. About 10 %.</returns>
    /// <remarks>Source: E. F. Schmidt, Chem.-Ing.-Tech. 39 (1967) 781; constants from memory.</remarks>
    public static double CoiledTransitionReynolds(double diameterOverCoil)
    {
        FlowGuard.Curvature(diameterOverCoil, nameof(diameterOverCoil));
        return StraightTransitionReynolds * (1 + (8.6 * Math.Pow(diameterOverCoil, 0.45)));
    }

    /// <summary>Churchill's turbulent limit alone: f_t = 8 A^(-1/8).</summary>
    private static double RoughTurbulent(double reynolds, double relativeRoughness)
    {
        double logarithm = Math.Log(Math.Pow(7 / reynolds, 0.9) + (0.27 * relativeRoughness));
        double a8 = Math.Pow(2.457 * logarithm, 2);
        // Near the Reynolds number where the logarithm passes 0 the flow is laminar anyway and the transition term rules.
        return 8 / Math.Max(a8, 1e-12);
    }

    private static double Blend(double reynolds, double laminar, double turbulent, double transitionReynolds)
    {
        double a = Math.Pow(8 / turbulent, 8);
        double b = Math.Pow(TransitionConstant * transitionReynolds / StraightTransitionReynolds / reynolds, 16);
        return 8 * Math.Pow(Math.Pow(laminar / 8, 12) + Math.Pow(a + b, -1.5), 1.0 / 12);
    }
}
