using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Precooling;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Rating;

/// <summary>Rates a cooler with one fluid model: cooling curve, operating point, product, power, cost, account of exergy, verdict.</summary>
internal sealed class ModelRatingSolver
{
    private readonly MachineDescription _machine;
    private readonly LoopLayout _layout;
    private readonly ShopDescription _shop;
    private readonly RatingOptions _options;
    private readonly CancellationToken _cancel;
    private readonly LoopSolver _loop;
    private readonly ProductSolver? _product;

    public ModelRatingSolver(MachineDescription machine, LoopLayout layout, ShopDescription shop, HelmholtzModel model, RatingOptions options, CancellationToken cancel)
    {
        (_machine, _layout, _shop, _options, _cancel) = (machine, layout, shop, options, cancel);
        _loop = new LoopSolver(machine, layout, model, options, cancel);
        if (layout.Feed is { } feed) _product = new ProductSolver(feed, machine.Room);
    }

    public ModelRating Solve()
    {
        List<Spoken> warnings = [.. _loop.Model.Warnings];
        if (_layout.ColdBox is null) warnings.Add("no cold-box is described: the heat leak is taken as zero and the cooling is too good");
        var curve = Curve();
        double? noLoad = NoLoadTemperature(curve, warnings);
        double targetK = OperatingTemperature(curve), operatingK = targetK;
        // no product there: what the cooler does is stand at its no-load temperature
        if (_options.OperatingTemperatureK is null && Point(targetK).NetCoolingW <= 0) operatingK = noLoad ?? curve[^1].TemperatureK;
        var solution = _loop.Solve(operatingK, exact: true);
        var leak = _loop.Leak(operatingK, solution.RecuperatorInletK);
        if (leak is not null) warnings.AddRange(Spoken.All(leak.Warnings));
        var point = OperatingPoint.Build(_machine, _layout, _loop, _product, solution);
        warnings.AddRange(Spoken.All(point.Warnings));
        var verdict = Verdict.Find(_machine, _layout, _loop, _product, noLoad, point, targetK);
        return new ModelRating
        {
            Model = _loop.Model.Name,
            NoLoadTemperatureK = noLoad,
            ThrottleOutletK = point.ThrottleOutlet.TemperatureK,
            CoolingCurve = curve,
            OperatingTemperatureK = operatingK,
            Recuperator = _loop.Exchanger.Stations(solution.RecuperatorInletK, operatingK - _layout.Coil.DifferenceK, solution.Exchanger.Duty, 80)
                .Select(s => new RecuperatorStation(s.DutyShare, s.HighK, s.LowK, s.HighPhases, s.LowPhases)).ToArray(),
            IsothermalEnthalpyDifference = Differences(operatingK - _layout.Coil.DifferenceK, solution.RecuperatorInletK),
            Loop = point.Loop,
            Power = point.Power,
            HeatLeakW = solution.LeakPaths,
            Liquid = point.Liquid,
            EnergyKWhPerL = point.Liquid is { CollectedLPerH: > 0 } l ? point.Power.TotalW / 1000 / l.CollectedLPerH : null,
            CostPerL = Cost(point),
            CarnotFraction = CarnotFraction(point, curve),
            Exergy = point.Exergy,
            Balance = point.Balance,
            Limits = point.Limits,
            LimitedBy = verdict,
            Warnings = warnings.Distinct().ToArray(),
        };
    }

    private List<CoolingPoint> Curve()
    {
        double warm = _loop.NominalInletK, step = _options.CurveStepK;
        int count = Math.Max(8, (int)Math.Ceiling((warm - 1 - _loop.ColdestLoadK) / step));
        var points = new List<CoolingPoint>(count + 1);
        for (int i = 0; i <= count; i++)
        {
            _cancel.ThrowIfCancellationRequested();
            points.Add(Point(_loop.ColdestLoadK + (warm - 1 - _loop.ColdestLoadK) * i / count));
        }
        return points;
    }

    private CoolingPoint Point(double loadK)
    {
        var s = _loop.Solve(loadK, exact: false);
        return new CoolingPoint(loadK, s.GrossCoolingW, s.ColdEndLeakW, s.Exchanger.WarmEndDifferenceK, s.Exchanger.PinchK, s.Exchanger.PinchHighK);
    }

    // coming from the warm side, the first temperature at which nothing is left over
    private double? NoLoadTemperature(List<CoolingPoint> curve, List<Spoken> warnings)
    {
        if (curve[^1].NetCoolingW <= 0) return null;
        for (int i = curve.Count - 2; i >= 0; i--)
            if (curve[i].NetCoolingW <= 0)
                return Brent.Solve(t => Point(t).NetCoolingW, curve[i].TemperatureK, curve[i].NetCoolingW, curve[i + 1].TemperatureK, curve[i + 1].NetCoolingW, 1e-4);
        warnings.Add(Spoken.Of($"cooling is left at {SpokenAmount.Temperature(curve[0].TemperatureK, "0.#")}, the coldest temperature looked at: the no-load temperature lies below it, and freezing is not looked at in this version"));
        return curve[0].TemperatureK;
    }

    private double OperatingTemperature(List<CoolingPoint> curve)
    {
        double warm = _loop.NominalInletK - 1;
        if (_options.OperatingTemperatureK is { } asked) return Math.Clamp(asked, _loop.ColdestLoadK, warm);
        if (_product is null) return Best(curve, p => p.NetCoolingW * (_machine.Room.TemperatureK / p.TemperatureK - 1));
        if (_product.CondensingK is { } t) return Math.Clamp(t, _loop.ColdestLoadK, warm);
        // above the critical pressure there is no condensing temperature: the load temperature that collects most
        double arriving = _product.Arriving(ArrivingK()).MolarEnthalpy;
        return Best(curve, p =>
        {
            var leaving = _product.Leaving(p.TemperatureK);
            double heat = arriving - leaving.Enthalpy;
            return heat > 0 ? p.NetCoolingW / heat * (1 - _product.LetDown(leaving.Enthalpy).VapourFraction) : 0;
        });
    }

    private static double Best(List<CoolingPoint> curve, Func<CoolingPoint, double> merit) => curve.MaxBy(merit)!.TemperatureK;

    private double? ArrivingK() => _layout.FeedPrecooled ? _layout.Precooler?.OutletTemperatureK : null;

    // the recuperator's ends are among the points, since the least value often lies at one of them
    private (double, double)[] Differences(double coldEndK, double warmEndK)
    {
        double cold = Math.Max(_loop.High.ColdestK, _loop.Low.ColdestK), warm = Math.Min(_loop.High.WarmestK, _loop.Low.WarmestK);
        return Enumerable.Range(0, 121).Select(i => cold + (warm - cold) * i / 120).Append(coldEndK).Append(warmEndK).Distinct().Order()
            .Select(t => (t, _loop.Exchanger.IsothermalDifference(t))).ToArray();
    }

    private CostPerLitre? Cost(OperatingPoint point)
    {
        var mixture = _machine.Charge.Mixture;
        double molarMass = 0;
        for (int i = 0; i < mixture.Names.Count; i++) molarMass += mixture.MoleFractions[i] * _loop.Model.Substances[i].MolarMass;
        return LitreCost.Of(_shop, point.Liquid, point.Power.TotalW, mixture, (_machine.Charge.MassKg ?? 0) / molarMass, _loop.Model);
    }

    private double CarnotFraction(OperatingPoint point, List<CoolingPoint> curve)
    {
        if (_product is not null) return point.Exergy.ProductW / point.Power.TotalW;
        // the best point of the curve, at the power of the operating point (pressures and suction gas are nearly the same)
        double room = _machine.Room.TemperatureK;
        return Math.Max(0, curve.Max(p => p.NetCoolingW * (room / p.TemperatureK - 1))) / point.Power.TotalW;
    }

    /// <summary>Share of Carnot and power of the precooler.</summary>
    internal static double PrecoolerPowerW(PrecoolerPart part, double roomK, double dutyW) =>
        dutyW <= 0 ? 0 : dutyW / PrecoolerModel.CoefficientOfPerformance(part, roomK);
}
