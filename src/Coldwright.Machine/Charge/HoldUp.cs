using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Flow;
using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Charge;

/// <summary>
/// What passages hold of each substance, slip included: vapour fills the share of the cross-section that
/// <see cref="VoidFraction.Rouhani"/> gives, liquid the rest, each with its own composition. Where nothing flows both phases stand as
/// they were let in (no slip). Adds up over many cells; not thread-safe.
/// </summary>
/// <param name="model">Substances of the stream.</param>
/// <param name="liquidScale">Factor on the liquid's share of the cross-section over the vapour's; 1 is the correlation, others carry its uncertainty.</param>
public sealed class HoldUp(HelmholtzModel model, double liquidScale = 1)
{
    private const double LeastQuality = 1e-6;
    private readonly double[] _y = new double[model.Count], _x = new double[model.Count];

    /// <summary>Moles of each substance so far.</summary>
    public double[] Moles { get; } = new double[model.Count];
    /// <summary>Of them as liquid.</summary>
    public double[] LiquidMoles { get; } = new double[model.Count];

    /// <summary>Adds a cell.</summary>
    /// <param name="table">Properties of the stream.</param>
    /// <param name="molarEnthalpy">At its middle, J/mol.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="volumeM3">m3.</param>
    /// <param name="massFlux">kg/(m2 s); 0: at rest.</param>
    public void Add(StreamTable table, double molarEnthalpy, double pressurePa, double volumeM3, double massFlux)
    {
        var p = table.At(molarEnthalpy, pressurePa);
        table.Compositions(molarEnthalpy, pressurePa, _y, _x);
        double vapour = VapourShare(p, massFlux);
        Add(_y, vapour * volumeM3 * p.Vapour.Density, false);
        Add(_x, (1 - vapour) * volumeM3 * p.Liquid.Density, true);
    }

    /// <summary>Adds a volume of gas.</summary>
    /// <param name="z">Its mole fractions.</param>
    /// <param name="molarDensity">mol/m3.</param>
    /// <param name="volumeM3">m3.</param>
    public void AddGas(ReadOnlySpan<double> z, double molarDensity, double volumeM3)
    {
        for (int i = 0; i < z.Length; i++) Moles[i] += molarDensity * volumeM3 * z[i];
    }

    private void Add(double[] fractions, double kilograms, bool liquid)
    {
        double mass = 0;
        for (int i = 0; i < fractions.Length; i++) mass += fractions[i] * model.Substances[i].MolarMass;
        for (int i = 0; i < fractions.Length; i++)
        {
            double moles = kilograms / mass * fractions[i];
            Moles[i] += moles;
            if (liquid) LiquidMoles[i] += moles;
        }
    }

    private double VapourShare(in StreamPoint p, double massFlux)
    {
        double x = p.Quality;
        if (x <= LeastQuality) return 0;
        if (x >= 1 - LeastQuality) return 1;
        // next to a critical point the two phases are one
        if (!(p.Liquid.Density > p.Vapour.Density)) return x;
        double share = massFlux > 0
            ? VoidFraction.Rouhani(massFlux, x, p.Liquid.Density, p.Vapour.Density, p.SurfaceTension)
            : VoidFraction.Homogeneous(x, p.Liquid.Density, p.Vapour.Density);
        return share / (share + liquidScale * (1 - share));
    }
}
