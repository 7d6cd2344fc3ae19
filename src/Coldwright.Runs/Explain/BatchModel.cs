using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Machine.Layout;
using Coldwright.Materials.Solids;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>What is odd about a batch, for a prediction.</summary>
/// <param name="WarmerK">Opened so much warmer than need be, K.</param>
/// <param name="LineHeat">Heat of the drain line over that expected.</param>
/// <param name="FlaskHeat">Heat of the flask over that expected.</param>
/// <param name="SeepKg">Lost through a valve that does not shut, kg.</param>
/// <param name="Impurity">Mole fraction of gas that does not condense with the product.</param>
/// <param name="FeedFaded">Share of the feed compressor's flow that is lost.</param>
internal sealed record BatchOddity(double WarmerK = 0, double LineHeat = 1, double FlaskHeat = 1, double SeepKg = 0, double Impurity = 0, double FeedFaded = 0);

/// <summary>A batch in five figures, for a comparison; the whole batch in time is the work of <c>batch</c>.</summary>
/// <param name="FedKg">Gas taken, kg.</param>
/// <param name="CollectedKg">In the flask, kg.</param>
/// <param name="LnBoilOff">ln of what the standing flask loses (kg/s).</param>
/// <param name="LnExcess">ln of the pressure at opening over the vapour pressure at the vessel's temperature.</param>
/// <param name="OpeningK">Vessel at opening, K.</param>
/// <param name="LnWait">ln of the time from the end of the feed to the opening (s).</param>
internal sealed record BatchFigures(double? FedKg, double? CollectedKg, double? LnBoilOff, double? LnExcess, double? OpeningK, double? LnWait)
{
    public const int Count = 6;
    public double? this[int i] => i switch { 0 => FedKg, 1 => CollectedKg, 2 => LnBoilOff, 3 => LnExcess, 4 => OpeningK, _ => LnWait };
}

/// <summary>
/// Predicts the batch of a machine from its pull-down: what it carries off at the condensing temperature condenses the feed; let-down, drain line and flask take their
/// share. Grams only; docs/theory/explain.md.
/// </summary>
internal sealed class BatchModel
{
    // Our assumptions: a shut drain valve of 60 g, a flask's wall of 0.15 kg a litre half of it wetted, 0.45 kJ/(kg K); half an hour of waiting before opening; a good flask's loss.
    private const double ValveKg = 0.06, FlaskKgPerM3 = 150, Wetted = 0.5, FlaskJPerKgK = 450, WaitS = 1800, LeastWaitS = 30, UsualLossKgPerS = 6e-6, MostFill = 0.85, PumpAboveRoomK = 30, LeastMadeKg = 0.03, MisreadK = 3;
    private const int Nodes = 40;

    private readonly double[] _k = new double[Nodes], _p = new double[Nodes], _liquid = new double[Nodes], _density = new double[Nodes];
    private readonly double _boilingK, _latent, _liquidAtRoom, _arriving, _vesselM3, _loadJPerK;
    private readonly VesselPart _vessel;
    // what the feed compressor delivers with its shell warm; null: the supply's pressure drives the feed
    private readonly double? _pumpedKgPerS;

    private BatchModel(MachineDescription machine, LoopLayout layout, VesselPart vessel, FeedPart feed)
    {
        (_vessel, FeedPa) = (vessel, feed.PressurePa);
        if (feed is { Compressor: { } pump, SupplyPressurePa: { } supply })
            _pumpedKgPerS = new FeedCompressor(pump, new GasPhase(new ProductFluid(feed.Gas).Model, [1.0]), machine.Room.TemperatureK).At(machine.Room.TemperatureK, supply, feed.PressurePa, machine.Room.TemperatureK + PumpAboveRoomK).FlowKgPerS;
        var fluid = new ProductFluid(feed.Gas);
        double room = machine.Room.PressurePa, cold = fluid.Saturation(room)!.Value.TemperatureK, hot = Math.Min(fluid.Saturation(Math.Min(1.3 * FeedPa, 0.95 * fluid.CriticalPressurePa))!.Value.TemperatureK, fluid.Model.Substances[0].CriticalTemperatureK - 2);
        (_boilingK, CondensingK) = (cold, fluid.Saturation(Math.Min(FeedPa, 0.95 * fluid.CriticalPressurePa))!.Value.TemperatureK);
        for (int i = 0; i < Nodes; i++)
        {
            _k[i] = cold - 3 + (hot - cold + 3) * i / (Nodes - 1);
            var s = PureSaturation.AtTemperature(fluid.Model, _k[i]);
            (_p[i], _density[i]) = (s.PressurePa, s.LiquidDensity * fluid.MolarMass);
            _liquid[i] = fluid.Saturated(s.PressurePa, 0).MolarEnthalpy / fluid.MolarMass;
        }
        _liquidAtRoom = At(_liquid, cold);
        _latent = fluid.Saturated(room, 1).MolarEnthalpy / fluid.MolarMass - _liquidAtRoom;
        double arrivesK = layout.FeedPrecooled && layout.Precooler is { } precooler ? precooler.OutletTemperatureK : machine.Room.TemperatureK;
        _arriving = fluid.At(arrivesK, FeedPa).MolarEnthalpy / fluid.MolarMass;
        _vesselM3 = 0.85 * vessel.VolumeM3;
        var copper = SolidLibrary.Default.Find("copper-dhp");
        double lines = machine.Lines.Where(l => l.Tube is not null && layout.ProductPath.Any(p => p.Part.Name == PartOf(l.From)) && (PartOf(l.To) == layout.Flask?.Name || PartOf(l.From) == vessel.Name))
            .Sum(l => l.Tube!.MetalAreaM2 * l.LengthM * copper.Density!.KgPerM3);
        double copperJPerKg = copper.SpecificHeat(0.5 * (cold + machine.Room.TemperatureK)).Value * (machine.Room.TemperatureK - cold);
        LineJ = (lines + ValveKg) * copperJPerKg;
        double flaskM3 = layout.Flask?.VolumeM3 ?? 1e-3;
        FlaskJ = (layout.Flask?.WallMassKg ?? FlaskKgPerM3 * flaskM3) * Wetted * FlaskJPerKgK * (machine.Room.TemperatureK - cold);
        LossKgPerS = layout.Flask?.BoilOffM3PerS is { } loss ? loss * At(_density, cold) : UsualLossKgPerS;
        _loadJPerK = vessel.Tube.MetalAreaM2 * vessel.LengthM * copper.Density!.KgPerM3 * copper.SpecificHeat(120).Value * 1.6;
    }

    public double FeedPa { get; }
    /// <summary>True when a described compressor pumps the feed.</summary>
    public bool HasFeedCompressor => _pumpedKgPerS is not null;
    public double CondensingK { get; }
    public double LineJ { get; }
    public double FlaskJ { get; }
    public double LossKgPerS { get; }
    /// <summary>Heat of vaporisation at the room's pressure, J/kg.</summary>
    public double LatentJPerKg => _latent;

    /// <summary>The model; null for a machine that makes no liquid.</summary>
    public static BatchModel? Of(MachineDescription machine, LoopLayout layout) => layout is { Vessel: { } vessel, Feed: { } feed } ? new BatchModel(machine, layout, vessel, feed) : null;

    private static string PartOf(string port) => port.IndexOf('.') is >= 0 and var dot ? port[..dot] : port;

    private double At(double[] a, double k)
    {
        double x = Math.Clamp((k - _k[0]) / (_k[1] - _k[0]), 0, Nodes - 1.0001);
        return a[(int)x] + (x - (int)x) * (a[(int)x + 1] - a[(int)x]);
    }

    /// <summary>Share of the liquid that flashes when it is let down from a temperature, K.</summary>
    public double Flashed(double k) => Math.Clamp((At(_liquid, k) - _liquidAtRoom) / _latent, 0, 1);

    /// <summary>Measured figures.</summary>
    public BatchFigures Measured(BatchTrace b) => new(b.FedKg, b.CollectedKg, b.BoilOffKgPerS is > 1e-7 and var loss ? Math.Log(loss) : null,
        b is { OpeningK: { } k, OpeningPa: { } p } && k > _k[0] && k < _k[^1] ? Math.Log(p / At(_p, k)) : null, b.OpeningK, b.WaitS is { } wait ? Math.Log(Math.Max(LeastWaitS, wait)) : null);

    /// <summary>Figures of a course with a batch like the one seen, from where the load truly stood: what kept the pull-down from the file's end is not counted again.</summary>
    public BatchFigures Predict(Course c, Trace seen, BatchOddity odd)
    {
        var like = seen.Batch!;
        // what it carries off while the load passes the condensing temperature would condense; as far above its end as the true one
        double modelK = LoadAt(c, seen.EndS), endK = seen.Lines[Observable.Load].At(seen.EndS), spare = CondensingK - 1.5 - endK, watts = 0, open = CondensingK, passesK = CondensingK - (endK - modelK);
        if (spare > 0)
        {
            int i = 1;
            while (i < c.TimeS.Count - 1 && c.LoadK[i] > passesK) i++;
            watts = c.StoredW[i].RecuperatorW + c.StoredW[i].LoadW + c.StoredW[i].InsulationW;
        }
        // liquid was made although the vessel read too warm for it: its thermometer is wrong, and says nothing of what there is to expect
        bool misread = endK > CondensingK + MisreadK && Math.Max(like.FedKg ?? 0, like.CollectedKg ?? 0) > LeastMadeKg;
        double heat = _arriving - At(_liquid, CondensingK), brim = MostFill * _vesselM3 * At(_density, CondensingK);
        double made = Math.Min(brim, Math.Max(0, (watts * like.FeedS + _loadJPerK * Math.Max(0, spare)) / heat * (1 - Math.Min(0.6, 20 * odd.Impurity))));
        if (_pumpedKgPerS is { } pumped) made = Math.Min(made, pumped * Math.Max(0, 1 - odd.FeedFaded) * like.FeedS);
        double content = like.FedKg ?? made;
        if (watts > 0) open = Math.Max(endK, CondensingK - WaitS * watts / (_loadJPerK + content * 1100));
        double opened = Math.Min(CondensingK, open + odd.WarmerK), wait = opened > open ? Math.Max(LeastWaitS, WaitS * (CondensingK - opened) / (CondensingK - open)) : WaitS;
        double vapour = 0.25 * _vesselM3 * At(_density, CondensingK) * 0.08;
        double collected = Math.Max(0, (content - vapour - odd.SeepKg) * (1 - Flashed(opened)) - (LineJ * odd.LineHeat + FlaskJ * odd.FlaskHeat) / _latent);
        return new BatchFigures(misread ? null : made, misread ? null : collected, Math.Log(LossKgPerS * Math.Pow(odd.FlaskHeat, 1.5)), -Math.Log(Math.Max(0.4, 1 - 25 * odd.Impurity)), misread ? null : opened, Math.Log(wait));
    }

    /// <summary>Liquid per hour that a course's cooling at the condensing temperature makes, let down to the room, L/h at its boiling point; 0 where it does not get there.</summary>
    public double LitresPerHour(Course c)
    {
        if (c.StopK > CondensingK - 0.5) return 0;
        int i = 1;
        while (i < c.TimeS.Count - 1 && c.LoadK[i] > CondensingK) i++;
        double watts = c.StoredW[i].RecuperatorW + c.StoredW[i].LoadW + c.StoredW[i].InsulationW;
        return Math.Max(0, watts / (_arriving - At(_liquid, CondensingK)) * (1 - Flashed(CondensingK)) / At(_density, _boilingK) * 3.6e6);
    }

    private static double LoadAt(Course c, double t)
    {
        int i = 0;
        while (i < c.TimeS.Count - 1 && c.TimeS[i] < t) i++;
        return c.LoadK[i];
    }

    /// <summary>Doubt of each figure, one standard deviation. Our assumptions.</summary>
    public double Doubt(int figure, BatchFigures expected, BatchTrace like) => figure switch
    {
        0 => 0.03 + 0.6 * (expected.FedKg ?? 0),
        // what line and flask take hangs on a valve's mass and on how much of the wall is wetted, which no file says
        1 => 0.01 + 0.06 * (like.FedKg ?? 0) + (like.FedKg is null ? 0.6 * (expected.FedKg ?? 0) : 0) + 0.35 * (LineJ + FlaskJ) / _latent,
        2 => 0.45,
        3 => 0.1,
        // how far it cools in the time that people wait hangs on the content; a reading grows old at some kelvin in ten minutes
        4 => 6 + like.OpeningAgeS / 150,
        // a quarter of an hour to an hour: people differ
        _ => 0.7,
    };
}
