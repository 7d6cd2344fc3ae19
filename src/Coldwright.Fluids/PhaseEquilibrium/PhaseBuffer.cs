namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>One phase while it is being solved for: composition, density, fugacity coefficients. Reused, never handed out.</summary>
internal sealed class PhaseBuffer(int count)
{
    public readonly double[] X = new double[count];
    public readonly double[] LnPhi = new double[count];
    /// <summary>ln x of the last evaluation (not of trial phases).</summary>
    public readonly double[] LnX = new double[count];
    /// <summary>n d ln f_i/d n_j at constant T and p (row-major), after <see cref="FlashWorkspace.Derivatives"/>.</summary>
    public readonly double[] C = new double[count * count];
    /// <summary>Partial molar residual enthalpies over RT, after <see cref="FlashWorkspace.ThermalDerivatives"/>.</summary>
    public readonly double[] PartialEnthalpy = new double[count];
    /// <summary>Residual heat capacity at constant pressure over R, after <see cref="FlashWorkspace.ThermalDerivatives"/>.</summary>
    public double ResidualHeatCapacity;
    /// <summary>
    /// sum x_i ln phi_i, computed as alphar - ln Z + Z - 1: stationary in the density, so that the rounding of the root
    /// does not disturb comparisons of Gibbs energies.
    /// </summary>
    public double ResidualGibbs;
    /// <summary>Residual enthalpy over RT.</summary>
    public double ResidualEnthalpy;
    /// <summary>Rounding to expect in <see cref="ResidualGibbs"/>.</summary>
    public double Rounding;
    public double Fraction;
    public double Density = double.NaN;
    public double DividingDensity;
    public Branch Branch;

    public void CopyFrom(PhaseBuffer other)
    {
        other.X.CopyTo(X, 0);
        other.LnPhi.CopyTo(LnPhi, 0);
        other.LnX.CopyTo(LnX, 0);
        (Fraction, Density, DividingDensity, Branch) = (other.Fraction, other.Density, other.DividingDensity, other.Branch);
        (ResidualGibbs, ResidualEnthalpy, Rounding) = (other.ResidualGibbs, other.ResidualEnthalpy, other.Rounding);
    }

    /// <summary>Same composition and same density: the same phase twice.</summary>
    public bool Coincides(PhaseBuffer other, double tolerance)
    {
        if (Math.Abs(Density - other.Density) > Math.Sqrt(tolerance) * Math.Max(Density, other.Density)) return false;
        double distance = 0;
        for (int i = 0; i < X.Length; i++)
        {
            double d = Math.Sqrt(X[i]) - Math.Sqrt(other.X[i]);
            distance += d * d;
        }
        return distance < tolerance;
    }
}
