namespace Coldwright.Machine.Flow;

/// <summary>Published laws of friction in coiled tubes, one regime each; <see cref="Friction.Coiled"/> joins two of them.</summary>
public static class CoilFriction
{
    /// <summary>Dean number De = Re sqrt(D/Dc).</summary>
    /// <param name="reynolds">G D / viscosity.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0 to 0.5.</param>
    public static double Dean(double reynolds, double diameterOverCoil) => reynolds * Math.Sqrt(diameterOverCoil);

    /// <summary>Laminar: f = (64/Re) / (1 - [1 - (11.6/De)^0.45]^(1/0.45)) above De = 11.6, straight tube below. Default.</summary>
    /// <param name="reynolds">G D / viscosity, above 0, below the coil's transition.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter; De up to 2000.</param>
    /// <returns>Darcy friction factor; about 5 %.</returns>
    /// <remarks>Source: C. M. White, Proc. R. Soc. A 123 (1929) 645.</remarks>
    public static double White(double reynolds, double diameterOverCoil)
    {
        double dean = Dean(reynolds, diameterOverCoil);
        double straight = 64 / reynolds;
        return dean <= 11.6 ? straight : straight / (1 - Math.Pow(1 - Math.Pow(11.6 / dean, 0.45), 1 / 0.45));
    }

    /// <summary>Laminar: f = (64/Re) 0.108 sqrt(De) / (1 - 3.253/sqrt(De)); straight tube below De = 42.3, where the two meet.</summary>
    /// <param name="reynolds">G D / viscosity, above 0.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter.</param>
    /// <returns>Darcy friction factor; about 5 %. For comparison.</returns>
    /// <remarks>Source: Y. Mori, W. Nakayama, Int. J. Heat Mass Transfer 8 (1965) 67.</remarks>
    public static double MoriNakayamaLaminar(double reynolds, double diameterOverCoil)
    {
        double root = Math.Sqrt(Dean(reynolds, diameterOverCoil));
        double straight = 64 / reynolds;
        return root * root < 42.328 ? straight : straight * 0.108 * root / (1 - (3.253 / root));
    }

    /// <summary>Laminar: f = (64/Re) (1 + 0.14 (D/Dc)^0.97 Re^(1 - 0.644 (D/Dc)^0.312)).</summary>
    /// <param name="reynolds">G D / viscosity, above 0.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter.</param>
    /// <returns>Darcy friction factor; about 10 %. For comparison.</returns>
    /// <remarks>Source: E. F. Schmidt, Chem.-Ing.-Tech. 39 (1967) 781.</remarks>
    public static double SchmidtLaminar(double reynolds, double diameterOverCoil) =>
        64 / reynolds * (1 + (0.14 * Math.Pow(diameterOverCoil, 0.97)
            * Math.Pow(reynolds, 1 - (0.644 * Math.Pow(diameterOverCoil, 0.312)))));

    /// <summary>Turbulent, smooth: f = 0.3 sqrt(D/Dc) X (1 + 0.112 X), X = [Re (D/Dc)^2]^(-0.2).</summary>
    /// <param name="reynolds">G D / viscosity, above the coil's transition.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, above 0 (no straight limit).</param>
    /// <returns>Darcy friction factor; about 5 %. For comparison.</returns>
    /// <remarks>Source: Y. Mori, W. Nakayama, Int. J. Heat Mass Transfer 10 (1967) 37.</remarks>
    public static double MoriNakayamaTurbulent(double reynolds, double diameterOverCoil)
    {
        double x = Math.Pow(reynolds * diameterOverCoil * diameterOverCoil, -0.2);
        return 0.3 * Math.Sqrt(diameterOverCoil) * x * (1 + (0.112 * x));
    }

    /// <summary>Turbulent: the amount by which curvature raises the straight-tube friction, 0.03 (D/Dc)^(1/2). Default: it lies between the other two laws.</summary>
    /// <param name="diameterOverCoil">Bore over mean coil diameter, 0.003 to 0.15; 0 at zero.</param>
    /// <returns>Addition to the Darcy friction factor; about 5 % of the whole.</returns>
    /// <remarks>Source: P. Mishra, S. N. Gupta, Ind. Eng. Chem. Process Des. Dev. 18 (1979) 130, Re up to 1e5; constant from memory.</remarks>
    public static double MishraGuptaRise(double diameterOverCoil) => 0.03 * Math.Sqrt(diameterOverCoil);

    /// <summary>Turbulent: the factor by which curvature raises the straight-tube friction, 1 + 0.03 De^0.27. For comparison.</summary>
    /// <param name="reynolds">G D / viscosity; data 2500 &lt; De &lt; 15000.</param>
    /// <param name="diameterOverCoil">Bore over mean coil diameter; 1 at zero.</param>
    /// <returns>Dimensionless factor; about 5 %.</returns>
    /// <remarks>Source: M. M. Mandal, K. D. P. Nigam, Ind. Eng. Chem. Res. 48 (2009) 9318.</remarks>
    public static double MandalNigamFactor(double reynolds, double diameterOverCoil) =>
        1 + (0.03 * Math.Pow(Dean(reynolds, diameterOverCoil), 0.27));
}
