using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Compression;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Machine.Charge;

/// <summary>A buffer at given side pressures.</summary>
public sealed record BufferResult
{
    /// <summary>Pressure in the buffer when flows in and out are equal, Pa absolute.</summary>
    public required double PressurePa { get; init; }
    /// <summary>How far the valve stands open, 0..1.</summary>
    public required double ValveOpening { get; init; }
    /// <summary>Gas from the high side through the buffer to suction, mol/s: compressed for nothing.</summary>
    public required double BypassFlow { get; init; }
    /// <summary>Gas in the buffer, mol: what circulates no longer.</summary>
    public required double Content { get; init; }
    /// <summary>Gas in the buffer when it stands at suction pressure, mol.</summary>
    public required double ContentAtSuction { get; init; }
    /// <summary>Gas in the buffer when it stands at the high side's pressure, mol: the most it can take.</summary>
    public required double ContentAtHighSide { get; init; }
    /// <summary>The same in kg.</summary>
    public required double ContentKg { get; init; }
    /// <summary>Time in which a small disturbance falls to 1/e, s; infinite when nothing flows.</summary>
    public required double TimeConstantS { get; init; }
    /// <summary>Time to bleed from the high side's pressure to within a tenth of the difference above suction, s, valve shut.</summary>
    public required double BleedTimeS { get; init; }
    /// <summary>Pressure in the buffer against time from suction pressure towards the steady state, s and Pa: to draw.</summary>
    public required IReadOnlyList<(double TimeS, double PressurePa)> Filling { get; init; }
    /// <summary>(In - out)/out at the steady state.</summary>
    public required double MassBalanceError { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}

/// <summary>
/// Buffer with unloading valve and bleed, isothermal (a steel tank holds far more heat than its gas), on real gas. The
/// amount that it takes out of the loop lowers the high side; that balance is the charge solver's. Not thread-safe.
/// </summary>
public sealed class BufferModel
{
    private readonly BufferInput _input;
    private readonly HelmholtzModel _model;
    private readonly double[] _z;

    /// <param name="input">Volume, valve, bleed.</param>
    /// <param name="model">Fluid model.</param>
    /// <param name="z">Mole fractions of the gas that circulates warm.</param>
    public BufferModel(BufferInput input, HelmholtzModel model, IReadOnlyList<double> z)
    {
        input.Check();
        (_input, _model) = (input, model);
        _z = InputCheck.Fractions(z, model.Count, nameof(z));
    }

    /// <summary>Steady state, amounts and times.</summary>
    /// <param name="highPressurePa">High side at the valve, Pa absolute.</param>
    /// <param name="suctionPressurePa">Suction, Pa absolute, below the high side.</param>
    /// <param name="cancel">Cancels the work.</param>
    public BufferResult Run(double highPressurePa, double suctionPressurePa, CancellationToken cancel = default)
    {
        InputCheck.Within(suctionPressurePa, 1e3, 1e8, "Pa", nameof(suctionPressurePa));
        InputCheck.Within(highPressurePa, 1e3, 1e8, "Pa", nameof(highPressurePa));
        InputCheck.Order(suctionPressurePa, nameof(suctionPressurePa), highPressurePa, nameof(highPressurePa), "Pa");
        var gas = new BufferContent(_model, _z, _input.TemperatureK, suctionPressurePa, highPressurePa, cancel);
        double opening = Math.Clamp((highPressurePa - _input.SetPressurePa) / _input.FullyOpenAbovePa, 0, 1);
        var flows = new BufferFlows(_input, gas);
        double In(double p) => flows.Fill(highPressurePa, p, opening);
        double Out(double p) => flows.Bleed(p, suctionPressurePa);
        double pressure = opening > 0
            ? Brent.Solve(p => In(p) - Out(p), suctionPressurePa, highPressurePa, 1e-9 * suctionPressurePa)
            : suctionPressurePa;
        double flow = opening > 0 ? Out(pressure) : 0, content = _input.VolumeM3 * gas.MolarDensity(pressure);
        // relative to the pressure range, but inside it: at its ends a flow may go with the root of the difference
        double step = 1e-3 * (highPressurePa - suctionPressurePa), a = Math.Max(pressure - step, suctionPressurePa), b = Math.Min(pressure + step, highPressurePa);
        double slope = (Out(b) - In(b) - Out(a) + In(a)) / (b - a);
        double constant = slope > 0 ? _input.VolumeM3 * gas.Compliance(pressure) / slope : double.PositiveInfinity;
        double tenth = suctionPressurePa + 0.1 * (highPressurePa - suctionPressurePa);
        List<Spoken> warnings = [.. _model.Warnings];
        if (gas.WetAbovePa is { } wet) warnings.Add(Spoken.Of(
            $"buffer: heavy components condense in it at {SpokenAmount.Temperature(_input.TemperatureK, "0.#")} from about {SpokenAmount.Pressure(wet, "0.#")}; it then holds back more of them than of the rest"));
        if (opening >= 1) warnings.Add(Spoken.Of($"buffer: the unloading valve is fully open at {SpokenAmount.Pressure(highPressurePa, "0.##")}; the high side can rise further"));
        return new BufferResult
        {
            PressurePa = pressure,
            ValveOpening = opening,
            BypassFlow = flow,
            Content = content,
            ContentAtSuction = _input.VolumeM3 * gas.MolarDensity(suctionPressurePa),
            ContentAtHighSide = _input.VolumeM3 * gas.MolarDensity(highPressurePa),
            ContentKg = content * gas.MolarMass,
            TimeConstantS = constant,
            BleedTimeS = Time(gas, highPressurePa, tenth, p => -Out(p), null),
            Filling = Filling(gas, suctionPressurePa, pressure, p => In(p) - Out(p)),
            MassBalanceError = flow > 0 ? (In(pressure) - flow) / flow : 0,
            Warnings = warnings,
        };
    }

    private List<(double, double)> Filling(BufferContent gas, double from, double to, Func<double, double> net)
    {
        var points = new List<(double, double)> { (0, from) };
        // the last per cent takes for ever
        if (to > from * (1 + 1e-9)) Time(gas, from, to - 0.01 * (to - from), net, points);
        return points;
    }

    // integral of V (drho/dp)/(net flow) over pressure: Simpson on 100 panels; the pressure moves one way only
    private double Time(BufferContent gas, double from, double to, Func<double, double> net, List<(double, double)>? points)
    {
        const int panels = 100;
        double width = (to - from) / panels, time = 0;
        double Rate(double p) => _input.VolumeM3 * gas.Compliance(p) / net(p);
        for (int i = 0; i < panels; i++)
        {
            double p = from + i * width;
            time += width / 6 * (Rate(p) + 4 * Rate(p + 0.5 * width) + Rate(p + width));
            points?.Add((time, p + width));
        }
        return time;
    }
}
