using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>Nusselt numbers of one phase in round tubes, straight and coiled, continuous from laminar to turbulent.</summary>
public static class SinglePhase
{
    /// <summary>Fully developed laminar flow at constant wall temperature.</summary>
    public const double LaminarConstantTemperature = 3.66;

    /// <summary>Fully developed laminar flow at constant heat flux.</summary>
    public const double LaminarConstantFlux = 4.36;

    /// <summary>
    /// Used for laminar flow: the mean of the two limits, 4.01. A counterflow exchanger lies between them (constant flux where both
    /// capacity rates are equal, constant temperature where one side condenses or boils); the choice costs at most 9 %.
    /// </summary>
    public const double Laminar = (LaminarConstantTemperature + LaminarConstantFlux) / 2;

    /// <summary>Laminar below.</summary>
    internal const double LaminarEnd = 2300;

    /// <summary>Turbulent above.</summary>
    internal const double TurbulentStart = 4000;

    /// <summary>Source and uncertainty of <see cref="Nusselt"/>.</summary>
    public static Correlation NusseltCorrelation { get; } = new(
        "Gnielinski (1976, transition 2013) single-phase heat transfer",
        "V. Gnielinski, Int. Chem. Eng. 16, 1976, 359-368; V. Gnielinski, Int. J. Heat Mass Transfer 63, 2013, 134-140",
        0.10,
        "Re 0 to 5e6, Pr 0.5 to 2000, fully developed; property variation across the film not included");

    /// <summary>Source and uncertainty of <see cref="NusseltCoiled"/>.</summary>
    public static Correlation NusseltCoiledCorrelation { get; } = new(
        "Gnielinski (1986) heat transfer in coiled tubes",
        "V. Gnielinski, Proc. 8th Int. Heat Transfer Conf., San Francisco 1986, 2847-2854; E. F. Schmidt, Chem.-Ing.-Tech. 39, 1967, 781-789; constants from memory",
        0.15,
        "bore over coil 0.012 to 0.2; linear to the straight tube below 0.01 (our rule)");

    /// <summary>
    /// Nu of a straight tube: 4.01 below Re 2300; Gnielinski above Re 4000,
    /// Nu = (f/8)(Re - 1000) Pr / [1 + 12.7 (f/8)^(1/2) (Pr^(2/3) - 1)]; between, linear in Re from one to the other.
    /// </summary>
    /// <param name="reynolds">G D / viscosity, at least 0.</param>
    /// <param name="prandtl">0.5 to 2000.</param>
    /// <param name="darcyFriction">Darcy friction factor at this Reynolds number, from <see cref="Friction"/>; not used when laminar.</param>
    /// <returns>Nusselt number on the bore. One standard deviation 10 %.</returns>
    /// <remarks>Sources: Gnielinski (1976), equation 21 in the English edition from memory; Gnielinski (2013) for the transition.</remarks>
    public static double Nusselt(double reynolds, double prandtl, double darcyFriction)
    {
        FlowGuard.NotNegative(reynolds, nameof(reynolds), "(dimensionless)");
        FlowGuard.Positive(prandtl, nameof(prandtl), "(dimensionless)");
        if (reynolds <= LaminarEnd)
        {
            return Laminar;
        }

        FlowGuard.Positive(darcyFriction, nameof(darcyFriction), "(dimensionless)");
        double turbulent = Gnielinski(Math.Max(reynolds, TurbulentStart), prandtl, darcyFriction);
        return Transition(reynolds, Laminar, turbulent);
    }

    /// <summary>
    /// Nu of a coiled tube. Laminar: 3.66 + 0.08 [1 + 0.8 (D/Dc)^0.9] Re^m Pr^(1/3), m = 0.5 + 0.2903 (D/Dc)^0.194; turbulent above
    /// Re 22000: <see cref="CoilNusselt.GnielinskiTurbulent"/>; between the coil's transition and 22000, linear in Re.
    /// </summary>
    /// <param name="reynolds">G D / viscosity, at least 0.</param>
    /// <param name="prandtl">0.5 to 2000.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 (straight, smooth) to 0.5; data 0.012 to 0.2.</param>
    /// <returns>Nusselt number on the bore. One standard deviation 15 %.</returns>
    /// <remarks>Source: Gnielinski (1986), after Schmidt (1967). Below D/Dc = 0.01: linear in D/Dc to the smooth straight tube, our rule.</remarks>
    public static double NusseltCoiled(double reynolds, double prandtl, double diameterOverCoil)
    {
        FlowGuard.NotNegative(reynolds, nameof(reynolds), "(dimensionless)");
        FlowGuard.Positive(prandtl, nameof(prandtl), "(dimensionless)");
        FlowGuard.Curvature(diameterOverCoil, nameof(diameterOverCoil));
        const double leastCurvature = 0.01;
        if (diameterOverCoil >= leastCurvature)
        {
            return CoilNusselt.Gnielinski(reynolds, prandtl, diameterOverCoil);
        }

        double friction = reynolds > LaminarEnd ? Friction.Churchill(reynolds, 0) : 1;
        double straight = Nusselt(reynolds, prandtl, friction);
        double coiled = diameterOverCoil == 0 ? straight : CoilNusselt.Gnielinski(reynolds, prandtl, leastCurvature);
        return straight + ((coiled - straight) * diameterOverCoil / leastCurvature);
    }

    /// <summary>Gnielinski's turbulent form alone.</summary>
    /// <param name="reynolds">4000 to 5e6.</param>
    /// <param name="prandtl">0.5 to 2000.</param>
    /// <param name="darcyFriction">Darcy friction factor.</param>
    /// <returns>Nusselt number; one standard deviation 10 %.</returns>
    public static double Gnielinski(double reynolds, double prandtl, double darcyFriction)
    {
        double eighth = darcyFriction / 8;
        return eighth * (reynolds - 1000) * prandtl / (1 + (12.7 * Math.Sqrt(eighth) * (Math.Pow(prandtl, 2.0 / 3) - 1)));
    }

    /// <summary>Nu = 0.023 Re^0.8 Pr^n. The convective part inside the two-phase correlations, which were fitted with it; not used for one phase.</summary>
    /// <param name="reynolds">Above 10000 for one phase.</param>
    /// <param name="prandtl">0.7 to 160.</param>
    /// <param name="exponent">n: 0.4 when the fluid is heated (and inside two-phase correlations), 0.3 when cooled.</param>
    /// <returns>Nusselt number; about 15 % (our assumption).</returns>
    /// <remarks>Source: F. W. Dittus, L. M. K. Boelter, Univ. Calif. Publ. Eng. 2 (1930) 443, in the form of McAdams.</remarks>
    public static double DittusBoelter(double reynolds, double prandtl, double exponent = 0.4) =>
        0.023 * Math.Pow(reynolds, 0.8) * Math.Pow(prandtl, exponent);

    /// <summary>Linear in Re from the laminar value at 2300 to the turbulent one at 4000 (Gnielinski 2013).</summary>
    internal static double Transition(double reynolds, double laminar, double turbulent)
    {
        double share = Math.Clamp((reynolds - LaminarEnd) / (TurbulentStart - LaminarEnd), 0, 1);
        return ((1 - share) * laminar) + (share * turbulent);
    }
}
