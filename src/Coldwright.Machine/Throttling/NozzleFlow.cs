namespace Coldwright.Machine.Throttling;

/// <summary>
/// Acceleration from rest along a grid with a loss of K velocity heads: w^2/2 (1 + K) = integral of v dp, the kinetic energy
/// taken from the enthalpy. With K = 0 this is the isentropic nozzle, whatever the phases do.
/// </summary>
internal sealed class NozzleFlow
{
    private readonly ExpansionGrid _grid;

    /// <summary>Largest mass flux of the contraction, kg/(m2 s).</summary>
    public double GreatestFlux { get; }

    /// <summary>Pressure of the largest flux, Pa.</summary>
    public double GreatestFluxPressurePa { get; }

    /// <summary>True when the largest flux lies inside the grid and not at its low end.</summary>
    public bool Critical { get; }

    private readonly int _greatest;
    private readonly double[] _flux, _kinetic;

    public NozzleFlow(ExpansionGrid grid, double loss)
    {
        _grid = grid;
        int n = grid.Count;
        (_flux, _kinetic) = (new double[n], new double[n]);
        double v = grid.Rest[0], work = 0;
        for (int i = 1; i < n; i++)
        {
            // trapezium; the volume at the far end depends on the work itself, linearly
            double half = 0.5 * (grid.Pressure[i - 1] - grid.Pressure[i]), s = grid.Slope[i] / (1 + loss);
            work = (work + half * (v + grid.Rest[i])) / (1 + half * s);
            v = grid.Rest[i] - s * work;
            _kinetic[i] = work / (1 + loss);
            _flux[i] = Math.Sqrt(2 * _kinetic[i]) / v;
            if (_flux[i] > _flux[_greatest]) _greatest = i;
        }
        Critical = _greatest < n - 1;
        if (!Critical)
        {
            (GreatestFlux, GreatestFluxPressurePa) = (_flux[_greatest], grid.Pressure[_greatest]);
            return;
        }
        (GreatestFluxPressurePa, GreatestFlux) = Parabola.Peak(grid.Pressure, _flux, _greatest);
    }

    /// <summary>Pressure inside the entrance at a mass flux, Pa; NaN when the flux is more than the contraction passes.</summary>
    public double PressureAt(double flux)
    {
        if (!(flux < GreatestFlux)) return double.NaN;
        int i = 1;
        while (i <= _greatest && _flux[i] < flux) i++;
        if (i > _greatest) return GreatestFluxPressurePa;
        // the square of the flux is nearly linear in pressure within a cell: that of a liquid exactly
        double below = _flux[i - 1] * _flux[i - 1], share = (flux * flux - below) / (_flux[i] * _flux[i] - below);
        return _grid.Pressure[i - 1] + share * (_grid.Pressure[i] - _grid.Pressure[i - 1]);
    }

    /// <summary>Kinetic energy at a pressure (Pa), J/kg.</summary>
    public double KineticAt(double pressurePa)
    {
        int n = _grid.Count;
        if (pressurePa >= _grid.Pressure[0]) return 0;
        if (pressurePa <= _grid.Pressure[n - 1]) return _kinetic[n - 1];
        int low = 0, high = n - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_grid.Pressure[middle] >= pressurePa) low = middle; else high = middle;
        }
        double share = (_grid.Pressure[low] - pressurePa) / (_grid.Pressure[low] - _grid.Pressure[high]);
        return _kinetic[low] + share * (_kinetic[high] - _kinetic[low]);
    }

    /// <summary>Mass flux at a throat pressure (Pa), kg/(m2 s); the largest flux where the throat would be choked.</summary>
    public double FluxAt(double pressurePa)
    {
        if (pressurePa <= GreatestFluxPressurePa) return GreatestFlux;
        int i = 1;
        while (i < _greatest && _grid.Pressure[i] > pressurePa) i++;
        double share = (_grid.Pressure[i - 1] - pressurePa) / (_grid.Pressure[i - 1] - _grid.Pressure[i]);
        double square = _flux[i - 1] * _flux[i - 1] + share * (_flux[i] * _flux[i] - _flux[i - 1] * _flux[i - 1]);
        return Math.Sqrt(Math.Max(square, 0));
    }
}
