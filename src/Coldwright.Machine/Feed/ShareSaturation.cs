using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Machine.Feed;

/// <summary>Liquid and vapour of a product in equilibrium, per kilogram.</summary>
/// <param name="PressurePa">Pa.</param>
/// <param name="VapourShare">kg/kg.</param>
/// <param name="Liquid">Liquid.</param>
/// <param name="Vapour">Vapour.</param>
internal readonly record struct SharePoint(double PressurePa, double VapourShare, PhasePoint Liquid, PhasePoint Vapour);

/// <summary>
/// Equal fugacities at a temperature and vapour fraction, by substitution of the equilibrium ratios, the pressure following from the balance of the
/// components. Made for nearly pure products, whose bubble and dew pressures differ by less than a general flash resolves; each answer starts from its
/// neighbour. A product of these gases has no second liquid.
/// </summary>
internal sealed class ShareSaturation
{
    private const int MostRounds = 400;
    private const double Tolerance = 1e-12;

    private readonly HelmholtzModel _model;
    private readonly PhaseEvaluation _liquid, _vapour;
    private readonly double[] _z, _x, _y, _k, _lnLiquid;
    private double _pressure, _densityL = double.NaN, _densityV = double.NaN;

    /// <param name="model">Model, main component first.</param>
    /// <param name="z">Mole fractions.</param>
    public ShareSaturation(HelmholtzModel model, double[] z)
    {
        (_model, _z, _liquid, _vapour) = (model, z, model.CreateEvaluation(), model.CreateEvaluation());
        (_x, _y, _k, _lnLiquid) = (new double[z.Length], new double[z.Length], new double[z.Length], new double[z.Length]);
        Array.Fill(_k, 1.0);
    }

    /// <summary>The next answer starts from this pressure (Pa), the ratios staying as they are.</summary>
    public void Begin(double pressurePa) => (_pressure, _densityL, _densityV) = (pressurePa, double.NaN, double.NaN);

    /// <summary>The point; null where liquid and vapour are no longer told apart.</summary>
    /// <param name="temperatureK">K.</param>
    /// <param name="fraction">Vapour, mol/mol.</param>
    public SharePoint? Solve(double temperatureK, double fraction)
    {
        double pressure = _pressure;
        for (int i = 0; i < MostRounds; i++)
        {
            Split(fraction);
            _liquid.SetIsotherm(temperatureK, _x);
            _vapour.SetIsotherm(temperatureK, _y);
            double l = DensityRoots.Find(_liquid, pressure, Branch.Liquid, _densityL), v = DensityRoots.Find(_vapour, pressure, Branch.Vapour, _densityV);
            if (!(l > 1.02 * v) || !(v > 0)) return null;
            _liquid.Gradient(l);
            for (int j = 0; j < _z.Length; j++) _lnLiquid[j] = _liquid.G[j] - Math.Log(pressure / (l * _liquid.GasConstant * temperatureK));
            _vapour.Gradient(v);
            for (int j = 0; j < _z.Length; j++) _k[j] = Math.Exp(_lnLiquid[j] - _vapour.G[j] + Math.Log(pressure / (v * _vapour.GasConstant * temperatureK)));
            double scale = Scale(fraction);
            for (int j = 0; j < _z.Length; j++) _k[j] *= scale;
            double next = pressure / scale;
            if (!(next > 0) || !double.IsFinite(next)) return null;
            bool done = Math.Abs(next - pressure) < Tolerance * pressure && i > 2;
            (pressure, _densityL, _densityV) = (next, l, v);
            if (done) return Made(temperatureK, pressure, fraction);
        }
        return null;
    }

    private void Split(double fraction)
    {
        double sumX = 0, sumY = 0;
        for (int j = 0; j < _z.Length; j++)
        {
            sumX += _x[j] = _z[j] / (1 + fraction * (_k[j] - 1));
            sumY += _y[j] = _k[j] * _x[j];
        }
        for (int j = 0; j < _z.Length; j++) (_x[j], _y[j]) = (_x[j] / sumX, _y[j] / sumY);
    }

    // the factor on all ratios with which the components balance: sum z (K s - 1)/(1 + b (K s - 1)) = 0; it falls in s monotonically in log form
    private double Scale(double fraction)
    {
        double s = 1;
        for (int i = 0; i < 60; i++)
        {
            double g = 0, slope = 0;
            for (int j = 0; j < _z.Length; j++)
            {
                double d = 1 + fraction * (_k[j] * s - 1);
                g += _z[j] * (_k[j] * s - 1) / d;
                slope += _z[j] * _k[j] / (d * d);
            }
            double step = Math.Clamp(-g / slope, -0.5 * s, s);
            s += step;
            if (Math.Abs(step) < 1e-15 * s) break;
        }
        return s;
    }

    private SharePoint Made(double t, double pressure, double fraction)
    {
        _pressure = pressure;
        var (liquid, vapour) = (Point(_liquid, _x, t, pressure, _densityL), Point(_vapour, _y, t, pressure, _densityV));
        double massL = (1 - fraction) * Mass(_x), massV = fraction * Mass(_y);
        return new(pressure, massV / (massL + massV), liquid, vapour);
    }

    private double Mass(double[] x)
    {
        double mass = 0;
        for (int j = 0; j < x.Length; j++) mass += x[j] * _model.Substances[j].MolarMass;
        return mass;
    }

    private PhasePoint Point(PhaseEvaluation e, double[] x, double t, double pressure, double density)
    {
        var (h, s) = PhaseProperties.Caloric(_model, e, density);
        double mass = Mass(x);
        return new(t, pressure, density * mass, h / mass, s / mass);
    }
}
