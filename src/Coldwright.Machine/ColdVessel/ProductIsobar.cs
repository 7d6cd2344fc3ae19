using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Machine.ColdVessel;

/// <summary>One phase of the product along an isobar: nodes evenly spaced in temperature, cubics (Lagrange, four nodes) between them.</summary>
internal sealed class ProductIsobar
{
    private const int Columns = 5;

    private readonly double[] _values;
    private readonly int _nodes;
    private readonly double _step;

    /// <param name="source">Flash, transport and composition.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="coldestK">Lower end, K.</param>
    /// <param name="warmestK">Upper end, K, above the lower.</param>
    /// <param name="nodes">Four or more.</param>
    /// <param name="liquid">Which phase is wanted should the flash find two; null: only one may be found.</param>
    /// <param name="end">The known end at saturation: of a liquid the warm one, of a gas the cold one.</param>
    /// <param name="cancel">Cancels the work.</param>
    public ProductIsobar(ProductSource source, double pressurePa, double coldestK, double warmestK, int nodes, bool? liquid, ProductProperties? end, CancellationToken cancel)
    {
        (ColdestK, WarmestK, _nodes) = (coldestK, warmestK, nodes);
        _step = (warmestK - coldestK) / (nodes - 1);
        _values = new double[nodes * Columns];
        for (int i = 0; i < nodes; i++)
        {
            cancel.ThrowIfCancellationRequested();
            double t = i == nodes - 1 ? warmestK : coldestK + i * _step;
            // at saturation itself a flash may find either phase
            var p = end is { } known && i == (liquid is true ? nodes - 1 : 0) ? known : source.At(t, pressurePa, liquid, warm: i > 0);
            (_values[i * Columns], _values[i * Columns + 1], _values[i * Columns + 2], _values[i * Columns + 3], _values[i * Columns + 4]) =
                (p.MassEnthalpy, p.Density, p.Viscosity, p.Conductivity, p.HeatCapacity);
        }
    }

    /// <summary>Lower end, K.</summary>
    public double ColdestK { get; }
    /// <summary>Upper end, K.</summary>
    public double WarmestK { get; }

    /// <summary>The phase at a temperature (K); outside the range that of the end.</summary>
    public ProductProperties At(double temperatureK)
    {
        double place = (Math.Clamp(temperatureK, ColdestK, WarmestK) - ColdestK) / _step;
        int i = Math.Clamp((int)place - 1, 0, _nodes - 4);
        double u = place - i, a = u - 1, b = u - 2, c = u - 3;
        double w0 = -a * b * c / 6, w1 = u * b * c / 2, w2 = -u * a * c / 2, w3 = u * a * b / 6;
        var v = _values.AsSpan(i * Columns, 4 * Columns);
        double Of(ReadOnlySpan<double> s, int k) => w0 * s[k] + w1 * s[k + Columns] + w2 * s[k + 2 * Columns] + w3 * s[k + 3 * Columns];
        return new ProductProperties(Of(v, 0), Of(v, 1), Of(v, 2), Of(v, 3), Of(v, 4));
    }
}

/// <summary>Properties of the product from its model; used while tables are made.</summary>
internal sealed class ProductSource(Flash flash, TransportModel transport, double[] z)
{
    private readonly List<string> _warnings = [];

    /// <summary>What a person must be told; each once.</summary>
    public IReadOnlyList<string> Warnings => _warnings;

    /// <summary>One phase at temperature (K) and pressure (Pa).</summary>
    public ProductProperties At(double temperatureK, double pressurePa, bool? liquid, bool warm)
    {
        var state = flash.TrySolve(temperatureK, pressurePa, z, warm) ? flash.State() : flash.TemperaturePressure(temperatureK, pressurePa, z);
        if (liquid is null && state.Phases.Count > 1)
            throw new SolveException(SolveReport.Telling(SolveStatus.Outside, 0, double.NaN,
                $"the product splits into {state.PhaseNames} at {SpokenAmount.Temperature(temperatureK, "0.##")} and {SpokenAmount.Pressure(pressurePa, "0.###")}, above the mean critical pressure of its components; no model of the cold vessel covers that: lower its pressure"));
        return Of(temperatureK, liquid is true ? state.Phases[^1] : state.Phases[0]);
    }

    /// <summary>One phase of a state.</summary>
    public ProductProperties Of(double temperatureK, PhaseState phase)
    {
        double[] x = [.. phase.Composition];
        var found = transport.At(temperatureK, phase.MolarDensity, x);
        foreach (string? warning in new[] { found.Viscosity.Warning, found.Conductivity.Warning })
            if (warning is not null && !_warnings.Contains(warning)) _warnings.Add(warning);
        return new ProductProperties(phase.MolarEnthalpy / phase.MolarMass, phase.MolarDensity * phase.MolarMass, found.Viscosity.Value, found.Conductivity.Value, phase.MolarHeatCapacity / phase.MolarMass);
    }
}
