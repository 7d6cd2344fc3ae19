using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Charge;

/// <summary>A gas at one temperature as a function of pressure: certified flashes at a few pressures, a parabola through three neighbours between.</summary>
internal sealed class BufferContent
{
    private const int Nodes = 13;
    private readonly double[] _p = new double[Nodes], _factor = new double[Nodes], _exponent = new double[Nodes];
    private readonly double _scale;

    public BufferContent(HelmholtzModel model, double[] z, double temperatureK, double lowestPa, double highestPa, CancellationToken cancel)
    {
        var flash = new Flash(model);
        _scale = 1 / (model.GasConstant * temperatureK);
        for (int i = 0; i < Nodes; i++)
        {
            cancel.ThrowIfCancellationRequested();
            _p[i] = lowestPa + (highestPa - lowestPa) * i / (Nodes - 1);
            var state = flash.TemperaturePressure(temperatureK, _p[i], z);
            var phase = state.Phases[0];
            MolarMass = state.MolarMass;
            if (state.Phases.Count > 1) WetAbovePa ??= _p[i];
            // p v/(R T) hardly curves, unlike the density
            _factor[i] = _p[i] * _scale / state.MolarDensity;
            // isentropic exponent of the gas, rho w^2/p
            _exponent[i] = Math.Clamp(phase.MolarDensity * phase.MolarMass * phase.SpeedOfSound * phase.SpeedOfSound / _p[i], 1.01, 2.5);
        }
    }

    public double MolarMass { get; }
    /// <summary>Lowest tabulated pressure at which liquid stands in the buffer, Pa; null: none.</summary>
    public double? WetAbovePa { get; }

    /// <summary>mol/m3.</summary>
    public double MolarDensity(double pressurePa) => pressurePa * _scale / At(_factor, pressurePa);
    /// <summary>d rho/dp, mol/(m3 Pa).</summary>
    public double Compliance(double pressurePa)
    {
        double d = 1e-4 * pressurePa;
        return (MolarDensity(pressurePa + d) - MolarDensity(pressurePa - d)) / (2 * d);
    }
    public double Exponent(double pressurePa) => At(_exponent, pressurePa);

    private double At(double[] y, double p)
    {
        double step = _p[1] - _p[0], u = (p - _p[0]) / step;
        int i = Math.Clamp((int)Math.Round(u), 1, Nodes - 2);
        double t = u - i;
        return y[i] + 0.5 * t * (y[i + 1] - y[i - 1]) + 0.5 * t * t * (y[i + 1] - 2 * y[i] + y[i - 1]);
    }
}
