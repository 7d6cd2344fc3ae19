namespace Coldwright.Fluids.Transport;

/// <summary>
/// Gas mixtures at zero density from the pure gases: viscosity by C. R. Wilke, J. Chem. Phys. 18 (1950) 517; conductivity by
/// E. A. Mason, S. C. Saxena, Phys. Fluids 1 (1958) 361, with the same weights (their factor 1.065 taken as 1, so that a
/// pure gas divided into equal parts stays what it is). Both interpolate the pure values; common practice finds them within a
/// few per cent for gases of similar mass, and up to 10 % too high with hydrogen or helium.
/// </summary>
internal static class DiluteMixture
{
    /// <summary>sum_i x_i property_i / sum_j x_j phi_ij, phi_ij = (1 + (eta_i/eta_j)^(1/2) (M_j/M_i)^(1/4))^2 / (8 (1 + M_i/M_j))^(1/2).</summary>
    /// <param name="x">Mole fractions.</param>
    /// <param name="molarMass">kg/mol.</param>
    /// <param name="viscosity">Of the pure gases, Pa s; sets the weights.</param>
    /// <param name="property">What is mixed: viscosity itself or conductivity.</param>
    public static double Mix(ReadOnlySpan<double> x, ReadOnlySpan<double> molarMass, ReadOnlySpan<double> viscosity, ReadOnlySpan<double> property)
    {
        double sum = 0;
        for (int i = 0; i < x.Length; i++)
        {
            if (!(x[i] > 0)) continue;
            double weight = 0;
            for (int j = 0; j < x.Length; j++)
            {
                if (!(x[j] > 0)) continue;
                double ratio = molarMass[i] / molarMass[j], root = 1 + Math.Sqrt(viscosity[i] / viscosity[j]) / Math.Sqrt(Math.Sqrt(ratio));
                weight += x[j] * root * root / Math.Sqrt(8 * (1 + ratio));
            }
            sum += x[i] * property[i] / weight;
        }
        return sum;
    }
}
