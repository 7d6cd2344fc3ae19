using Coldwright.Machine.Flow;
using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Adds up what the loop holds of each substance, slip included, by the same rule as <see cref="Machine.Charge.HoldUp"/>. Not thread-safe.</summary>
internal sealed class LoopContent
{
    private const double LeastQuality = 1e-6;
    private readonly double[] _vapour, _liquid;

    /// <param name="species">Number of substances.</param>
    public LoopContent(int species) => (Moles, _vapour, _liquid) = (new double[species], new double[species], new double[species]);

    /// <summary>mol of each.</summary>
    public double[] Moles { get; }

    /// <summary>mol.</summary>
    public double Total => Moles.Sum();

    /// <summary>Adds a volume through which a stream runs.</summary>
    /// <param name="table">Its properties.</param>
    /// <param name="enthalpy">J/mol.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="volumeM3">m3.</param>
    /// <param name="massFlux">kg/(m2 s); 0: at rest.</param>
    /// <param name="liquidScale">Factor on the liquid's share of the cross-section.</param>
    public void Add(StreamTable table, double enthalpy, double pressurePa, double volumeM3, double massFlux, double liquidScale)
    {
        var p = table.At(enthalpy, pressurePa);
        double x = p.Quality;
        if (x <= LeastQuality || x >= 1 - LeastQuality || !(p.VapourFraction is > 0 and < 1) || !(p.Liquid.Density > p.Vapour.Density))
        {
            AddGas(table.Composition, volumeM3 * p.Density / p.MolarMass);
            return;
        }
        double share = massFlux > 0 ? VoidFraction.Rouhani(massFlux, x, p.Liquid.Density, p.Vapour.Density, p.SurfaceTension) : VoidFraction.Homogeneous(x, p.Liquid.Density, p.Vapour.Density);
        share /= share + liquidScale * (1 - share);
        double light = p.MolarMass * x / p.VapourFraction, heavy = p.MolarMass * (1 - x) / (1 - p.VapourFraction);
        double above = volumeM3 * share * p.Vapour.Density / light, below = volumeM3 * (1 - share) * p.Liquid.Density / heavy;
        table.Compositions(enthalpy, pressurePa, _vapour, _liquid);
        for (int i = 0; i < Moles.Length; i++) Moles[i] += above * _vapour[i] + below * _liquid[i];
    }

    /// <summary>Adds moles of one composition.</summary>
    public void AddGas(IReadOnlyList<double> z, double moles)
    {
        for (int i = 0; i < Moles.Length; i++) Moles[i] += moles * z[i];
    }

    /// <summary>Adds the cells of a march.</summary>
    /// <param name="species">mol, cell after cell.</param>
    public void AddCells(ReadOnlySpan<double> species)
    {
        for (int k = 0; k < species.Length; k += Moles.Length)
            for (int i = 0; i < Moles.Length; i++) Moles[i] += species[k + i];
    }
}
