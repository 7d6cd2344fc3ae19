using System.Collections.Concurrent;
using Coldwright.Design.Scoring;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.Freezing;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Design.Blending;

/// <summary>Rates mixtures on one machine between its two pressures with one fluid model. May be asked from several threads.</summary>
internal sealed class BlendRater
{
    // between the nodes of a search's enthalpy curves a straight line errs by so much, K, and a cubic, which is what runs there, by a hundredth of that
    private const double SearchErrorK = 0.9, WarmMarginK = 1, LowestSoughtK = 64, ScanK = 6, NearK = 8;

    private readonly MachineDescription _machine;
    private readonly LoopLayout _layout;
    private readonly string[] _names;
    private readonly Func<IReadOnlyList<string>, HelmholtzModel> _create;
    private readonly ConcurrentDictionary<string, HelmholtzModel> _models = new(StringComparer.Ordinal);
    private readonly BlendOptions _options;
    private readonly double _loadK;
    private readonly double? _litresPerWatt;
    private readonly double[] _prices;
    private int _ratings;

    public BlendRater(MachineDescription machine, LoopLayout layout, IReadOnlyList<string> names, Func<IReadOnlyList<string>, HelmholtzModel> create, BlendOptions options, double loadK, double? litresPerWatt, IReadOnlyList<double?> pricePerKg)
    {
        (_machine, _layout, _names, _create, _options, _loadK, _litresPerWatt) = (machine, layout, [.. names], create, options, loadK, litresPerWatt);
        DischargeK = options.Limits.DischargeK ?? layout.Compressor.MaximumDischargeTemperatureK;
        _prices = [.. pricePerKg.Select(p => p ?? 0)];
    }

    /// <summary>Goal and limits.</summary>
    public BlendOptions Options => _options;
    /// <summary>Hottest discharge allowed, K.</summary>
    public double DischargeK { get; }
    /// <summary>Mixtures rated so far.</summary>
    public int Ratings => _ratings;

    /// <summary>A kilogram's price, in the shop's currency.</summary>
    public double PricePerKg(double[] x) => x.Select((v, i) => v * Mass(i) * _prices[i]).Sum() / x.Select((v, i) => v * Mass(i)).Sum();

    public double Flammable(double[] x) => x.Where((_, i) => FlammabilityLimits.Burns(_names[i])).Sum();

    /// <summary>By how much a mixture breaks the limits that need no rating, as a share of them; 0 when it keeps them.</summary>
    public double Over(double[] x) => Judge(x, []);

    /// <summary>Rates a mixture.</summary>
    /// <param name="x">Mole fractions of all gases.</param>
    /// <param name="floor">A merit that must be passed to matter: below it the answer may be cut short.</param>
    /// <param name="full">True: every figure, by its own flash.</param>
    /// <param name="nearK">Temperature without load of a mixture close by, K: the search for it begins a little above; null: at the warm end.</param>
    public BlendPoint Of(double[] x, double floor = double.NegativeInfinity, bool full = false, double? nearK = null)
    {
        var broken = new List<Spoken>();
        // what needs no fluid comes first: a mixture that is not allowed is not rated
        double over = Judge(x, broken);
        if (over > 0 && !full) return new BlendPoint { Merit = BlendPoint.Unusable * (1 + over), Broken = broken };
        int[] present = [.. Enumerable.Range(0, x.Length).Where(i => x[i] > 0)];
        string[] names = [.. present.Select(i => _names[i])];
        double[] z = [.. present.Select(i => x[i])];
        var model = _models.GetOrAdd(string.Join(';', names), _ => _create(names));
        try
        {
            return Rated(model, names, z, floor, full, nearK, broken, over);
        }
        catch (SolveException)
        {
            return BlendPoint.Nothing;
        }
    }

    private double Judge(double[] x, List<Spoken> broken)
    {
        double over = 0;
        void Most(string what, double value, double? limit)
        {
            if (limit is not { } l || value <= l * (1 + 1e-9)) return;
            over += value / Math.Max(l, 1e-3) - 1;
            broken.Add(FormattableString.Invariant($"{what} {value:0.###}, allowed {l:0.###}"));
        }
        Most("share of gases that burn", Flammable(x), _options.Limits.Flammable);
        Most("price of a kilogram", PricePerKg(x), _options.Limits.PricePerKg);
        return over;
    }

    private BlendPoint Rated(HelmholtzModel model, string[] names, double[] z, double floor, bool full, double? nearK, List<Spoken> broken, double over)
    {
        var (high, low) = (_machine.Operation.HighPressurePa, _machine.Operation.LowPressurePa);
        double coldK = _loadK - _layout.Coil.DifferenceK, warmK = _layout.Precooler is { } p ? Math.Min(p.OutletTemperatureK, _machine.Room.TemperatureK + _layout.Aftercooler.ApproachK) : _machine.Room.TemperatureK + _layout.Aftercooler.ApproachK;
        if (_options.Goal == BlendGoal.Endless)
        {
            Interlocked.Increment(ref _ratings);
            double least = new IsothermalDifference(model, high, low + _layout.Recuperator.LowSidePressureDropPa, coldK, warmK).Smallest(z, floor);
            return new BlendPoint { Merit = Judged(least, over), DifferenceJPerMol = least, InletK = warmK, Broken = broken };
        }
        double difference = _options.Goal is BlendGoal.Cooling or BlendGoal.Litres && full ? new IsothermalDifference(model, high, low + _layout.Recuperator.LowSidePressureDropPa, coldK, warmK, 65).Smallest(z) : double.NaN;
        Interlocked.Increment(ref _ratings);
        bool lowest = _options.Goal == BlendGoal.Lowest;
        var machine = _machine with { Charge = _machine.Charge with { Mixture = new Composition(names, z) } };
        var loop = new LoopSolver(machine, _layout, model, new RatingOptions { ColdestK = lowest ? LowestSoughtK : _loadK, CurveErrorK = full ? 0.1 : SearchErrorK }, CancellationToken.None);
        // what must be passed is a temperature: a mixture with nothing left there is no colder
        double? passed = lowest && !full && -floor < loop.NominalInletK - WarmMarginK && -floor > loop.ColdestLoadK ? -floor : null;
        if (passed is { } known && loop.Solve(known, exact: false).NetCoolingW <= 0) return new BlendPoint { Merit = floor - 1 };
        if (lowest && nearK + NearK is { } near && near < loop.NominalInletK - WarmMarginK && near > loop.ColdestLoadK && loop.Solve(near, exact: false).NetCoolingW > 0) passed = near;
        double? noLoad = lowest || full ? NoLoad(lowest ? loop : new LoopSolver(machine, _layout, model, new RatingOptions { ColdestK = LowestSoughtK, CurveErrorK = SearchErrorK }, CancellationToken.None), passed) : null;
        double at = lowest ? Math.Max(noLoad ?? warmK - WarmMarginK, loop.ColdestLoadK) : Math.Max(_loadK, loop.ColdestLoadK);
        if (!lowest && at > _loadK + 0.01) return BlendPoint.Nothing;
        var s = loop.Solve(at, exact: false);
        // above nothing every watt is so many litres; below, what is missing stands for itself
        double? litres = _litresPerWatt * Math.Max(s.NetCoolingW, 0);
        double merit = lowest ? -(noLoad ?? 1000) : _options.Goal == BlendGoal.Litres ? _litresPerWatt!.Value * s.NetCoolingW : s.NetCoolingW;
        // below what must be passed nothing else matters
        if (!full && merit < floor) return new BlendPoint { Merit = merit, CoolingW = s.NetCoolingW, NoLoadK = noLoad };
        var point = new BlendPoint { Merit = merit, CoolingW = s.NetCoolingW, CollectedLPerH = lowest ? null : litres, NoLoadK = noLoad, DifferenceJPerMol = difference, FlowMolPerS = s.GrossCoolingW / Math.Max(s.CoilOutlet - s.ThrottleInlet, 1e-9), InletK = s.RecuperatorInletK, PrecoolingW = s.PrecoolingOfMixtureW };
        return Limited(point, loop, s, model, broken, over, full);
    }

    private BlendPoint Limited(BlendPoint point, LoopSolver loop, LoopSolution s, HelmholtzModel model, List<Spoken> broken, double over, bool full)
    {
        var limits = _options.Limits;
        double suctionK = loop.Low.Temperature(s.SuctionEnthalpy);
        double[] z = loop.Z.ToArray();
        double discharge = new Machine.Compression.CompressorModel(_layout.Compressor, loop.Flash, z).Run(suctionK, loop.SuctionPressurePa, loop.DischargePressurePa).Discharge.TemperatureK;
        if (discharge > DischargeK)
        {
            over += discharge / DischargeK - 1;
            broken.Add(Spoken.Of($"discharge {SpokenAmount.Celsius(discharge)}, allowed {SpokenAmount.Celsius(DischargeK)}"));
        }
        var cold = loop.StateAtEnthalpy(loop.LowPressurePa, s.ThrottleInlet, loop.Low.Temperature(s.ThrottleInlet));
        var nearest = new FreezingModel(model).At(cold, searchTemperatures: false).Where(m => m.Margin is not null).MinBy(m => m.Margin);
        if (nearest?.Margin < limits.FreezingMargin)
        {
            over += limits.FreezingMargin / Math.Max(nearest.Margin.Value, 1e-3) - 1;
            broken.Add(FormattableString.Invariant($"freezing margin of {nearest.Component} {nearest.Margin.Value:0.##}, at least {limits.FreezingMargin:0.##} wanted"));
        }
        bool? twoLiquids = null;
        if (limits.OneLiquid || full)
        {
            twoLiquids = loop.StateAtEnthalpy(loop.HighPressurePa, s.ThrottleInlet, loop.High.Temperature(s.ThrottleInlet)).Phases.Any(p => p.Kind == PhaseKind.SecondLiquid);
            if (limits.OneLiquid && twoLiquids == true)
            {
                over += 0.2;
                broken.Add("two liquids before the throttle");
            }
        }
        return point with { Merit = Judged(point.Merit, over), DischargeK = discharge, Freezing = nearest is null ? null : (nearest.Component, nearest.Margin!.Value), TwoLiquids = twoLiquids, Broken = broken };
    }

    // coming from the warm side, or from a temperature at which something is left, the first at which nothing is left over
    private static double? NoLoad(LoopSolver loop, double? fromK)
    {
        double warm = fromK ?? loop.NominalInletK - WarmMarginK, above = loop.Solve(warm, exact: false).NetCoolingW, before = warm;
        if (above <= 0) return null;
        for (double t = warm - ScanK; before > loop.ColdestLoadK; t -= ScanK)
        {
            t = Math.Max(t, loop.ColdestLoadK);
            double net = loop.Solve(t, exact: false).NetCoolingW;
            if (net <= 0) return Numerics.Roots.Brent.Solve(k => loop.Solve(k, exact: false).NetCoolingW, t, net, before, above, 1e-3);
            (before, above) = (t, net);
        }
        return loop.ColdestLoadK;
    }

    private static double Judged(double merit, double over) => over > 0 ? BlendPoint.Unusable * (1 + over) : merit;

    private double Mass(int i) => SubstanceCatalog.Get(_names[i]).MolarMass;
}
