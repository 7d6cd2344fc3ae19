using Coldwright.Fluids.States;
using Coldwright.Numerics;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// (p,h) and (p,s) flashes. At equilibrium h and s rise strictly with temperature at constant pressure, so the
/// answer is unique. Newton's method with the temperature as an unknown finds it from a neighbour; where that does not settle the
/// temperature is bracketed and closed in on by false position. Inner steps follow the phases they have; the last state is a
/// certified (T,p) flash, and when that finds other phases the search goes on with certified steps. Where the bracket
/// shrinks to rounding around a step (a glide narrower than that) the answer is the lever between its ends.
/// </summary>
internal sealed class CaloricFlash
{
    public const double HighestTemperatureK = 2000;

    // how far the phases of another answer may lie from this one
    private const double PressureReach = 0.5, TemperatureReach = 0.1;
    private const int MostRounds = 6;
    // relative to the unit of enthalpy or entropy
    private const double Equal = 1e-8;

    private readonly Flash _flash;
    private readonly double[] _z;
    private double _pressurePa, _target, _scale, _low, _high;
    private bool _enthalpy, _started;
    private Steps _steps;
    private int _phases, _same;

    // how the steps of a search are made: following the phases at hand; certified until the number of phases stays the same,
    // then following; all certified
    private enum Steps { Following, Settling, Certified }

    public CaloricFlash(Flash flash)
    {
        _flash = flash;
        _z = new double[flash.Model.Count];
    }

    /// <summary>The state at a pressure (Pa) and molar enthalpy (J/mol) or entropy (J/(mol K)).</summary>
    public FluidState Solve(double pressurePa, double target, ReadOnlySpan<double> z, bool enthalpy, double guessK) =>
        TrySolve(pressurePa, target, z, enthalpy, guessK) ? _flash.State() : Lever();

    /// <summary>
    /// As <see cref="Solve"/>, the answer left in the flash and nothing allocated; false when it lies inside a step that only
    /// the lever between the step's ends can answer.
    /// </summary>
    public bool TrySolve(double pressurePa, double target, ReadOnlySpan<double> z, bool enthalpy, double guessK)
    {
        if (!double.IsFinite(target)) throw new ArgumentOutOfRangeException(nameof(target), $"enthalpy or entropy must be a number, got {target}");
        if (!(pressurePa > 0)) throw new ArgumentOutOfRangeException(nameof(pressurePa), $"pressure must be above 0, got {pressurePa} Pa");
        z.CopyTo(_z);
        (_pressurePa, _target, _enthalpy) = (pressurePa, target, enthalpy);
        // units in which "equal" means a relative 1e-13
        _scale = _flash.Model.GasConstant * (enthalpy ? 300 : 1);
        if (z.Length == 1 && PureCaloricFlash.TrySolve(_flash, pressurePa, target, enthalpy)) return true;
        if (z.Length > 1 && NearAnswer(guessK)) return true;
        try
        {
            double near = Search(guessK, Steps.Following);
            if (IsAnswer(near)) return true;
            near = Search(near, Steps.Settling);
            if (IsAnswer(near)) return true;
            return IsAnswer(Search(near, Steps.Certified));
        }
        catch (SolveException)
        {
            // uncertified steps led astray; the certified search has the last word
            return IsAnswer(Search(guessK, Steps.Certified));
        }
    }

    // Newton's method from the phases of the last answer (or of a certified one at the guess), then the certificate. Where that
    // finds one more phase it joins at the same enthalpy or entropy. Where Newton's method does not settle, or ends in one phase, a
    // certified flash at its temperature says which phases there are, and it goes on inside what such answers allow.
    private bool NearAnswer(double guessK)
    {
        var solver = _flash.Solver;
        bool guessed = guessK > Flash.LowestTemperatureK;
        double t = guessed ? guessK : solver.Temperature, cold = Flash.LowestTemperatureK, warm = HighestTemperatureK, missing = double.NaN, excess = double.NaN;
        bool near = solver.Holds(_z) && Math.Abs(_pressurePa / solver.Pressure - 1) < PressureReach && Math.Abs(t / solver.Temperature - 1) < TemperatureReach;
        if (!near && !_flash.TrySolve(t = guessed ? guessK : 250, _pressurePa, _z)) return false;
        for (int round = 0; round < MostRounds; round++)
        {
            bool settled = solver.FollowCaloric(_pressurePa, _target, _enthalpy, t);
            t = solver.Temperature;
            if (settled && solver.Phases.Length > 1)
            {
                if (solver.Certify()) return true;
                continue;
            }
            if (!(t > cold && t < warm)) t = cold + (warm - cold) * missing / (missing + excess);
            if (!(t > cold && t < warm) || !_flash.TrySolve(t, _pressurePa, _z, warm: settled)) return false;
            double rest = Rest();
            if (Math.Abs(rest) <= Equal * _scale) return true;
            if (rest < 0) (cold, missing) = (t, -rest);
            else (warm, excess) = (t, rest);
        }
        return false;
    }

    // a certified flash at the temperature found
    private bool IsAnswer(double t)
    {
        if (!_flash.TrySolve(t, _pressurePa, _z, warm: true)) throw _flash.Failed(t, _pressurePa);
        return Math.Abs(Rest()) <= Equal * _scale;
    }

    private double Rest() => (_enthalpy ? _flash.Enthalpy() : _flash.Entropy()) - _target;

    private double Value(double t)
    {
        bool certified = _steps == Steps.Certified || _steps == Steps.Settling && _same < 2;
        bool solved = !_started ? _flash.TrySolve(t, _pressurePa, _z)
            : certified ? _flash.TrySolve(t, _pressurePa, _z, warm: true)
            : _flash.Solver.Follow(t, _pressurePa, _z);
        if (!solved) throw _flash.Failed(t, _pressurePa);
        _started = true;
        _same = _flash.PhaseCount == _phases ? _same + 1 : 0;
        _phases = _flash.PhaseCount;
        double difference = Rest();
        return Math.Abs(difference) < (certified ? 1e-12 : 1e-10) * _scale ? 0 : difference;
    }

    private double Search(double guessK, Steps steps)
    {
        (_started, _steps, _phases, _same) = (false, steps, 0, 0);
        double middle = guessK > Flash.LowestTemperatureK ? guessK : 250;
        double stride = guessK > 0 ? 2 : 30, fLow = Value(middle), fHigh = fLow;
        _low = _high = middle;
        while (fLow > 0)
        {
            if (_low <= Flash.LowestTemperatureK) throw None($"it is below that of the mixture at {Flash.LowestTemperatureK} K");
            // a fifth at a time, and not much past where the last two points say: beyond the cold end of the equations
            // there are answers that mean nothing
            double by = Math.Min(Math.Min(stride, 0.2 * _low), Beyond(fLow, fHigh));
            (_high, fHigh) = (_low, fLow);
            (_low, fLow) = Step(_low, fLow, -by);
            stride *= 1.6;
        }
        while (fHigh < 0)
        {
            if (_high >= HighestTemperatureK) throw None($"it is above that of the mixture at {HighestTemperatureK} K");
            double by = Math.Min(stride, Beyond(fHigh, fLow));
            (_low, fLow) = (_high, fHigh);
            (_high, fHigh) = Step(_high, fHigh, by);
            stride *= 1.6;
        }
        return fLow == 0 ? _low : fHigh == 0 ? _high : Close(fLow, fHigh);
    }

    // how far to go from the end with value fNear, by the slope of the last bracket and a fifth more
    private double Beyond(double fNear, double fFar) =>
        _high > _low && fNear != fFar ? Math.Max(1.2 * Math.Abs(fNear / (fNear - fFar)) * (_high - _low), 0.5) : double.PositiveInfinity;

    // A step outwards; shorter when the far end has no answer, or one that does not lie on a rising curve: the
    // equations end somewhere in the cold, and not always by having no root.
    private (double T, double F) Step(double from, double fFrom, double by)
    {
        for (int i = 0; ; i++, by *= 0.4)
        {
            double t = Math.Clamp(from + by, Flash.LowestTemperatureK, HighestTemperatureK);
            try
            {
                double f = Value(t);
                if (by < 0 ? f <= fFrom : f >= fFrom) return (t, f);
                if (i == 5) throw _flash.Failed(t, _pressurePa);
            }
            catch (SolveException) when (i < 5)
            {
                _started = false;
            }
        }
    }

    // False position in the form of Anderson and Bjorck (BIT 13 (1973) 253), a bisection whenever two steps have not halved
    // the bracket; ends when the target is met or the bracket is down to rounding.
    private double Close(double fLow, double fHigh)
    {
        int last = 0;
        double reference = _high - _low;
        for (int i = 0; i < 300; i++)
        {
            double width = _high - _low, middle = 0.5 * (_low + _high);
            if (width <= 3e-16 * _high || middle <= _low || middle >= _high) break;
            double t = (_low * fHigh - _high * fLow) / (fHigh - fLow);
            if (i % 3 == 2)
            {
                if (width > 0.5 * reference) t = middle;
                reference = width;
            }
            if (!(t > _low && t < _high)) t = middle;
            double f = Inside(ref t);
            if (f == 0) return t;
            if (f < 0)
            {
                if (last < 0) fHigh *= 1 - f / fLow > 0 ? 1 - f / fLow : 0.5;
                (_low, fLow, last) = (t, f, -1);
            }
            else
            {
                if (last > 0) fLow *= 1 - f / fHigh > 0 ? 1 - f / fHigh : 0.5;
                (_high, fHigh, last) = (t, f, 1);
            }
        }
        return 0.5 * (_low + _high);
    }

    // a place inside the bracket may have no answer where its ends have one: another place, nearer the warm end first
    private double Inside(ref double t)
    {
        double asked = t;
        for (int i = 0; ; i++)
            try
            {
                return Value(t);
            }
            catch (SolveException) when (i < 8)
            {
                _started = false;
                double towards = i % 2 == 0 ? _high : _low;
                t = asked + (towards - asked) * (0.25 + 0.17 * (i / 2));
            }
    }

    // the two ends of a step in h or s at (to rounding) one temperature, mixed so that the target is met
    private FluidState Lever()
    {
        if (_high - _low > 1e-9 * _high) throw _flash.Failed(_low, _pressurePa);
        FluidState cold = _flash.TemperaturePressure(_low, _pressurePa, _z), warm = _flash.TemperaturePressure(_high, _pressurePa, _z);
        double a = _enthalpy ? cold.MolarEnthalpy : cold.MolarEntropy, b = _enthalpy ? warm.MolarEnthalpy : warm.MolarEntropy;
        double share = b > a ? Math.Clamp((_target - a) / (b - a), 0, 1) : 0;
        return StateLever.Mix(cold, warm, share);
    }

    private SolveException None(string why) => new(new SolveReport(SolveStatus.NoSolution, 0, double.NaN,
        FormattableString.Invariant($"no state at {_pressurePa / 1e5:0.####} bar absolute with {(_enthalpy ? "enthalpy" : "entropy")} {_target:0.####} {(_enthalpy ? "J/mol" : "J/(mol K)")}: {why}")));
}
