using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Blind.Physics;

/// <summary>The product: argon condensing in the vessel, let down into the flask.</summary>
internal sealed class ArgonBatch
{
    public const double FeedPa = 17e5 + 1.008e5, ArrivesK = 245, LineJ = 5000, FlaskJ = 14000, FlaskLossKgPerS = 8e-6, BrimKg = 0.55;
    private const double MolarMass = 0.039948, BoilingK = 87.3;
    private readonly double[] _p = new double[60], _liquid = new double[60];
    private readonly double _arriving, _latentAtRoom, _liquidAtRoom;

    public ArgonBatch()
    {
        var model = CubicModel.Create(["argon"]);
        var flash = new Flash(model);
        for (int i = 0; i < 60; i++)
        {
            var s = PureSaturation.AtTemperature(model, 84 + i);
            _p[i] = s.PressurePa;
            _liquid[i] = flash.TemperaturePressure(84 + i, s.PressurePa * 1.001, [1.0]).MolarEnthalpy / MolarMass;
        }
        _arriving = flash.TemperaturePressure(ArrivesK, FeedPa, [1.0]).MolarEnthalpy / MolarMass;
        _liquidAtRoom = Liquid(BoilingK);
        _latentAtRoom = flash.TemperaturePressure(BoilingK, _p[3] * 0.98, [1.0]).MolarEnthalpy / MolarMass - _liquidAtRoom;
    }

    private static double At(double[] a, double k)
    {
        double x = Math.Clamp(k - 84, 0, a.Length - 1.0001);
        return a[(int)x] + (x - (int)x) * (a[(int)x + 1] - a[(int)x]);
    }

    public double Pressure(double k) => At(_p, k);
    private double Liquid(double k) => At(_liquid, k);

    public double Saturation(double p)
    {
        double a = 84, b = 142;
        for (int i = 0; i < 40; i++) if (Pressure(0.5 * (a + b)) < p) a = 0.5 * (a + b); else b = 0.5 * (a + b);
        return a;
    }

    /// <summary>Heat taken from a kilogram that condenses at a temperature, J/kg.</summary>
    public double HeatPerKg(double k) => _arriving - Liquid(k);

    /// <summary>In the flask, kg, of so much liquid at a temperature.</summary>
    public double Collected(double kg, double k, double lineJ, double flaskJ)
    {
        double flashed = Math.Clamp((Liquid(k) - _liquidAtRoom) / _latentAtRoom, 0, 1);
        return Math.Max(0, kg * (1 - flashed) - (lineJ + flaskJ) / _latentAtRoom);
    }
}
