using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>Published Nusselt numbers in coiled tubes; <see cref="SinglePhase.NusseltCoiled"/> uses Gnielinski's.</summary>
public static class CoilNusselt
{
    private const double FullyTurbulent = 22000;

    /// <summary>All regimes: laminar, linear in Re between the transition and 22000, turbulent. Default.</summary>
    /// <param name="reynolds">G D / viscosity, at least 0.</param>
    /// <param name="prandtl">0.5 to 2000.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0.01 to 0.2.</param>
    /// <returns>Nusselt number; 15 %. Tends to 3.66 at no flow.</returns>
    /// <remarks>Source: Gnielinski, 8th Int. Heat Transfer Conf. (1986) 2847; constants from memory.</remarks>
    public static double Gnielinski(double reynolds, double prandtl, double diameterOverCoil)
    {
        double end = Friction.CoiledTransitionReynolds(diameterOverCoil);
        if (reynolds <= end)
        {
            return SchmidtLaminar(reynolds, prandtl, diameterOverCoil);
        }

        double turbulent = GnielinskiTurbulent(Math.Max(reynolds, FullyTurbulent), prandtl, diameterOverCoil);
        if (reynolds >= FullyTurbulent)
        {
            return turbulent;
        }

        double laminar = SchmidtLaminar(end, prandtl, diameterOverCoil);
        return laminar + ((turbulent - laminar) * (reynolds - end) / (FullyTurbulent - end));
    }

    /// <summary>Laminar: 3.66 + 0.08 [1 + 0.8 (D/Dc)^0.9] Re^m Pr^(1/3), m = 0.5 + 0.2903 (D/Dc)^0.194.</summary>
    /// <param name="reynolds">G D / viscosity, up to the coil's transition.</param>
    /// <param name="prandtl">0.5 to 2000.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0.012 to 0.2.</param>
    /// <returns>Nusselt number; 15 %.</returns>
    /// <remarks>Source: Schmidt (1967), with the limit 3.66 used by Gnielinski (1986); constants from memory.</remarks>
    public static double SchmidtLaminar(double reynolds, double prandtl, double diameterOverCoil) =>
        SinglePhase.LaminarConstantTemperature + (0.08 * (1 + (0.8 * Math.Pow(diameterOverCoil, 0.9)))
            * Math.Pow(reynolds, 0.5 + (0.2903 * Math.Pow(diameterOverCoil, 0.194))) * Math.Cbrt(prandtl));

    /// <summary>Turbulent: (f/8) Re Pr / [1 + 12.7 (f/8)^(1/2) (Pr^(2/3) - 1)], f = 0.3164 Re^(-1/4) + 0.03 (D/Dc)^(1/2).</summary>
    /// <param name="reynolds">Above 22000.</param>
    /// <param name="prandtl">0.5 to 2000.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0.01 to 0.2.</param>
    /// <returns>Nusselt number; 15 %.</returns>
    /// <remarks>Source: Gnielinski (1986) with the friction of P. Mishra, S. N. Gupta, Ind. Eng. Chem. Process Des. Dev. 18 (1979) 130; from memory.</remarks>
    public static double GnielinskiTurbulent(double reynolds, double prandtl, double diameterOverCoil)
    {
        double eighth = ((0.3164 * Math.Pow(reynolds, -0.25)) + CoilFriction.MishraGuptaRise(diameterOverCoil)) / 8;
        return eighth * reynolds * prandtl / (1 + (12.7 * Math.Sqrt(eighth) * (Math.Pow(prandtl, 2.0 / 3) - 1)));
    }

    /// <summary>Turbulent: 0.023 [1 + 3.6 (1 - D/Dc)(D/Dc)^0.8] Re^0.8 Pr^(1/3). For comparison.</summary>
    /// <param name="reynolds">22000 to 150000.</param>
    /// <param name="prandtl">Near 0.7 and above.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0.012 to 0.2.</param>
    /// <returns>Nusselt number; 15 %.</returns>
    /// <remarks>Source: E. F. Schmidt, Chem.-Ing.-Tech. 39 (1967) 781.</remarks>
    public static double SchmidtTurbulent(double reynolds, double prandtl, double diameterOverCoil) =>
        0.023 * (1 + (3.6 * (1 - diameterOverCoil) * Math.Pow(diameterOverCoil, 0.8)))
            * Math.Pow(reynolds, 0.8) * Math.Cbrt(prandtl);

    /// <summary>
    /// Turbulent. Pr below 1: Pr / [26.2 (Pr^(2/3) - 0.074)] Re^(4/5) d^(1/10) [1 + 0.098 (Re d^2)^(-1/5)];
    /// else Pr^0.4/41 Re^(5/6) d^(1/12) [1 + 0.061 (Re d^2.5)^(-1/6)], d = D/Dc. For comparison.
    /// </summary>
    /// <param name="reynolds">Above the coil's transition.</param>
    /// <param name="prandtl">0.5 and above.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, above 0.</param>
    /// <returns>Nusselt number; about 10 %.</returns>
    /// <remarks>Source: Y. Mori, W. Nakayama, Int. J. Heat Mass Transfer 10 (1967) 37 and 681.</remarks>
    public static double MoriNakayama(double reynolds, double prandtl, double diameterOverCoil)
    {
        double d = diameterOverCoil;
        return prandtl < 1
            ? prandtl / (26.2 * (Math.Pow(prandtl, 2.0 / 3) - 0.074)) * Math.Pow(reynolds, 0.8) * Math.Pow(d, 0.1)
                * (1 + (0.098 * Math.Pow(reynolds * d * d, -0.2)))
            : Math.Pow(prandtl, 0.4) / 41 * Math.Pow(reynolds, 5.0 / 6) * Math.Pow(d, 1.0 / 12)
                * (1 + (0.061 * Math.Pow(reynolds * Math.Pow(d, 2.5), -1.0 / 6)));
    }

    /// <summary>Turbulent: 0.00619 Re^0.92 Pr^0.4 (1 + 3.455 D/Dc). For comparison.</summary>
    /// <param name="reynolds">5000 to 100000.</param>
    /// <param name="prandtl">0.7 to 5.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0.0267 to 0.0884.</param>
    /// <returns>Nusselt number; about 10 %.</returns>
    /// <remarks>Source: R. C. Xin, M. A. Ebadian, J. Heat Transfer 119 (1997) 467.</remarks>
    public static double XinEbadian(double reynolds, double prandtl, double diameterOverCoil) =>
        0.00619 * Math.Pow(reynolds, 0.92) * Math.Pow(prandtl, 0.4) * (1 + (3.455 * diameterOverCoil));
}
