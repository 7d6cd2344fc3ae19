using Coldwright.Fluids.States;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// Temperature, fractions and compositions of given phases at a pressure and an enthalpy or entropy: Newton's method on equal
/// fugacities and the energy together, exact derivatives. A fast way near the answer; it gives up where it does not converge
/// at once, and its answer carries no certificate.
/// </summary>
internal sealed class CaloricSplit
{
    private const int MostIterations = 25;
    private const double GoodFugacity = 1e-11, GoodEnergy = 2e-13, EnoughEnergy = 1e-11, LongestStep = 0.15, Vanishing = 1e-3;

    private readonly FlashWorkspace _w;
    private readonly SplitStep _step;
    private readonly PhaseBuffer[] _saved;
    private double _target, _missing, _fugacity, _heatCapacity;
    private bool _enthalpy;

    public CaloricSplit(FlashWorkspace workspace, SplitStep step)
    {
        (_w, _step) = (workspace, step);
        _saved = Enumerable.Range(0, FlashWorkspace.MaximumPhases).Select(_ => new PhaseBuffer(workspace.Count)).ToArray();
    }

    private double Error => Math.Max(_fugacity, Math.Abs(_missing));

    /// <summary>Solves from the phases given, whose amounts add up to the workspace's composition; one that vanishes is taken out. False: it did not converge.</summary>
    /// <param name="phases">Phases.</param>
    /// <param name="count">Number of phases.</param>
    /// <param name="target">Enthalpy (J/mol) or entropy (J/(mol K)).</param>
    /// <param name="enthalpy">True: enthalpy.</param>
    public bool Solve(PhaseBuffer[] phases, ref int count, double target, bool enthalpy)
    {
        (_target, _enthalpy) = (target, enthalpy);
        if (!Evaluate(phases, count)) return false;
        double last = double.PositiveInfinity;
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            double energy = Math.Abs(_missing);
            if (_fugacity < GoodFugacity && (energy < GoodEnergy || energy < EnoughEnergy && energy > 0.5 * last)) return true;
            last = energy;
            if (!Step(phases, count)) return false;
            if (count == 1) continue;
            var small = phases[PhaseSums.Smallest(phases.AsSpan(0, count))];
            if (_step.Limiting == small && small.Fraction < Vanishing && !Remove(phases, ref count, small)) return false;
        }
        return false;
    }

    private bool Step(PhaseBuffer[] phases, int count)
    {
        double t = _w.Temperature, error = Error;
        if (count == 1) return Move(phases, count, t, Math.Clamp(_missing / _heatCapacity, -LongestStep, LongestStep));
        if (!_step.TryCaloricDirection(phases, count, _enthalpy, _missing, _heatCapacity, out double warming)) return false;
        for (int j = 0; j < count; j++) _saved[j].CopyFrom(phases[j]);
        // through the ratios, which keeps the digits of traces; where fractions run away with them, through the amounts
        if (_step.Advance(phases, count, 1, amounts: false) && Move(phases, count, t, warming) && Error < error) return true;
        for (double length = 1; length > 0.2; length *= 0.5)
        {
            for (int j = 0; j < count; j++) phases[j].CopyFrom(_saved[j]);
            double done = _step.MoveAmounts(phases, count, length);
            if (done > 0 && Move(phases, count, t, done * warming) && Error < error) return true;
        }
        return false;
    }

    private bool Move(PhaseBuffer[] phases, int count, double fromK, double warming)
    {
        _w.Move(fromK * (1 + warming), _w.Pressure);
        return Evaluate(phases, count);
    }

    private bool Remove(PhaseBuffer[] phases, ref int count, PhaseBuffer phase)
    {
        int which = Array.IndexOf(phases, phase, 0, count);
        (phases[which], phases[count - 1]) = (phases[count - 1], phases[which]);
        count--;
        PhaseSums.Pour(phase, phases[PhaseSums.Largest(phases.AsSpan(0, count))]);
        return Evaluate(phases, count);
    }

    // every phase with its thermal derivatives; what is missing, over RT or R
    private bool Evaluate(PhaseBuffer[] phases, int count)
    {
        _heatCapacity = IdealHeatCapacity();
        for (int j = 0; j < count; j++)
        {
            if (!(phases[j].Fraction > 0) || !_w.Evaluate(phases[j], phases[j].Branch)) return false;
            _w.ThermalDerivatives(phases[j]);
            _heatCapacity += phases[j].Fraction * phases[j].ResidualHeatCapacity;
        }
        double r = _w.Model.GasConstant, t = _w.Temperature;
        var all = phases.AsSpan(0, count);
        _fugacity = count > 1 ? PhaseSums.FugacityDifference(all, _w.Z) : 0;
        _missing = _enthalpy
            ? (_target - PhaseProperties.IdealEnthalpy(_w.Model, t, _w.Z)) / (r * t) - PhaseSums.ResidualEnthalpy(all)
            : (_target - PhaseProperties.IdealEntropy(_w.Model, t, _w.Pressure, _w.Z)) / r - PhaseSums.EntropyOfMixing(all);
        return _heatCapacity > 0 && double.IsFinite(_missing);
    }

    private double IdealHeatCapacity()
    {
        double sum = 1;
        for (int i = 0; i < _w.Count; i++)
            sum += _w.Z[i] * _w.Model.Substances[i].GasConstant / _w.Model.GasConstant * (_w.Model.Substances[i].IdealGas.HeatCapacity(_w.Temperature) - 1);
        return sum;
    }
}
