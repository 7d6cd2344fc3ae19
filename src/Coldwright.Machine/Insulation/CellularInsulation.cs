using Coldwright.Materials.Solids;

namespace Coldwright.Machine.Insulation;

/// <summary>Foam, wool or powder as three parallel ways for heat: its solid, the gas in it, radiation through it.</summary>
/// <remarks>
/// <para>k = k_s + k_r + (1 - phi) k_gas with phi the solid's share of the volume.</para>
/// <para>k_s = phi k_solid (2 - f)/3, f the share of the solid in the struts: M. A. Schuetz, L. R. Glicksman, J. Cell. Plast. 20 (1984) 114.
/// k_r = 16 sigma T^3/(3 K), K the Rosseland mean extinction: C.-J. Tseng, M. Yamaguchi, T. Ohmori, Cryogenics 37 (1997) 305, who measured
/// polyurethane foam from 300 to 20 K; evacuation took away up to 70 %, radiation was 10 to 20 % at room temperature. Gas:
/// <see cref="CellGasConduction"/>.</para>
/// <para>One standard deviation 12 %: our judgement from solid and extinction, which are seldom known better.</para>
/// </remarks>
/// <param name="Name">In words, for reports.</param>
/// <param name="DensityKgPerM3">Density of the whole, kg/m3, above 0.</param>
/// <param name="SolidDensityKgPerM3">Density of the solid, kg/m3, above that of the whole.</param>
/// <param name="SolidConductivity">Conductivity of the solid at 293 K, W/(m K), above 0.</param>
/// <param name="SolidExponent">It falls as (T/293 K)^n; n 0 to 1.</param>
/// <param name="StrutShare">f, 0 to 1.</param>
/// <param name="CellM">Distance between cell walls, m, 1e-9 to 0.01.</param>
/// <param name="ExtinctionPerM">K, 1/m, above 0.</param>
/// <param name="Gas">What fills the cells.</param>
public sealed record CellularInsulation(
    string Name, double DensityKgPerM3, double SolidDensityKgPerM3, double SolidConductivity, double SolidExponent, double StrutShare, double CellM, double ExtinctionPerM, CellGas Gas)
{
    /// <summary>Stefan-Boltzmann constant, W/(m2 K4), CODATA 2018.</summary>
    internal const double StefanBoltzmann = 5.670374419e-8;

    private const double LowK = 40;
    private const double HighK = 340;
    private const double StepK = 5;

    /// <summary>
    /// Rigid polyurethane foam of 32 kg/m3: cells of 0.3 mm, extinction 1900 1/m, solid 1200 kg/m3 and 0.26 W/(m K), four fifths in the struts.
    /// Common practice; with air it gives 0.034 W/(m K) at 293 K, as J.-W. Wu, W.-F. Sung, H.-S. Chu, Int. J. Heat Mass Transfer 42 (1999) 2211 measured.
    /// </summary>
    /// <param name="gas">What fills the cells.</param>
    public static CellularInsulation Polyurethane(CellGas gas) => new($"polyurethane foam, {gas.Name} in the cells", 32, 1200, 0.26, 0.5, 0.8, 3e-4, 1900, gas);

    /// <summary>The three ways at one temperature, W/(m K).</summary>
    /// <param name="temperatureK">Temperature, K, above 0.</param>
    public CellularSplit At(double temperatureK)
    {
        Validate();
        return At(temperatureK, new CellGasConduction(Gas));
    }

    /// <summary>The sum against temperature, 40 to 340 K, as a curve with its integral; straight lines between points every 5 K.</summary>
    public MaterialProperty Conductivity()
    {
        Validate();
        var conduction = new CellGasConduction(Gas);
        var count = (int)((HighK - LowK) / StepK) + 1;
        var temperature = Enumerable.Range(0, count).Select(i => LowK + i * StepK).ToArray();
        var value = temperature.Select(t => At(t, conduction).Total).ToArray();
        return new MaterialProperty($"conductivity of {Name}", "Schuetz and Glicksman 1984, Tseng, Yamaguchi and Ohmori 1997, Kaganer 1969; see the theory page on insulation",
            Provenance.Published, 0.12, "", [new PointsCurve(temperature, value)]);
    }

    /// <summary>A sentence to show when half of the gas or more condenses by 100 K; else null.</summary>
    public string? Caveat
    {
        get
        {
            const double coldK = 100;
            if (!Gas.Closed || Gas.PressurePa == 0) return null;
            var kept = new CellGasConduction(Gas).PressurePa(coldK) / (Gas.PressurePa * coldK / Gas.FillTemperatureK);
            return kept >= 0.5 ? null : $"{Name}: most of the gas condenses in the cold part and stops conducting; measured foams hold some air that does not, so the leak is a lower bound";
        }
    }

    private CellularSplit At(double t, CellGasConduction conduction)
    {
        var phi = DensityKgPerM3 / SolidDensityKgPerM3;
        var solid = phi * SolidConductivity * Math.Pow(t / 293, SolidExponent) * (2 - StrutShare) / 3;
        var radiation = 16 * StefanBoltzmann * t * t * t / (3 * ExtinctionPerM);
        return new(solid, radiation, (1 - phi) * conduction.Conductivity(t, CellM));
    }

    private void Validate()
    {
        Check("the density", DensityKgPerM3, 1, 2000, "kg/m3");
        Check("the density of the solid", SolidDensityKgPerM3, DensityKgPerM3, 10000, "kg/m3");
        Check("the conductivity of the solid", SolidConductivity, 1e-3, 500, "W/(m K)");
        Check("the exponent of the solid", SolidExponent, 0, 1, "");
        Check("the share of the struts", StrutShare, 0, 1, "");
        Check("the cell", CellM, 1e-9, 0.01, "m");
        Check("the extinction", ExtinctionPerM, 10, 1e7, "1/m");
    }

    private static void Check(string name, double value, double low, double high, string unit)
    {
        if (!(value >= low && value <= high)) throw new ArgumentException(FormattableString.Invariant($"{name} must be {low} to {high} {unit}, got {value} {unit}"));
    }
}

/// <summary>Parts of a conductivity, W/(m K).</summary>
/// <param name="Solid">Through the solid.</param>
/// <param name="Radiation">Radiation.</param>
/// <param name="Gas">Through the gas.</param>
public readonly record struct CellularSplit(double Solid, double Radiation, double Gas)
{
    /// <summary>Their sum, W/(m K).</summary>
    public double Total => Solid + Radiation + Gas;
}
