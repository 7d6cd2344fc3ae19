using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Blind.Physics;

/// <summary>The precooler: what a small propane compressor carries off against its evaporating temperature.</summary>
internal sealed class PropaneLoop
{
    private const double SweptM3PerS = 3.8e-6 * 48.5, RoomK = 293.15, CondenserAboveK = 14, Superheat = 6, Subcooling = 4, ColdestK = 215, StepK = 10;
    private readonly double[] _cooling = new double[9], _power = new double[9];

    public PropaneLoop()
    {
        var model = CubicModel.Create(["propane"]);
        var flash = new Flash(model);
        double hotK = RoomK + CondenserAboveK, hotPa = PureSaturation.AtTemperature(model, hotK).PressurePa, liquid = flash.TemperaturePressure(hotK - Subcooling, hotPa, [1.0]).MolarEnthalpy;
        for (int i = 0; i < _cooling.Length; i++)
        {
            double k = ColdestK + StepK * i, p = PureSaturation.AtTemperature(model, k).PressurePa;
            var suction = flash.TemperaturePressure(k + Superheat, p, [1.0]);
            double ratio = hotPa / p, volumetric = Math.Max(0.1, 0.93 - 0.035 * (Math.Pow(ratio, 0.88) - 1) - 0.012 * (ratio - 1));
            double n = SweptM3PerS * volumetric * suction.MolarDensity * 0.93;
            _cooling[i] = n * (suction.MolarEnthalpy - liquid);
            _power[i] = n * 8.314 * (k + 30) / 0.13 * (Math.Pow(ratio, 0.13) - 1) / 0.42;
        }
    }

    public double CoolingW(double k) => At(_cooling, k);
    public double PowerW(double k) => At(_power, k);

    private static double At(double[] a, double k)
    {
        double x = Math.Clamp((k - ColdestK) / StepK, 0, a.Length - 1.0001);
        return a[(int)x] + (x - (int)x) * (a[(int)x + 1] - a[(int)x]);
    }
}
