using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;
using Coldwright.Numerics;

namespace Coldwright.Machine.Throttling;

/// <summary>The underpressure of delayed flashing as it stands in a solve.</summary>
internal sealed class DelayAllowance(CapillaryTube tube, ThrottleInlet inlet, Flash flash, TransportModel transport)
{
    private double _tension, _liquid, _vapour, _temperature, _subcooling;

    /// <summary>Pa.</summary>
    public double UnderpressurePa { get; private set; } = tube.FlashDelay.Kind == FlashDelayKind.Underpressure ? tube.FlashDelay.UnderpressurePa : 0;

    /// <summary>True when it changes with the flow.</summary>
    public bool Active => tube.FlashDelay.Kind == FlashDelayKind.Chen;

    /// <summary>What was done, in words.</summary>
    public List<string> Warnings { get; } = [];

    /// <summary>Works the correlation out for a mass flux (kg/(m2 s)).</summary>
    public void Update(ExpansionGrid grid, CapillaryMarch march, double flux)
    {
        int f = grid.FlashIndex;
        if (!Active || f < 0) return;
        if (_temperature == 0) Start(grid.Temperature[f]);
        double reynolds = flux * tube.BoreM / grid.Viscosity[Math.Max(f - 1, 0)];
        double critical = flash.Model.Substances.Zip(inlet.Composition, (s, x) => x * s.CriticalTemperatureK).Sum();
        double found = ChenUnderpressure.UnderpressurePa(_temperature, _tension, _liquid, _vapour, reynolds, _subcooling, critical, tube.BoreM);
        // the flow rises with the underpressure and the underpressure with the flow: the mean keeps the two from swinging
        UnderpressurePa = UnderpressurePa > 0 ? 0.5 * (UnderpressurePa + found) : found;
        if (UnderpressurePa > 0.45 * grid.Pressure[f])
        {
            UnderpressurePa = 0.45 * grid.Pressure[f];
            if (Warnings.Count == 0) Warnings.Add("the correlation for delayed flashing gives more than 0.45 of the bubble pressure; held there");
        }
    }

    private void Start(double temperatureK)
    {
        double[] z = [.. inlet.Composition];
        var bubble = flash.TemperatureVapourFraction(temperatureK, 0, z);
        // at the bubble point the vapour has no amount: a trace of it gives the phase that is about to form
        var trace = bubble.Phases.Count > 1 && bubble.Phases[0].Kind == PhaseKind.Vapour ? bubble : flash.TemperatureVapourFraction(temperatureK, 1e-4, z);
        if (trace.Phases.Count < 2 || trace.Phases[0].Kind != PhaseKind.Vapour)
            throw new SolveException(new SolveReport(SolveStatus.Outside, 0, double.NaN, "delayed flashing needs a bubble point in the tube, and none was found"));
        PhaseState vapour = trace.Phases[0], liquid = trace.Phases[1];
        _temperature = temperatureK;
        _tension = transport.SurfaceTension(temperatureK, liquid, vapour).Value;
        (_liquid, _vapour) = (1 / (liquid.MolarDensity * liquid.MolarMass), 1 / (vapour.MolarDensity * vapour.MolarMass));
        _subcooling = Math.Max(flash.PressureVapourFraction(inlet.PressurePa, 0, z).TemperatureK - inlet.TemperatureK, 0);
        if (flash.Model.Count > 1 || flash.Model.Substances[0].Name != "R12")
            Warnings.Add("delayed flashing after Chen et al. (1990) was measured with R12 only; here it is an extrapolation");
    }
}
