using S = Coldwright.Blind.SecondHand.CoolerSizes;

namespace Coldwright.Blind.SecondHand;

/// <summary>
/// Recuperator, throttle, coil and load at one moment, by balances alone: the throttle's inlet enthalpy is the one at which equal parcels of heat, each over its own film and temperature
/// difference, need just the length that is there. Both halves of the recuperator and the load give up stored heat as they follow; heat set free in the metal goes to the cold end and to the
/// warm end as its place along the length has it.
/// </summary>
internal sealed class ColdEnd(Truth truth)
{
    private const int Parcels = 14;
    private const double MetalWPerK = 250, VesselFilm = 1400, CondensingWPerK = 45, LeastK = 0.02, ReturnLineS = 90, LiquidMovesS = 60;
    private readonly double[] _hot = new double[Parcels + 1], _cold = new double[Parcels + 1], _metres = new double[Parcels], _wall = new double[Parcels], _highK = new double[Parcels], _lowK = new double[Parcels];
    private double _enthalpy = double.NaN;

    public double LoadK { get; private set; }
    public double ColdHalfK { get; private set; }
    public double WarmHalfK { get; private set; }
    public double ThrottleK { get; private set; }
    public double CoilInletK { get; private set; }
    public double CoilOutletK { get; private set; }
    public double ReturnK { get; private set; }
    public double CoilW { get; private set; }
    /// <summary>Condensed into the vessel in the last step, W.</summary>
    public double CondensedW { get; private set; }
    /// <summary>Enthalpy rise between the warm end's inlet and its outlet, W.</summary>
    public double CarriedOffW { get; private set; }

    /// <summary>All at the room's temperature.</summary>
    public void Warm(double roomK)
    {
        LoadK = ColdHalfK = WarmHalfK = ThrottleK = CoilInletK = CoilOutletK = ReturnK = roomK;
        Array.Fill(_highK, roomK);
        Array.Fill(_lowK, roomK);
    }

    /// <summary>Pieces of the recuperator for what the loop holds, equally long. Liquid needs a minute to move (our assumption).</summary>
    public IEnumerable<(double M, double HighK, double LowK)> Pieces
    {
        get
        {
            for (int i = 0; i < Parcels; i++) yield return (S.LengthM / Parcels, _highK[i], _lowK[i]);
        }
    }

    private void MoveLiquid(double dt)
    {
        double sum = _metres.Sum(), share = dt / (dt + LiquidMovesS), from = 0;
        for (int i = 0, at = 0; i < Parcels; i++)
        {
            double place = sum * (i + 0.5) / Parcels;
            while (at < Parcels - 1 && from + _metres[at] < place) from += _metres[at++];
            double within = Math.Clamp((place - from) / _metres[at], 0, 1);
            _highK[i] += share * (_hot[at] + within * (_hot[at + 1] - _hot[at]) - _highK[i]);
            _lowK[i] += share * (_cold[at] + within * (_cold[at + 1] - _cold[at]) - _lowK[i]);
        }
    }

    /// <summary>Heat capacity of the load without a content, J/K.</summary>
    public double LoadJPerK(double k) => (S.LoadKg * truth.LoadMass + truth.Of("extra-metal", 0)) * S.Copper(k) + 10;

    private double HalfJPerK(double k) => S.HalfKg * truth.ExchangerMass * S.Copper(k);

    /// <summary>A step of the running loop.</summary>
    /// <param name="dt">s.</param>
    /// <param name="flow">mol/s.</param>
    /// <param name="high">High stream.</param>
    /// <param name="low">Low stream.</param>
    /// <param name="inletK">High stream as it enters, K.</param>
    /// <param name="into">Heat that runs into load, cold half and warm half from the box, W.</param>
    /// <param name="contentJPerK">Heat capacity of the vessel's content.</param>
    /// <param name="condensingK">Temperature at which feed gas would condense now; 0 while none is fed.</param>
    public void Step(double dt, double flow, Stream high, Stream low, double inletK, (double Load, double Cold, double Warm) into, double contentJPerK, double condensingK)
    {
        high.Films(flow, S.InnerBoreM, S.InnerM2);
        low.Films(flow, S.AnnulusHydraulicM, S.AnnulusM2);
        double along = S.WallM2 * S.WallConductivity / (S.LengthM / 2);
        double conducted = along * (WarmHalfK - ColdHalfK), toLoad = along * (ColdHalfK - LoadK);
        var state = new Before(LoadK + dt * (into.Load + toLoad) / (LoadJPerK(LoadK) + contentJPerK), ColdHalfK + dt * (into.Cold + conducted - toLoad) / HalfJPerK(ColdHalfK), WarmHalfK + dt * (into.Warm - conducted) / HalfJPerK(WarmHalfK),
            LoadJPerK(LoadK) + contentJPerK, HalfJPerK(ColdHalfK), HalfJPerK(WarmHalfK), dt, flow, high.Enthalpy(inletK), condensingK);
        double bottom = high.Enthalpy(SoaveTable.ColdK + 1), top = high.Enthalpy(Math.Max(Math.Max(inletK, LoadK), Math.Max(ColdHalfK, WarmHalfK)) + 0.01), a = bottom, b = top;
        if (!double.IsNaN(_enthalpy))
        {
            double near = 120;
            (a, b) = (Math.Max(bottom, _enthalpy - near), Math.Min(top, _enthalpy + near));
            while (a > bottom && Missing(a, state, high, low, out _) < 0) (a, b, near) = (Math.Max(bottom, a - 2 * near), a, 2 * near);
            near = 120;
            while (b < top && Missing(b, state, high, low, out _) > 0) (a, b, near) = (b, Math.Min(top, b + 2 * near), 2 * near);
        }
        for (int i = 0; i < 15; i++)
        {
            double m = 0.5 * (a + b);
            if (Missing(m, state, high, low, out _) > 0) a = m; else b = m;
        }
        _enthalpy = b;
        Missing(b, state, high, low, out var end);
        (LoadK, ColdHalfK, WarmHalfK, CoilW, CondensedW) = (end.LoadK, end.ColdHalfK, end.WarmHalfK, end.CoilW, end.CondensedW);
        (ThrottleK, CoilInletK, CoilOutletK) = (high.Temperature(b), low.Temperature(b), low.Temperature(b + CoilW / flow));
        // the return line's own metal stands between the recuperator and what is felt behind it
        ReturnK += (low.Temperature(end.Return) - ReturnK) * dt / (dt + ReturnLineS);
        CarriedOffW = flow * (end.Return - state.Inlet);
        MoveLiquid(dt);
    }

    /// <summary>A step with the compressor standing: metal and box alone.</summary>
    public void Stand(double dt, (double Load, double Cold, double Warm) into, double contentJPerK)
    {
        double along = S.WallM2 * S.WallConductivity / (S.LengthM / 2), conducted = along * (WarmHalfK - ColdHalfK), toLoad = along * (ColdHalfK - LoadK);
        LoadK += dt * (into.Load + toLoad) / (LoadJPerK(LoadK) + contentJPerK);
        ColdHalfK += dt * (into.Cold + conducted - toLoad) / HalfJPerK(ColdHalfK);
        WarmHalfK += dt * (into.Warm - conducted) / HalfJPerK(WarmHalfK);
        (CoilW, CondensedW, CarriedOffW) = (0, 0, 0);
        (CoilInletK, CoilOutletK, ThrottleK) = (LoadK, LoadK, ColdHalfK);
        ReturnK = WarmHalfK;
        for (int i = 0; i <= Parcels; i++) _hot[i] = _cold[i] = i < Parcels / 2 ? ColdHalfK : WarmHalfK;
        Array.Fill(_metres, 1);
        MoveLiquid(dt);
    }

    /// <summary>The load is brought to a temperature by what boils in it.</summary>
    public void Boil(double k) => LoadK = k;

    private readonly record struct Before(double LoadK, double ColdHalfK, double WarmHalfK, double LoadJPerK, double ColdJPerK, double WarmJPerK, double Dt, double Flow, double Inlet, double CondensingK);

    private readonly record struct After(double LoadK, double ColdHalfK, double WarmHalfK, double CoilW, double CondensedW, double Return, double ReleasedW);

    // heat that an enthalpy before the throttle asks to be exchanged, less what the length can exchange then, W; and the state it leads to
    private double Missing(double h, in Before s, Stream high, Stream low, out After after)
    {
        double n = s.Flow, inK = low.Temperature(h), capacity = low.Capacity(s.LoadK, inK);
        double film = low.Table.MolarMass is var m ? TubeFilm.Of(n * m / S.CoilBoreM2, S.CoilBoreM, low.Vapour(inK), inK, low.Pa, capacity, m) * truth.CoilFilm * truth.Of("coil", 1) : 0;
        double ua = 1 / (1 / (film * S.CoilInsideM2) + 1 / (VesselFilm * S.CoilOutsideM2)), coil = n * capacity * (1 - Math.Exp(-ua / (n * capacity)));
        // stored heat, coil and what condenses decide where the load stands at the end of the step
        double stored = s.LoadJPerK / s.Dt, condense = 0, load = (stored * s.LoadK + coil * inK) / (stored + coil);
        if (load < s.CondensingK)
        {
            condense = CondensingWPerK;
            load = (stored * s.LoadK + coil * inK + condense * s.CondensingK) / (stored + coil + condense);
        }
        double coilW = coil * (load - inK), coldIn = h + coilW / n, exchanged = s.Inlet - h;
        for (int i = 0; i <= Parcels; i++)
        {
            _hot[i] = high.Temperature(h + exchanged * i / Parcels);
            _cold[i] = low.Temperature(coldIn + exchanged * i / Parcels);
        }
        double sumCold = 0, sumWarm = 0, from = 0, all = Along(high, low, out double coldShare, out _, out _);
        for (int i = 0; i < Parcels; i++)
        {
            double inCold = Math.Clamp(0.5 * all - from, 0, _metres[i]);
            (sumCold, sumWarm, from) = (sumCold + inCold * _wall[i], sumWarm + (_metres[i] - inCold) * _wall[i], from + _metres[i]);
        }
        // the metal follows its place between the streams, which its own heat moves: a quarter and three quarters of the stream's whole rise at the middle of each half
        double rise = coldShare / (n * low.Capacity(_cold[^1], _cold[0])), gCold = Following(s.ColdJPerK, s.Dt), gWarm = Following(s.WarmJPerK, s.Dt);
        double released = (gCold * (s.ColdHalfK - 2 * sumCold / all) + gWarm * (s.WarmHalfK - 2 * sumWarm / all)) / (1 + rise * (0.25 * gCold + 0.75 * gWarm));
        double coldW = gCold * (s.ColdHalfK - 2 * sumCold / all - 0.25 * rise * released), warmW = released - coldW;
        // gas leaves no warmer than the warmest it met
        double most = n * (low.Enthalpy(Math.Max(s.WarmHalfK, high.Temperature(s.Inlet))) - coldIn - exchanged);
        if (released > Math.Max(0, most)) (coldW, warmW, released) = (coldW * Math.Max(0, most) / released, warmW * Math.Max(0, most) / released, Math.Max(0, most));
        for (int i = 1; i <= Parcels; i++) _cold[i] = low.Temperature(coldIn + (exchanged + released / n) * i / Parcels);
        double metresPerW = Along(high, low, out _, out double leastK, out double straightW) / Parcels;
        after = new After(load, s.ColdHalfK - coldW * s.Dt / s.ColdJPerK, s.WarmHalfK - warmW * s.Dt / s.WarmJPerK, coilW, condense * (s.CondensingK - load), coldIn + exchanged + released / n, released);
        double through = leastK > 0 ? S.LengthM / metresPerW : Math.Min(0, S.LengthM * straightW);
        // nor colder than the coldest: the high stream cannot have come out of it warmer than that leaves it
        return after.Return < low.Enthalpy(Math.Min(_hot[^1], _cold[0])) ? -1 : n * exchanged + 0.75 * coldW + 0.25 * warmW - through;
    }

    // metres for a watt in each parcel, and their sum, m/W; where the streams stand the wrong way round, as they do while the metal is warm, all parcels are alike and what counts is the
    // mean of their W/m
    private double Along(Stream high, Stream low, out double coldShare, out double leastK, out double straightW)
    {
        double sum = 0, filmFault = truth.Of("exchanger", 1);
        (coldShare, leastK, straightW) = (0, double.MaxValue, 0);
        for (int i = 0; i <= Parcels; i++) leastK = Math.Min(leastK, _hot[i] - _cold[i]);
        for (int i = 0; i < Parcels; i++)
        {
            double a = _hot[i] - _cold[i], b = _hot[i + 1] - _cold[i + 1], hotK = 0.5 * (_hot[i] + _hot[i + 1]), coldK = 0.5 * (_cold[i] + _cold[i + 1]);
            double hotG = high.Film(hotK) * truth.HighFilm * filmFault * Math.PI * S.InnerBoreM, coldG = low.Film(coldK) * truth.LowFilm * filmFault * Math.PI * S.InnerOutsideM;
            _metres[i] = leastK > 0 ? (1 / hotG + 1 / coldG) / Mean(Math.Max(LeastK, a), Math.Max(LeastK, b)) : 1;
            straightW += 0.5 * (a + b) / (1 / hotG + 1 / coldG) / Parcels;
            _wall[i] = (hotG * hotK + coldG * coldK) / (hotG + coldG);
            sum += _metres[i];
            coldShare += coldG / (hotG + coldG) / Parcels;
        }
        return sum;
    }

    private static double Mean(double a, double b) => Math.Abs(a - b) < 1e-3 * a ? a : (a - b) / Math.Log(a / b);

    // W/K at which a half gives heat over a step, taken at the step's end
    private static double Following(double jPerK, double dt) => MetalWPerK / (1 + MetalWPerK * dt / jPerK);
}
