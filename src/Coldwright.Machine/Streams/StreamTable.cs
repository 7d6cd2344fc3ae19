using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Streams;

/// <summary>
/// Properties of one composition against enthalpy in a band of pressure (one to three isobars), made for the inner loops of
/// the exchangers. Nodes are certified flashes, placed with controlled error, with a node on either side of every change of
/// phases. Between isobars interpolation is linear in ln p and goes along the phases (at the same relative place within a
/// region), so that dew and bubble points move with pressure.
/// With the default options temperature errs by less than 0.03 K, quality by less than 0.003 and the transport properties by
/// less than 2 % from a flash on an isobar (measured in the tests). Immutable; may be shared between threads.
/// </summary>
public sealed class StreamTable
{
    // how far beyond the band of pressure answers are given, in spans of ln p between two isobars
    private const double MostExtension = 0.5;

    private readonly IsobarTable[] _isobars;
    private readonly double[] _logPressure;
    private readonly IsobarPair[] _pairs;

    private Recipe? _recipe;
    private readonly DirectStates? _direct;
    private readonly StreamTable? _guide;

    // what a further isobar is made from
    private sealed record Recipe(double[] Z, double ColdestK, double WarmestK, StreamTableOptions Options);

    private StreamTable(IsobarTable[] isobars, double molarMass, double pseudoCriticalPressurePa, IReadOnlyList<string> warnings, int flashes, Recipe? recipe = null)
    {
        (_isobars, _recipe) = (isobars, recipe);
        _logPressure = [.. isobars.Select(i => Math.Log(i.PressurePa))];
        _pairs = new IsobarPair[isobars.Length - 1];
        for (int i = 0; i < _pairs.Length; i++) _pairs[i] = new IsobarPair(isobars[i], isobars[i + 1]);
        (MolarMass, PseudoCriticalPressurePa, Warnings, Flashes) = (molarMass, pseudoCriticalPressurePa, warnings, flashes);
        ColdestK = isobars.Max(i => i.Temperature(0));
        WarmestK = isobars.Min(i => i.Temperature(i.NodeCount - 1));
    }

    private StreamTable(DirectStates direct, StreamTable guide)
    {
        (_isobars, _logPressure, _pairs, _direct, _guide, _recipe) = ([], [], [], direct, guide, guide._recipe);
        (MolarMass, PseudoCriticalPressurePa, Warnings, ColdestK, WarmestK) = (guide.MolarMass, guide.PseudoCriticalPressurePa, guide.Warnings, guide.ColdestK, guide.WarmestK);
    }

    // answers by flashes; the guide says where to begin, and where liquid boils
    internal static StreamTable Direct(DirectStates direct, StreamTable guide) => new(direct, guide);

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; private set; }
    /// <summary>Mole-weighted mean of the components' critical pressures (Kay's rule), Pa: only to scale correlations with.</summary>
    public double PseudoCriticalPressurePa { get; private set; }
    /// <summary>Coldest temperature that all isobars cover, K.</summary>
    public double ColdestK { get; }
    /// <summary>Warmest temperature that all isobars cover, K.</summary>
    public double WarmestK { get; }
    /// <summary>Pressures of the isobars, rising, Pa.</summary>
    public IReadOnlyList<double> PressuresPa => [.. _isobars.Select(i => i.PressurePa)];
    /// <summary>What a person must be told about the properties.</summary>
    public IReadOnlyList<string> Warnings { get; }
    /// <summary>Flashes that the table cost.</summary>
    public int Flashes { get; }
    /// <summary>Number of nodes, all isobars.</summary>
    public int Nodes => _isobars.Sum(i => i.NodeCount);

    /// <summary>Builds a table.</summary>
    /// <param name="flash">Flash of the fluid's model; used during the call only.</param>
    /// <param name="transport">Transport properties of the same substances; used during the call only.</param>
    /// <param name="z">Mole fractions, sum 1.</param>
    /// <param name="pressuresPa">One to three pressures, rising, Pa.</param>
    /// <param name="coldestK">Lower end, K; raised where the equations have no answer.</param>
    /// <param name="warmestK">Upper end, K.</param>
    /// <param name="options">How finely; null for the usual.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    /// <exception cref="SolveException">No phase equilibrium, or enthalpy does not rise with temperature.</exception>
    public static StreamTable Create(Flash flash, TransportModel transport, ReadOnlySpan<double> z, ReadOnlySpan<double> pressuresPa, double coldestK, double warmestK,
        StreamTableOptions? options = null, CancellationToken cancel = default)
    {
        options ??= StreamTableOptions.Default;
        options.Check();
        CheckPressures(pressuresPa);
        if (!(coldestK > 0) || !(warmestK > coldestK) || !double.IsFinite(warmestK))
            throw new ArgumentException($"the table's coldest temperature must be above 0 K and below its warmest, got {coldestK} K and {warmestK} K", nameof(coldestK));
        double[] composition = z.ToArray();
        var maker = new StreamNodeMaker(flash, transport, composition);
        var isobars = new IsobarTable[pressuresPa.Length];
        for (int i = 0; i < isobars.Length; i++)
        {
            isobars[i] = new IsobarTable(pressuresPa[i], new IsobarSampler(maker, pressuresPa[i], options, cancel).Sample(coldestK, warmestK));
            // all isobars end at one temperature: where one was cut short the others are made again
            if (isobars[i].Temperature(0) <= coldestK) continue;
            coldestK = isobars[i].Temperature(0);
            i = i > 0 ? -1 : 0;
        }
        return new StreamTable(isobars, Mean(flash.Model, composition, s => s.MolarMass), Mean(flash.Model, composition, s => s.CriticalPressurePa), [.. flash.Model.Warnings, .. maker.Warnings], maker.Flashes,
            new Recipe(composition, coldestK, warmestK, options));
    }

    /// <summary>Mole fractions that it is made for; empty for a table of constant properties.</summary>
    public IReadOnlyList<double> Composition => _recipe?.Z ?? [];

    // the same isobars of another composition
    internal StreamTable Moved(IsobarTable[] isobars, double[] z, double molarMass, double pseudoCriticalPressurePa) =>
        new(isobars, molarMass, pseudoCriticalPressurePa, Warnings, 0, _recipe! with { Z = z });

    /// <summary>A copy for <see cref="StreamMover"/> to overwrite.</summary>
    internal StreamTable Like() => new([.. _isobars.Select(i => i.Like())], MolarMass, PseudoCriticalPressurePa, Warnings, 0, _recipe);

    /// <summary>After a copy's isobars were overwritten with those of another composition.</summary>
    internal void Settle(double[] z, double molarMass, double pseudoCriticalPressurePa)
    {
        foreach (var pair in _pairs) pair.Settle();
        (MolarMass, PseudoCriticalPressurePa, _recipe) = (molarMass, pseudoCriticalPressurePa, _recipe! with { Z = z });
    }

    /// <summary>This table with one more isobar, for a pressure that was not foreseen.</summary>
    /// <param name="flash">Flash of the model that the table was made with.</param>
    /// <param name="transport">Transport properties of the same substances.</param>
    /// <param name="pressurePa">Pa, different from the table's.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="InvalidOperationException">The table has three isobars, or constant properties.</exception>
    /// <exception cref="SolveException">No phase equilibrium, or enthalpy does not rise with temperature.</exception>
    public StreamTable WithIsobar(Flash flash, TransportModel transport, double pressurePa, CancellationToken cancel = default)
    {
        if (_recipe is null || _direct is not null || _isobars.Length == 3) throw new InvalidOperationException("this table takes no further isobar");
        CheckPressures([pressurePa]);
        var maker = new StreamNodeMaker(flash, transport, _recipe.Z);
        var isobar = new IsobarTable(pressurePa, new IsobarSampler(maker, pressurePa, _recipe.Options, cancel).Sample(_recipe.ColdestK, _recipe.WarmestK));
        IsobarTable[] all = [.. _isobars.Append(isobar).OrderBy(i => i.PressurePa)];
        for (int i = 1; i < all.Length; i++)
            if (all[i].PressurePa == all[i - 1].PressurePa) throw new ArgumentException($"the table already has an isobar at {pressurePa} Pa", nameof(pressurePa));
        return new StreamTable(all, MolarMass, PseudoCriticalPressurePa, [.. Warnings.Union(maker.Warnings)], Flashes + maker.Flashes, _recipe);
    }

    /// <summary>A gas of constant properties, for checks against exact solutions. Enthalpy is molar heat capacity times kelvin.</summary>
    /// <param name="phase">Its properties; density at the pressure given, kept at all pressures.</param>
    /// <param name="molarMass">kg/mol.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="coldestK">Lower end, K.</param>
    /// <param name="warmestK">Upper end, K.</param>
    public static StreamTable Constant(PhaseTransport phase, double molarMass, double pressurePa, double coldestK, double warmestK)
    {
        StreamNode Node(double t) => new()
        {
            TemperatureK = t,
            MolarEnthalpy = t * phase.HeatCapacity * molarMass,
            Phases = "vapour",
            Fractions = [1],
            Values = [t, 1, 1, 1 / phase.Density, phase.Density, phase.Viscosity, phase.Conductivity, phase.HeatCapacity, phase.Density, phase.Viscosity, phase.Conductivity, phase.HeatCapacity, 0, 0],
        };
        return new StreamTable([new IsobarTable(pressurePa, [Node(coldestK), Node(warmestK)])], molarMass, pressurePa * 10, [], 0);
    }

    private static void CheckPressures(ReadOnlySpan<double> p)
    {
        if (p.Length is < 1 or > 3) throw new ArgumentException($"a table has one to three isobars, got {p.Length}", nameof(p));
        for (int i = 0; i < p.Length; i++)
        {
            if (!(p[i] > 0) || !double.IsFinite(p[i])) throw new ArgumentException($"a table's pressure must be above 0 Pa, got {p[i]} Pa", nameof(p));
            if (i > 0 && !(p[i] > p[i - 1])) throw new ArgumentException($"a table's pressures must rise, got {p[i]} Pa after {p[i - 1]} Pa", nameof(p));
        }
    }

    private static double Mean(HelmholtzModel model, double[] z, Func<Fluids.Substances.Substance, double> of)
    {
        double sum = 0;
        for (int i = 0; i < z.Length; i++) sum += z[i] * of(model.Substances[i]);
        return sum;
    }

    // isobars on both sides and the weight of the upper one; beyond the band the nearest two go on
    private (int Lower, double Weight) Place(double pressurePa)
    {
        if (_isobars.Length == 1) return (0, 0);
        double log = Math.Log(pressurePa);
        int i = _isobars.Length == 3 && log > _logPressure[1] ? 1 : 0;
        double w = (log - _logPressure[i]) / (_logPressure[i + 1] - _logPressure[i]);
        // a pressure far outside is a solver's passing guess: do not extrapolate it into nonsense
        return (i, Math.Clamp(w, -MostExtension, 1 + MostExtension));
    }

    /// <summary>Everything at an enthalpy (J/mol) and a pressure (Pa, above 0).</summary>
    public StreamPoint At(double molarEnthalpy, double pressurePa)
    {
        Span<double> v = stackalloc double[StreamColumn.Count];
        double slope = 0;
        bool outside = false;
        string name;
        if (_direct is { } direct)
        {
            var node = direct.At(molarEnthalpy, pressurePa);
            node.Values.CopyTo(v);
            // whoever needs it exactly asks for it
            direct.Temperature(molarEnthalpy, pressurePa, out slope);
            name = node.Phases;
        }
        else name = Evaluate(molarEnthalpy, pressurePa, v, ref slope, out outside);
        return new StreamPoint
        {
            TemperatureK = v[StreamColumn.Temperature],
            TemperatureSlope = slope,
            PressurePa = pressurePa,
            MolarEnthalpy = molarEnthalpy,
            MolarMass = MolarMass,
            VapourFraction = Math.Clamp(v[StreamColumn.VapourFraction], 0, 1),
            Quality = Math.Clamp(v[StreamColumn.Quality], 0, 1),
            Density = 1 / v[StreamColumn.SpecificVolume],
            Vapour = Transport(v[StreamColumn.VapourDensity..]),
            Liquid = Transport(v[StreamColumn.LiquidDensity..]),
            SurfaceTension = Math.Max(v[StreamColumn.SurfaceTension], 0),
            PhaseEnthalpyDifference = Math.Max(v[StreamColumn.PhaseEnthalpyDifference], 0),
            Phases = name,
            Outside = outside,
        };
    }

    /// <summary>Mole fractions of the vapour and of all liquid together at an enthalpy (J/mol) and a pressure (Pa); of an absent phase those it has where it appears.</summary>
    /// <param name="molarEnthalpy">J/mol.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="vapour">Filled; as long as the composition.</param>
    /// <param name="liquid">Filled; as long as the composition.</param>
    /// <exception cref="InvalidOperationException">A table of constant properties has no substances.</exception>
    public void Compositions(double molarEnthalpy, double pressurePa, Span<double> vapour, Span<double> liquid)
    {
        vapour.Clear();
        liquid.Clear();
        if (_direct is { } direct)
        {
            var node = direct.At(molarEnthalpy, pressurePa);
            (node.Vapour ?? node.Liquid!).CopyTo(vapour);
            (node.Liquid ?? node.Vapour!).CopyTo(liquid);
            return;
        }
        var (i, w) = Place(pressurePa);
        if (_isobars[i].Compositions is not { } only) throw new InvalidOperationException("a table of constant properties has no substances");
        if (w == 0) only.Add(molarEnthalpy, 1, vapour, liquid);
        else _pairs[i].Compositions(molarEnthalpy, w, vapour, liquid);
    }

    /// <summary>Temperature (K) and its slope dT/dh (K mol/J) at an enthalpy (J/mol) and a pressure (Pa).</summary>
    public double Temperature(double molarEnthalpy, double pressurePa, out double slope)
    {
        if (_direct is { } direct) return direct.Temperature(molarEnthalpy, pressurePa, out slope);
        var place = Locate(molarEnthalpy, pressurePa);
        slope = place.TemperatureSlope;
        return place.TemperatureK;
    }

    /// <summary>Slope dT/dh (K mol/J) at an enthalpy (J/mol) and a pressure (Pa).</summary>
    public double Slope(double molarEnthalpy, double pressurePa) => _direct is { } direct ? direct.Slope(molarEnthalpy, pressurePa) : Locate(molarEnthalpy, pressurePa).TemperatureSlope;

    /// <summary>Temperature, its slope, the phases and how far from the next change of phases (K) at an enthalpy (J/mol) and a pressure (Pa); null phases where the isobars do not agree on them.</summary>
    internal (double TemperatureK, double Slope, string? Phases, double BorderK) Surroundings(double h, double p)
    {
        var (i, w) = Place(p);
        var place = Locate(h, p);
        string? phases;
        double border;
        if (w == 0) (phases, border) = _isobars[i].Inside(h);
        else (phases, border) = _pairs[i].Inside(h, w);
        return (place.TemperatureK, place.TemperatureSlope, phases, border * place.TemperatureSlope);
    }

    /// <summary>Where the table answers to an enthalpy (J/mol) and a pressure (Pa), with the temperature there.</summary>
    internal StreamPlace Locate(double molarEnthalpy, double pressurePa)
    {
        var (i, w) = Place(pressurePa);
        if (w != 0) return _pairs[i].Locate(i, molarEnthalpy, w);
        var place = _isobars[i].Locate(molarEnthalpy);
        double k = _isobars[i].Temperature(place, molarEnthalpy, out double slope);
        return new(i, 0, place, place, k, slope);
    }

    /// <summary>The isobars, by rising pressure.</summary>
    internal IReadOnlyList<IsobarTable> Isobars => _isobars;

    private string Evaluate(double h, double p, Span<double> v, ref double slope, out bool outside)
    {
        var (i, w) = Place(p);
        var a = _isobars[i];
        v.Clear();
        if (w == 0)
        {
            int only = a.RegionOf(h);
            a.Add(only, h, 1, v, ref slope);
            outside = h < a.StartOf(0) || h > a.StartOf(a.Names.Length);
            a.Mend(h, v);
            return a.Names[only];
        }
        string name = _pairs[i].Evaluate(h, p, w, v, ref slope, out outside);
        outside |= w is <= -MostExtension or >= 1 + MostExtension;
        (w < 0.5 ? a : _isobars[i + 1]).Mend(h, v);
        return name;
    }

    /// <summary>Temperature (K) at which liquid begins to boil at a pressure (Pa); null where the table is without liquid alone, or without vapour, or is none.</summary>
    public double? BoilingK(double pressurePa)
    {
        if (_guide is { } guide) return guide.BoilingK(pressurePa);
        var (i, w) = Place(pressurePa);
        if (_isobars[i].BoilingK is not { } lower) return null;
        return w == 0 ? lower : _isobars[i + 1].BoilingK is { } upper ? (1 - w) * lower + w * upper : null;
    }

    private static PhaseTransport Transport(ReadOnlySpan<double> v) => new(v[0], v[1], v[2], v[3]);

    /// <summary>Lowest and highest enthalpy that the table covers at a pressure, J/mol.</summary>
    public (double Lowest, double Highest) Range(double pressurePa)
    {
        if (_guide is { } guide) return guide.Range(pressurePa);
        var (i, w) = Place(pressurePa);
        var a = _isobars[i];
        return w == 0 ? (a.StartOf(0), a.StartOf(a.Names.Length)) : _pairs[i].Range(w);
    }

    /// <summary>Enthalpies of the nodes of the isobar nearest to a pressure, J/mol, rising.</summary>
    public IReadOnlyList<double> NodeEnthalpies(double pressurePa) => _guide is { } guide ? guide.NodeEnthalpies(pressurePa) : _isobars.MinBy(i => Math.Abs(Math.Log(i.PressurePa / pressurePa)))!.Enthalpies.ToArray();

    /// <summary>Enthalpy (J/mol) at a temperature (K, within the table) and a pressure (Pa).</summary>
    /// <exception cref="ArgumentException">The temperature lies outside the table.</exception>
    public double Enthalpy(double temperatureK, double pressurePa)
    {
        if (_direct is { } direct) return direct.Enthalpy(temperatureK, pressurePa);
        var (low, high) = Range(pressurePa);
        double coldest = Temperature(low, pressurePa, out _), warmest = Temperature(high, pressurePa, out _);
        // a table's end asked for by its own name, to rounding
        if (!(temperatureK >= coldest - 1e-9 && temperatureK <= warmest + 1e-9))
            throw new ArgumentException($"temperature {temperatureK} K lies outside the table, {coldest} to {warmest} K at {pressurePa} Pa", nameof(temperatureK));
        if (temperatureK <= coldest) return low;
        if (temperatureK >= warmest) return high;
        return Brent.Solve(h => Temperature(h, pressurePa, out _) - temperatureK, low, high, 1e-12 * (high - low));
    }
}
