using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Machine.Compression;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;
using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Precooling;

/// <summary>
/// The refrigerant of a loop: bubble and dew temperatures, and for a blend the shape of its glide, tabulated once against
/// ln p; gas and liquid straight from their branch of the equation. Pure or blend. Not thread-safe.
/// </summary>
internal sealed class LoopRefrigerant
{
    /// <summary>Pieces of a glide, equal in enthalpy.</summary>
    public const int Pieces = 6;

    private const double LowestPa = 5e3, CriticalShare = 0.85;
    private const int PureNodes = 64, BlendNodes = 28;

    private readonly GasPath _gas;
    private readonly PhaseEvaluation _liquid;
    private readonly double[] _z;
    // 1/T against ln p at fractions 0 (bubble) to 1 (dew) of the heat between them; one curve for a pure substance
    private readonly MonotoneCubic[] _inverse;
    private double _liquidGuess = double.NaN;

    public LoopRefrigerant(HelmholtzModel model, double[] z, CancellationToken cancel)
    {
        (Model, _z) = (model, z);
        Flash = new Flash(model);
        _gas = new GasPath(Flash, z);
        _liquid = model.CreateEvaluation();
        bool pure = z.Count(x => x > 0) == 1;
        for (int i = 0; i < z.Length; i++)
        {
            MolarMass += z[i] * model.Substances[i].MolarMass;
            CriticalPa += z[i] * model.Substances[i].CriticalPressurePa;
            if (z[i] > 0) TripleK = Math.Max(TripleK, model.Substances[i].TripleTemperatureK);
        }
        if (pure && model.Count > 1) throw new ArgumentException("the precooler's refrigerant has substances with fraction 0; leave them out of its model", nameof(z));
        double high = CriticalShare * CriticalPa, low = LowestPa;
        // a substance that freezes at a higher pressure than that ends there
        if (pure) low = Math.Max(low, 1.02 * PureSaturation.AtTemperature(model, TripleK * (1 + 1e-6)).PressurePa);
        if (!(low < 0.2 * high)) throw new ArgumentException($"{model.Substances[0].Name} boils only between {low} and {high} Pa; that is no refrigerant", nameof(model));
        (LnLowest, LnHighest) = (Math.Log(low), Math.Log(high));
        _inverse = Tabulate(pure, pure ? PureNodes : BlendNodes, cancel);
    }

    public HelmholtzModel Model { get; }
    public Flash Flash { get; }
    public double MolarMass { get; }
    /// <summary>Critical pressure; of a blend the mole-weighted mean (Kay's rule), Pa.</summary>
    public double CriticalPa { get; }
    /// <summary>Highest triple temperature of its substances, K.</summary>
    public double TripleK { get; }
    public double LnLowest { get; }
    public double LnHighest { get; }
    public bool Pure => _inverse.Length == 1;

    public double Bubble(double lnP) => 1 / _inverse[0].At(lnP);
    public double Dew(double lnP) => 1 / _inverse[^1].At(lnP);

    /// <summary>Temperature (K) at a fraction k/Pieces of the heat between bubble and dew.</summary>
    public double Glide(double lnP, int k) => 1 / _inverse[Pure ? 0 : k].At(lnP);

    /// <summary>Temperature at any fraction (held at 0 and 1), K; straight between the pieces.</summary>
    public double Glide(double lnP, double fraction)
    {
        double at = Math.Clamp(fraction, 0, 1) * Pieces;
        int k = Math.Min((int)at, Pieces - 1);
        double t = Glide(lnP, k);
        return Pure ? t : t + (at - k) * (Glide(lnP, k + 1) - t);
    }

    /// <summary>ln of the pressure whose dew (or bubble) point is at a temperature (K); held at the table's ends.</summary>
    public double LnPressure(double temperatureK, bool dew = true)
    {
        var curve = dew ? _inverse[^1] : _inverse[0];
        double y = 1 / temperatureK;
        if (y >= curve.At(LnLowest)) return LnLowest;
        if (y <= curve.At(LnHighest)) return LnHighest;
        return Brent.Solve(x => curve.At(x) - y, LnLowest, LnHighest, 1e-14);
    }

    public GasPoint Gas(double temperatureK, double pressurePa)
    {
        // the branch ends a little beyond the dew point: a miss there must not turn every later state into a flash
        _gas.Wet = false;
        return _gas.At(temperatureK, pressurePa);
    }

    public GasPoint GasAtEnthalpy(double pressurePa, double molarEnthalpy, double guessK)
    {
        _gas.Wet = false;
        return _gas.AtEnthalpy(pressurePa, molarEnthalpy, guessK);
    }

    /// <summary>Enthalpy of the liquid, J/mol.</summary>
    public double LiquidEnthalpy(double temperatureK, double pressurePa)
    {
        _liquid.SetIsotherm(temperatureK, _z);
        double density = DensityRoots.Find(_liquid, pressurePa, Branch.Liquid, _liquidGuess);
        if (!(density > 0)) return Flash.TemperaturePressure(temperatureK, pressurePa, _z).MolarEnthalpy;
        _liquidGuess = density;
        return PhaseProperties.Caloric(Model, _liquid, density).Enthalpy;
    }

    private MonotoneCubic[] Tabulate(bool pure, int nodes, CancellationToken cancel)
    {
        var x = new double[nodes];
        var y = new double[pure ? 1 : Pieces + 1][];
        for (int k = 0; k < y.Length; k++) y[k] = new double[nodes];
        double dew = double.NaN, glide = 20;
        for (int i = nodes - 1; i >= 0; i--)
        {
            cancel.ThrowIfCancellationRequested();
            x[i] = LnLowest + (LnHighest - LnLowest) * i / (nodes - 1);
            double p = Math.Exp(x[i]);
            if (pure)
            {
                y[0][i] = 1 / (PureSaturation.AtPressure(Model, p) ?? throw NotTabulated(p)).TemperatureK;
                continue;
            }
            if (double.IsNaN(dew)) dew = Flash.PressureVapourFraction(p, 1, _z).TemperatureK;
            // the next lower pressure: the dew point has fallen by less than this
            double warm = i == nodes - 1 ? dew + 1 : dew, cold = dew - 2 * glide - 25;
            var curve = new IsobarCurve(Flash, _z, p, cold, warm + 0.5, 0.1, cancel);
            var (bubbleH, dewH) = Ends(curve, p);
            for (int k = 0; k <= Pieces; k++) y[k][i] = 1 / curve.Temperature(bubbleH + (dewH - bubbleH) * k / Pieces);
            (dew, glide) = (1 / y[Pieces][i], 1 / y[Pieces][i] - 1 / y[0][i]);
        }
        return [.. y.Select(v => new MonotoneCubic(x, v, new bool[nodes]))];
    }

    private static (double Bubble, double Dew) Ends(IsobarCurve curve, double p)
    {
        int first = -1, last = -1;
        for (int i = 0; i < curve.Phases.Count; i++)
            if (curve.Phases[i].Contains('+'))
            {
                if (first < 0) first = i;
                last = i;
            }
        if (first < 1 || last >= curve.Phases.Count - 1) throw NotTabulated(p);
        return (curve.Enthalpies[first], curve.Enthalpies[last]);
    }

    private static SolveException NotTabulated(double p) => new(new SolveReport(SolveStatus.NoSolution, 0, double.NaN,
        FormattableString.Invariant($"the precooler's refrigerant has no bubble and dew point at {p / 1e5:0.###} bar absolute")));
}
