using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.Substances;
using Coldwright.Simulation.ClosedLoop;
using P = Coldwright.Simulation.Cooldown.PlantParameters;

namespace Coldwright.Simulation.Cooldown;

/// <summary>What was filled in, and how the factors on it and on its lightest gas change it. Immutable.</summary>
internal sealed class PlantCharge
{
    private readonly double[] _z;
    private readonly int _light;
    private readonly double _mol;

    public PlantCharge(Hardware hardware, HelmholtzModel model)
    {
        _z = [.. hardware.Machine.Charge.Mixture.MoleFractions];
        (_mol, Substances) = (hardware.ChargeMol, model.Substances);
        // the gas of the lowest critical temperature
        _light = Enumerable.Range(0, _z.Length).MinBy(i => model.Substances[i].CriticalTemperatureK);
    }

    /// <summary>What it is made of.</summary>
    public IReadOnlyList<Substance> Substances { get; }

    /// <summary>mol.</summary>
    public double Mol(ReadOnlySpan<double> p) => _mol * p[P.Charge] * (1 + _z[_light] * (p[P.LightGas] - 1));

    /// <summary>ln(z_i/z_1) of a substance.</summary>
    public double LnRatio(int i, ReadOnlySpan<double> p) => Math.Log(_z[i] / _z[0] * (i == _light ? p[P.LightGas] : 1) / (_light == 0 ? p[P.LightGas] : 1));

    /// <summary>Mole fractions.</summary>
    public double[] Z(double[] p) => LoopMap.Fractions([.. Enumerable.Range(1, _z.Length - 1).Select(i => LnRatio(i, p))]);
}
