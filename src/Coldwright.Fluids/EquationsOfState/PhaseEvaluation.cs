namespace Coldwright.Fluids.EquationsOfState;

/// <summary>
/// One homogeneous phase evaluated again and again: first an isotherm and composition, then densities on it.
/// With psi = rho alphar as function of the molar concentrations rho_i, the work arrays hold
/// <see cref="G"/>[i] = d psi/d rho_i (residual chemical potential over RT) and
/// <see cref="H"/>[i,j] = rho d2 psi/(d rho_i d rho_j). Not thread-safe; allocates nothing after construction.
/// </summary>
public abstract class PhaseEvaluation
{
    /// <summary>Number of components.</summary>
    public int Count { get; }
    /// <summary>Gas constant, J/(mol K).</summary>
    public double GasConstant { get; }
    /// <summary>Temperature of the isotherm, K.</summary>
    public double Temperature { get; protected set; }
    /// <summary>Mole fractions of the isotherm.</summary>
    public double[] X { get; }
    /// <summary>d psi/d rho_i at the last density, dimensionless.</summary>
    public double[] G { get; }
    /// <summary>rho d2 psi/(d rho_i d rho_j) at the last density, dimensionless, row-major.</summary>
    public double[] H { get; }
    /// <summary>T d2 psi/(dT d rho_i) at the last density (after <see cref="Thermal"/>), dimensionless.</summary>
    public double[] GTemperature { get; }
    /// <summary>alphar at the last density.</summary>
    public double A { get; protected set; }
    /// <summary>
    /// Sum of the absolute terms of <see cref="A"/> at the last density: times the machine precision it is the rounding to
    /// expect there. Some pure equations are sums of terms thousands of times larger than the sum. 0: not tracked.
    /// </summary>
    public double AMagnitude { get; protected set; }
    /// <summary>T d alphar/dT at the last density.</summary>
    public double ATemperature { get; protected set; }
    /// <summary>T2 d2 alphar/dT2 at the last density (after <see cref="Caloric"/>).</summary>
    public double ATemperature2 { get; protected set; }
    /// <summary>T rho d2 alphar/(dT d rho) at the last density (after <see cref="Caloric"/>).</summary>
    public double ATemperatureDensity { get; protected set; }
    /// <summary>rho d alphar/d rho at the last density.</summary>
    public double ADensity { get; protected set; }
    /// <summary>rho2 d2 alphar/d rho2 at the last density.</summary>
    public double ADensity2 { get; protected set; }
    /// <summary>Highest density at which roots are sought, mol/m3 (see docs/theory/density-roots.md).</summary>
    public double DensityLimit { get; protected set; }
    /// <summary>A typical density that tells vapour from liquid where there is only one root, mol/m3.</summary>
    public double DividingDensity { get; protected set; }
    /// <summary>Roots that were met and refused by the admissibility rule since construction.</summary>
    public long RejectedRoots { get; internal set; }

    /// <summary>Creates the arrays.</summary>
    protected PhaseEvaluation(int count, double gasConstant)
    {
        (Count, GasConstant) = (count, gasConstant);
        X = new double[count];
        G = new double[count];
        H = new double[count * count];
        GTemperature = new double[count];
    }

    /// <summary>Fixes temperature (K) and mole fractions; every later call is on this isotherm.</summary>
    public abstract void SetIsotherm(double temperatureK, ReadOnlySpan<double> x);

    /// <summary>
    /// p/(RT) in mol/m3 and its slope with density (dimensionless) at a density in mol/m3: the density solver's inner loop.
    /// </summary>
    public abstract double ReducedPressure(double density, out double slope);

    /// <summary>Fills <see cref="A"/>, <see cref="ADensity"/>, <see cref="ADensity2"/>, <see cref="ATemperature"/> and <see cref="G"/>.</summary>
    public abstract void Gradient(double density);

    /// <summary>As <see cref="Gradient"/>, and <see cref="H"/>.</summary>
    public abstract void Hessian(double density);

    /// <summary>As <see cref="Hessian"/> and <see cref="Caloric"/> together, and <see cref="GTemperature"/>.</summary>
    public abstract void Thermal(double density);

    /// <summary>Fills all temperature derivatives as well as <see cref="A"/> and the density derivatives.</summary>
    public abstract void Caloric(double density);

    /// <summary>
    /// The root of a branch next to a known density, when the model can prove that it lies on that branch; otherwise false and
    /// the roots are sought afresh.
    /// </summary>
    public virtual bool TryRootNear(double pressurePa, bool vapour, double guess, out double density)
    {
        density = double.NaN;
        return false;
    }

    /// <summary>
    /// A model that can name its admissible roots in closed form does so here; otherwise false and the general
    /// search is used. NaN: that branch has no root.
    /// </summary>
    public virtual bool TryClosedFormRoots(double pressurePa, out double vapourDensity, out double liquidDensity)
    {
        vapourDensity = liquidDensity = double.NaN;
        return false;
    }
}
