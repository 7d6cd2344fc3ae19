using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Machine.Feed;

/// <summary>
/// Flow of the product from saturation through a small opening into the room, per effective area: saturated liquid with its late flashing, saturated
/// vapour, and what lies between. Tabulated once from the valve model as a discharge coefficient over pressure.
/// </summary>
public sealed class OutletFlow
{
    private const int Nodes = 9;

    private readonly MonotoneCubic _liquid, _vapour;
    private readonly double _roomPa;

    private OutletFlow(MonotoneCubic liquid, MonotoneCubic vapour, double roomPa) => (_liquid, _vapour, _roomPa) = (liquid, vapour, roomPa);

    /// <summary>Makes the table.</summary>
    /// <param name="product">The pure product.</param>
    /// <param name="roomPa">Behind the opening, Pa.</param>
    /// <param name="highestPa">Highest pressure in the vessel, Pa; above 0.95 of the critical pressure the coefficient is held.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static OutletFlow Create(ProductFluid product, double roomPa, double highestPa, CancellationToken cancel = default)
    {
        var valve = new ControlValve { Kv = 1 };
        var model = new ValveModel(new Flash(product.Model), new TransportModel(product.Model));
        double low = 1.15 * roomPa, high = Math.Max(1.5 * roomPa, Math.Min(highestPa, 0.95 * product.CriticalPressurePa));
        double[] x = new double[Nodes], liquid = new double[Nodes], vapour = new double[Nodes];
        for (int i = 0; i < Nodes; i++)
        {
            double p = low * Math.Pow(high / low, (double)i / (Nodes - 1));
            x[i] = Math.Log(p / roomPa);
            foreach (double fraction in (double[])[0, 1])
            {
                cancel.ThrowIfCancellationRequested();
                var phase = product.Saturated(p, fraction);
                double t = product.Saturation(p)!.Value.TemperatureK, density = phase.MolarDensity * product.MolarMass;
                // a hair into the single phase, so that the inlet is what it is meant to be
                double enthalpy = phase.MolarEnthalpy + (fraction == 0 ? -1e-6 : 1e-6) * product.Model.GasConstant * t;
                double flow = model.Flow(valve, new ThrottleInlet(p, enthalpy, t, [1.0]), roomPa, cancel).MassFlowKgPerS;
                (fraction == 0 ? liquid : vapour)[i] = flow / (valve.EffectiveAreaM2 * Math.Sqrt(2 * density * (p - roomPa)));
            }
        }
        return new OutletFlow(new MonotoneCubic(x, liquid, new bool[Nodes]), new MonotoneCubic(x, vapour, new bool[Nodes]), roomPa);
    }

    /// <summary>Mass flow, kg/s, 0 at or below the room's pressure.</summary>
    /// <param name="areaM2">Effective area, see <see cref="ControlValve.EffectiveAreaM2"/>, m2.</param>
    /// <param name="state">In the vessel.</param>
    /// <param name="vapourShare">Of the inlet, kg/kg.</param>
    public double KgPerS(double areaM2, in ContentState state, double vapourShare)
    {
        double over = state.PressurePa - _roomPa;
        if (over <= 0) return 0;
        double x = Math.Log(state.PressurePa / _roomPa);
        double liquid = Math.Max(_liquid.At(x), 1e-9), vapour = Math.Max(_vapour.At(x), 1e-9);
        // straight through zero over the last 500 Pa: a root has no slope there for the integrator
        double root = over / Math.Sqrt(over + 500);
        // volumes of a homogeneous mixture add: 1/flow^2 runs straight in the vapour share
        double resistance = (1 - vapourShare) / (liquid * liquid * state.LiquidDensity) + vapourShare / (vapour * vapour * state.VapourDensity);
        return areaM2 * Math.Sqrt(2 / resistance) * root;
    }
}
