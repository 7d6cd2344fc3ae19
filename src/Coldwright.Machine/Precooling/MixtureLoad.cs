using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Streams;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Machine.Precooling;

/// <summary>
/// The mixture that the evaporator cools: its enthalpy along the isobar from its inlet down, with the heavy components that
/// condense in it. Made once for a pressure and a composition; the flow can be changed at no cost.
/// </summary>
public sealed class MixtureLoad
{
    private const double UsualDepthK = 130, LowestK = 60, LinearErrorK = 0.05;

    private readonly MonotoneCubic _temperature;
    private readonly double[] _enthalpies, _temperatures;
    private readonly IsobarCurve? _curve;

    private MixtureLoad(double[] enthalpies, double[] temperatures, bool[] kinks, double molarFlow, double pressurePa, IReadOnlyList<string> warnings, IsobarCurve? curve)
    {
        (_enthalpies, _temperatures, _curve) = (enthalpies, temperatures, curve);
        _temperature = new MonotoneCubic(enthalpies, temperatures, kinks);
        (MolarFlow, PressurePa, Warnings) = (molarFlow, pressurePa, warnings);
    }

    private MixtureLoad(MixtureLoad from, double molarFlow)
    {
        (_enthalpies, _temperatures, _curve, _temperature) = (from._enthalpies, from._temperatures, from._curve, from._temperature);
        (MolarFlow, PressurePa, Warnings) = (molarFlow, from.PressurePa, from.Warnings);
    }

    /// <summary>mol/s.</summary>
    public double MolarFlow { get; }
    /// <summary>Pa absolute.</summary>
    public double PressurePa { get; }
    /// <summary>What a person must be told about the properties.</summary>
    public IReadOnlyList<string> Warnings { get; }
    /// <summary>K.</summary>
    public double InletTemperatureK => _temperatures[^1];
    /// <summary>J/mol.</summary>
    public double InletEnthalpy => _enthalpies[^1];
    /// <summary>Coldest temperature known, K.</summary>
    public double ColdestK => _temperatures[0];

    internal double CoolestEnthalpy => _enthalpies[0];
    internal ReadOnlySpan<double> Enthalpies => _enthalpies;
    internal ReadOnlySpan<double> Temperatures => _temperatures;

    /// <summary>From a mixture's state at the evaporator's inlet.</summary>
    /// <param name="flash">Flash of the mixture's model; used during the call only.</param>
    /// <param name="z">Mole fractions.</param>
    /// <param name="pressurePa">Pa absolute, 1e3 to 1e8; the pressure drop is left out.</param>
    /// <param name="inletK">K, 100 to 450.</param>
    /// <param name="molarFlow">mol/s, above 0 to 1e3.</param>
    /// <param name="coldestK">Lower end of the curve, K; null: 130 K below the inlet, not below 60 K. A curve that ends by itself (far below freezing) is used as far as it goes.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static MixtureLoad Create(Flash flash, ReadOnlySpan<double> z, double pressurePa, double inletK, double molarFlow, double? coldestK = null, CancellationToken cancel = default)
    {
        double[] x = InputCheck.Fractions(z.ToArray(), flash.Model.Count, nameof(z));
        InputCheck.Within(pressurePa, 1e3, 1e8, "Pa", nameof(pressurePa));
        InputCheck.Within(inletK, 100, 450, "K", nameof(inletK));
        CheckFlow(molarFlow);
        double coldest = InputCheck.Within(coldestK ?? Math.Max(inletK - UsualDepthK, LowestK), 1, inletK - 1, "K", nameof(coldestK));
        var curve = new IsobarCurve(flash, x, pressurePa, coldest, inletK, LinearErrorK, cancel);
        double[] h = [.. curve.Enthalpies], t = [.. curve.TemperaturesK];
        var kinks = new bool[h.Length];
        for (int i = 1; i < h.Length - 1; i++) kinks[i] = curve.Phases[i] != curve.Phases[i - 1] || curve.Phases[i + 1] != curve.Phases[i];
        return new MixtureLoad(h, t, kinks, molarFlow, pressurePa, [.. flash.Model.Warnings], curve);
    }

    /// <summary>From a table that exists already: the nodes of its nearest isobar, at the pressure asked for.</summary>
    /// <param name="table">Properties of the mixture.</param>
    /// <param name="pressurePa">Pa absolute.</param>
    /// <param name="inletEnthalpy">At the evaporator's inlet, J/mol, within the table.</param>
    /// <param name="molarFlow">mol/s, above 0 to 1e3.</param>
    /// <param name="coldestK">Lower end of the curve, K; null: 130 K below the inlet, or where the table ends.</param>
    public static MixtureLoad FromTable(StreamTable table, double pressurePa, double inletEnthalpy, double molarFlow, double? coldestK = null)
    {
        CheckFlow(molarFlow);
        double inletK = table.Temperature(inletEnthalpy, pressurePa, out _), coldest = Math.Max(coldestK ?? inletK - UsualDepthK, LowestK);
        var (lowest, _) = table.Range(pressurePa);
        var nodes = new List<(double H, double K, string Phases)>();
        foreach (double h in table.NodeEnthalpies(pressurePa).Prepend(lowest).Append(inletEnthalpy))
        {
            // the table's ends move a little with pressure; a node too near its neighbour says nothing and spoils the slope
            if (h < lowest || h > inletEnthalpy || nodes.Count > 0 && !(h > nodes[^1].H + 0.5)) continue;
            var point = table.At(h, pressurePa);
            if (point.TemperatureK >= coldest || h == inletEnthalpy) nodes.Add((h, point.TemperatureK, point.Phases));
        }
        if (nodes.Count == 0 || nodes[^1].H < inletEnthalpy) nodes.Add((inletEnthalpy, inletK, nodes.Count > 0 ? nodes[^1].Phases : ""));
        if (nodes.Count < 2) throw new ArgumentException(FormattableString.Invariant($"the table ends at the evaporator's inlet of {inletK:0.#} K; it must reach below"), nameof(table));
        var kinks = new bool[nodes.Count];
        for (int i = 1; i < nodes.Count - 1; i++) kinks[i] = nodes[i].Phases != nodes[i - 1].Phases || nodes[i + 1].Phases != nodes[i].Phases;
        return new MixtureLoad([.. nodes.Select(n => n.H)], [.. nodes.Select(n => n.K)], kinks, molarFlow, pressurePa, table.Warnings, null);
    }

    /// <summary>A stream of constant heat capacity, for checks against exact solutions and for water or brine.</summary>
    /// <param name="molarHeatCapacity">J/(mol K), above 0.</param>
    /// <param name="inletK">K.</param>
    /// <param name="molarFlow">mol/s.</param>
    /// <param name="coldestK">Lower end, K.</param>
    public static MixtureLoad Constant(double molarHeatCapacity, double inletK, double molarFlow, double coldestK)
    {
        InputCheck.Within(molarHeatCapacity, 1, 1e5, "J/(mol K)", nameof(molarHeatCapacity));
        InputCheck.Within(inletK, 100, 450, "K", nameof(inletK));
        InputCheck.Within(coldestK, 1, inletK - 1, "K", nameof(coldestK));
        CheckFlow(molarFlow);
        return new MixtureLoad([molarHeatCapacity * coldestK, molarHeatCapacity * inletK], [coldestK, inletK], [false, false], molarFlow, double.NaN, [], null);
    }

    /// <summary>The same stream with another flow (mol/s).</summary>
    public MixtureLoad WithFlow(double molarFlow)
    {
        CheckFlow(molarFlow);
        return new MixtureLoad(this, molarFlow);
    }

    /// <summary>Temperature (K) at an enthalpy (J/mol).</summary>
    public double Temperature(double molarEnthalpy) => _temperature.At(molarEnthalpy);

    /// <summary>Phases at an enthalpy in words; empty for a stream of constant heat capacity.</summary>
    public string PhasesAt(double molarEnthalpy) => _curve?.PhasesAt(molarEnthalpy) ?? "";

    private static void CheckFlow(double molarFlow)
    {
        if (!(molarFlow > 0 && molarFlow <= 1e3)) throw new ArgumentException(FormattableString.Invariant($"molarFlow is {molarFlow} mol/s; it must be above 0 and at most 1000 mol/s"), nameof(molarFlow));
    }
}
