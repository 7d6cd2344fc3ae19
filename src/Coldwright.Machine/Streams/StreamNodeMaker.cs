using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.HeatTransfer;

namespace Coldwright.Machine.Streams;

/// <summary>Turns a flash at a temperature into a node. Not thread-safe.</summary>
internal sealed class StreamNodeMaker(Flash flash, TransportModel transport, double[] z)
{
    private readonly List<string> _warnings = [];
    private bool _started;

    /// <summary>What a person must be told about the properties used; each once.</summary>
    public IReadOnlyList<string> Warnings => _warnings;
    /// <summary>Certified flashes made; moving known phases along costs a tenth of one.</summary>
    public int Flashes { get; private set; }

    /// <summary>The node; null when there is no answer at this temperature.</summary>
    public StreamNode? TryMake(double temperatureK, double pressurePa)
    {
        Flashes++;
        if (!flash.TrySolve(temperatureK, pressurePa, z, _started)) return null;
        _started = true;
        return Make(flash.State());
    }

    /// <summary>
    /// The node between two known ones of the same phases, or next to such a node of another composition: the last answer's phases moved there
    /// without a certificate, a certified flash where that does not settle or the phases are others. Null when there is no answer.
    /// </summary>
    public StreamNode? TryFollow(double temperatureK, double pressurePa, string phases)
    {
        if (TryKeep(temperatureK, pressurePa, phases) is { } kept) return kept;
        _started = false;
        return TryMake(temperatureK, pressurePa);
    }

    /// <summary>The last answer's phases moved without a certificate; null when they are others, or one of them is lost: the last answer then stays.</summary>
    public StreamNode? TryKeep(double temperatureK, double pressurePa, string phases)
    {
        if (!Holds(phases)) return null;
        return flash.TryFollow(temperatureK, pressurePa, z) && flash.PhaseNames() == phases ? Make(flash.State()) : null;
    }

    /// <summary>Takes up the phases of a node, or finds them anew where it kept none. False: they are others.</summary>
    public bool TryReturn(StreamNode node, double pressurePa)
    {
        if (node.Mark is { } mark)
        {
            flash.Return(mark);
            return Holds(node.Phases);
        }
        return TryFollow(node.TemperatureK, pressurePa, node.Phases) is not null && Holds(node.Phases);
    }

    /// <summary>The fractions of the phases of the last answer moved there without a certificate; null when they are others, or one of them is lost.</summary>
    public double[]? TryKeepFractions(double temperatureK, double pressurePa, string phases) =>
        Holds(phases) && flash.TryFollow(temperatureK, pressurePa, z) && Holds(phases) ? flash.PhaseFractions() : null;

    /// <summary>True when the last answer has these phases.</summary>
    public bool Holds(string phases) => flash.PhaseCount > 0 && flash.PhaseNames() == phases;

    /// <summary>
    /// The node half way between two. Where both are of the same phases and the last answer was near, its phases are moved there without a
    /// certificate: what lies between certified neighbours is rarely anything else, and a region so narrow carries little heat.
    /// </summary>
    public StreamNode Between(StreamNode below, StreamNode above, double pressurePa)
    {
        double k = 0.5 * (below.TemperatureK + above.TemperatureK), near = 2 * (above.TemperatureK - below.TemperatureK);
        return below.Phases == above.Phases && Math.Abs(flash.TemperatureK - k) < near && TryFollow(k, pressurePa, above.Phases) is { } node ? node : Make(k, pressurePa);
    }

    /// <summary>The node, or an exception that says where none was found.</summary>
    public StreamNode Make(double temperatureK, double pressurePa)
    {
        if (TryMake(temperatureK, pressurePa) is { } node) return node;
        // a cold start says it in full
        return Make(flash.TemperaturePressure(temperatureK, pressurePa, z));
    }

    /// <summary>
    /// Gives two nodes between which a pure fluid boils what belongs to both phases together: heat of vaporisation and surface tension.
    /// Neither node has it, each being one phase.
    /// </summary>
    public void JoinBoiling(StreamNode liquid, StreamNode vapour, double pressurePa)
    {
        var below = flash.TemperaturePressure(liquid.TemperatureK, pressurePa, z);
        var above = flash.TemperaturePressure(vapour.TemperatureK, pressurePa, z);
        double tension = Math.Max(Use(transport.SurfaceTension(liquid.TemperatureK, below.Phases[0], above.Phases[0])), 0);
        double difference = (vapour.MolarEnthalpy - liquid.MolarEnthalpy) / below.MolarMass;
        foreach (var node in (StreamNode[])[liquid, vapour])
            (node.Values[StreamColumn.SurfaceTension], node.Values[StreamColumn.PhaseEnthalpyDifference]) = (tension, difference);
    }

    /// <summary>The node of a state.</summary>
    public StreamNode Of(FluidState state) => Make(state);

    private StreamNode Make(FluidState state)
    {
        var v = new double[StreamColumn.Count];
        Array.Fill(v, double.NaN);
        v[StreamColumn.Temperature] = state.TemperatureK;
        double vapourMass = 0, volume = 0, mass = 0, vapourH = 0, liquidH = 0, liquidMass = 0, vapourFraction = 0;
        PhaseState? vapour = null;
        var liquids = new List<PhaseState>(2);
        foreach (var phase in state.Phases)
        {
            double m = phase.Fraction * phase.MolarMass;
            mass += m;
            volume += phase.Fraction / phase.MolarDensity;
            if (phase.Kind == PhaseKind.Vapour)
            {
                (vapour, vapourMass, vapourFraction) = (phase, m, phase.Fraction);
                vapourH = phase.MolarEnthalpy / phase.MolarMass;
                Fill(v, StreamColumn.VapourDensity, Transport(state.TemperatureK, phase));
            }
            else
            {
                liquids.Add(phase);
                liquidMass += m;
                liquidH += phase.Fraction * phase.MolarEnthalpy;
            }
        }
        v[StreamColumn.VapourFraction] = vapourFraction;
        v[StreamColumn.Quality] = vapourMass / mass;
        v[StreamColumn.SpecificVolume] = volume / mass;
        if (liquids.Count > 0) Fill(v, StreamColumn.LiquidDensity, Liquid(state.TemperatureK, liquids));
        if (vapour is not null && liquids.Count > 0)
        {
            v[StreamColumn.PhaseEnthalpyDifference] = vapourH - liquidH / liquidMass;
            // the lighter liquid, or the larger: of two liquids either may touch the vapour; that with the smaller tension wets
            double least = double.PositiveInfinity;
            foreach (var liquid in liquids) least = Math.Min(least, Use(transport.SurfaceTension(state.TemperatureK, liquid, vapour)));
            v[StreamColumn.SurfaceTension] = Math.Max(least, 0);
        }
        return new StreamNode
        {
            TemperatureK = state.TemperatureK,
            MolarEnthalpy = state.MolarEnthalpy,
            Phases = state.PhaseNames,
            Fractions = [.. state.Phases.Select(p => p.Fraction)],
            Vapour = vapour is null ? null : [.. vapour.Composition],
            Liquid = liquids.Count == 0 ? null : Together(liquids),
            Values = v,
            Mark = flash.Mark(),
        };
    }

    private static double[] Together(List<PhaseState> liquids)
    {
        if (liquids.Count == 1) return [.. liquids[0].Composition];
        double amount = liquids.Sum(l => l.Fraction);
        var x = new double[liquids[0].Composition.Count];
        foreach (var liquid in liquids)
            for (int i = 0; i < x.Length; i++) x[i] += liquid.Fraction / amount * liquid.Composition[i];
        return x;
    }

    private PhaseTransport Liquid(double t, List<PhaseState> liquids)
    {
        var first = Transport(t, liquids[0]);
        if (liquids.Count == 1) return first;
        var mixed = first;
        double amount = liquids[0].Fraction * liquids[0].MolarMass;
        for (int i = 1; i < liquids.Count; i++)
        {
            double more = liquids[i].Fraction * liquids[i].MolarMass;
            mixed = Mix(mixed, amount, Transport(t, liquids[i]), more);
            amount += more;
        }
        return mixed;
    }

    private static PhaseTransport Mix(PhaseTransport a, double massA, PhaseTransport b, double massB)
    {
        // the tension is that of the liquid that wets, found elsewhere
        static LiquidProperties Of(PhaseTransport p) => new(p.Density, p.Viscosity, p.Conductivity, p.HeatCapacity, 0);
        var both = LiquidMixing.Combine(Of(a), Of(b), massA / (massA + massB));
        return new PhaseTransport(both.Density, both.Viscosity, both.Conductivity, both.HeatCapacity);
    }

    private PhaseTransport Transport(double t, PhaseState phase)
    {
        Span<double> x = stackalloc double[phase.Composition.Count];
        for (int i = 0; i < x.Length; i++) x[i] = phase.Composition[i];
        var found = transport.At(t, phase.MolarDensity, x);
        return new PhaseTransport(phase.MolarDensity * phase.MolarMass, Use(found.Viscosity), Use(found.Conductivity), phase.MolarHeatCapacity / phase.MolarMass);
    }

    private double Use(TransportValue value)
    {
        if (value.Warning is { } warning && !_warnings.Contains(warning)) _warnings.Add(warning);
        return value.Value;
    }

    private static void Fill(double[] v, int at, PhaseTransport p) => (v[at], v[at + 1], v[at + 2], v[at + 3]) = (p.Density, p.Viscosity, p.Conductivity, p.HeatCapacity);
}
