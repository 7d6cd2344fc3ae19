using Coldwright.Fluids.Transport;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Machine.Precooling;

/// <summary>
/// Flow of a capillary or a fixed valve, tabulated once over the pressure before it and what arrives: a measure u from 1 (liquid
/// at the full subcooling) over 0 (bubble point) to -1 (a liquid-vapour mixture with <see cref="GreatestVapour"/> of the heat of evaporation in it).
/// </summary>
internal sealed class ExpansionTable
{
    /// <summary>Share of the heat of evaporation in what arrives at u = -1.</summary>
    public const double GreatestVapour = 0.6;
    private const double LowestK = 288.15, LeastSubcoolingK = 0.5;
    private const int Rows = 4;
    private static readonly double[] Measures = [-1, -0.6, -0.3, -0.1, 0, 1];

    private readonly LoopRefrigerant _fluid;
    private readonly double[] _z, _lnPressure = new double[Rows];
    private readonly MonotoneCubic[] _lnFlow = new MonotoneCubic[Rows];
    private readonly Func<ThrottleInlet, double, CancellationToken, (double MassFlow, double Uncertainty, IReadOnlyList<string> Warnings)> _run;

    public ExpansionTable(ExpansionDevice device, LoopRefrigerant fluid, double[] z, double subcoolingK, CancellationToken cancel)
    {
        (_fluid, _z, SubcoolingK) = (fluid, z, Math.Max(subcoolingK, LeastSubcoolingK));
        var transport = new TransportModel(fluid.Model);
        var capillary = new CapillaryModel(fluid.Flash, transport);
        var valve = new ValveModel(fluid.Flash, transport);
        _run = device switch
        {
            CapillaryExpansion c => (inlet, back, stop) =>
            {
                var r = capillary.Flow(c.Tube, inlet, back, stop);
                return (r.MassFlowKgPerS, r.RelativeUncertainty, r.Warnings);
            },
            FixedValveExpansion v => (inlet, back, stop) =>
            {
                var r = valve.Flow(v.Valve, inlet, back, stop);
                return (r.MassFlowKgPerS, r.RelativeUncertainty, r.Warnings);
            },
            _ => throw new ArgumentException($"{device.GetType().Name} has no flow of its own", nameof(device)),
        };
        double high = fluid.LnHighest, low = Math.Min(fluid.LnPressure(LowestK), high - Math.Log(2));
        bool[] kinks = [.. Measures.Select(u => u == 0)];
        for (int i = 0; i < Rows; i++)
        {
            _lnPressure[i] = low + (high - low) * i / (Rows - 1);
            double p = Math.Exp(_lnPressure[i]), back = Math.Max(p / 6, Math.Exp(fluid.LnLowest));
            var flow = new double[Measures.Length];
            for (int j = 0; j < flow.Length; j++) flow[j] = Math.Log(_run(Inlet(_lnPressure[i], Measures[j]), back, cancel).MassFlow / fluid.MolarMass);
            _lnFlow[i] = new MonotoneCubic(Measures, flow, kinks);
        }
    }

    /// <summary>Subcooling at u = 1, K.</summary>
    public double SubcoolingK { get; }

    /// <summary>mol/s.</summary>
    public double Flow(double lnPressure, double u)
    {
        double at = Math.Clamp((lnPressure - _lnPressure[0]) / (_lnPressure[^1] - _lnPressure[0]), 0, 1) * (Rows - 1);
        int i = Math.Min((int)at, Rows - 2);
        double w = at - i;
        return Math.Exp((1 - w) * _lnFlow[i].At(u) + w * _lnFlow[i + 1].At(u));
    }

    /// <summary>The model's own answer, mol/s, with one standard deviation (relative).</summary>
    public (double MolarFlow, double Uncertainty, IReadOnlyList<string> Warnings) Run(double lnPressure, double u, double backPa, CancellationToken cancel)
    {
        double back = Math.Max(backPa, Math.Exp(lnPressure) / 1500);
        var (mass, uncertainty, warnings) = _run(Inlet(lnPressure, u), back, cancel);
        return (mass / _fluid.MolarMass, uncertainty, warnings);
    }

    private ThrottleInlet Inlet(double lnPressure, double u)
    {
        double p = Math.Exp(lnPressure), bubble = _fluid.Bubble(lnPressure);
        if (u >= 0)
        {
            double t = bubble - u * SubcoolingK;
            return new ThrottleInlet(p, _fluid.LiquidEnthalpy(t, p), t, _z);
        }
        double liquid = _fluid.LiquidEnthalpy(bubble, p), gas = _fluid.Gas(_fluid.Dew(lnPressure), p).MolarEnthalpy, share = -u * GreatestVapour;
        return new ThrottleInlet(p, liquid + share * (gas - liquid), _fluid.Glide(lnPressure, share), _z);
    }
}
