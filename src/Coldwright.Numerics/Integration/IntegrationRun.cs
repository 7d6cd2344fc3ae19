using System.Collections.Immutable;
using System.Globalization;

namespace Coldwright.Numerics.Integration;

/// <summary>One run of the integrator: the loop over steps and what it remembers.</summary>
internal sealed class IntegrationRun
{
    private readonly InitialValueProblem _problem;
    private readonly IntegrationOptions _options;
    private readonly ErrorNorm _norm;
    private readonly ProblemEvaluator _evaluator;
    private readonly RadauStepper _stepper;
    private readonly StepController _controller = new();
    private readonly SensitivityTracker? _sensitivities;
    private readonly EventPassage _passage;
    private readonly AcceptedStep _accepted;
    private readonly Action<AcceptedStep>? _observer;
    private readonly CancellationToken _cancel;
    private readonly double[] _state, _slope, _endState, _endSlope, _error, _work;
    private readonly double _start, _end, _keepRate;
    private double _time, _step, _lastLength, _lastError;
    private bool _jacobianIsCurrent, _jacobianWanted = true, _continues;
    // Why the step was last made shorter; empty after an accepted one.
    private string _stepFault = "";

    public IntegrationRun(InitialValueProblem problem, double start, ReadOnlySpan<double> initial, double end, IntegrationOptions options,
        IReadOnlyList<IntegrationEvent> events, Action<AcceptedStep>? observer, CancellationToken cancel)
    {
        (_problem, _options, _observer, _cancel) = (problem, options, observer, cancel);
        (_start, _time, _end) = (start, start, end);
        int n = problem.Count;
        _state = initial.ToArray();
        (_slope, _endState, _endSlope, _error, _work) = (new double[n], new double[n], new double[n], new double[n], new double[n]);
        _norm = new(n, options);
        _evaluator = new(problem, options, _norm.Floors);
        _stepper = new(_evaluator, _norm, tight: options.FixedStep > 0);
        _sensitivities = options.Sensitivities is { } s ? new(_evaluator, _norm, _stepper, s) : null;
        _accepted = new(n, _sensitivities?.Count ?? 0);
        _passage = new(_evaluator, _norm, events, _sensitivities, options.EventSamples, start, end);
        // A new Jacobian pays when it saves about one iteration (three evaluations) in each of the steps that follow.
        _keepRate = Math.Clamp((problem.Jacobian is null ? problem.Pattern.GroupCount : options.JacobianCost) * 0.002, 0.002, 0.1);
    }

    public IntegrationResult Run()
    {
        if (!_evaluator.TryEvaluate(_time, _state, _slope)) return Fail(SolveStatus.Outside, Refusal("at the initial state"));
        _passage.Begin(_time, _state);
        ChooseFirstStep();
        int attempts = 0;
        while (_time < _end)
        {
            _cancel.ThrowIfCancellationRequested();
            if (attempts++ == _options.MaximumSteps)
                return Fail(SolveStatus.NotConverged, $"{_options.MaximumSteps} steps were not enough; the step was last {Text(_step)}. Loosen the tolerance, raise the limit, or look for a slope that jumps without an event");
            double step = LimitedStep(out double target);
            if (!(step > Math.Max(16 * 2.2e-16 * Math.Abs(_time), 1e-25 * (_end - _start))))
                return Fail(SolveStatus.NotConverged, $"the step fell to {Text(step)}: {_stepFault}. Near here the solution may jump, or end; switch the right-hand side by an event, or look at its slope and its noise");
            if (!TryPrepare(step, out var preparation)) { if (preparation is not null) return preparation; continue; }
            if (!TryStep(step, target, out double error))
            {
                if (_options.FixedStep > 0) return Fail(SolveStatus.NotConverged, $"the fixed step {Text(step)} failed: {_stepFault}");
                continue;
            }
            if (!TryAccept(step, target, error)) return Fail(SolveStatus.Outside, Refusal($"at event '{_passage.LastEvent}'"));
            if (_passage.StoppedBy is { } name) return Close(new(SolveStatus.Solved, _evaluator.Statistics.Steps, _lastError), name);
            if (_passage.Restarted && !TryRestart()) return Fail(SolveStatus.Outside, Refusal($"after event '{_passage.LastEvent}'"));
        }
        return Close(new(SolveStatus.Solved, _evaluator.Statistics.Steps, _lastError), null);
    }

    // The step wanted, fitted to the next time that must be hit exactly.
    private double LimitedStep(out double target)
    {
        target = _passage.NextTime;
        double left = target - _time, step = Math.Min(_step, _options.MaximumStep);
        if (step * 1.01 >= left) return left;
        // Two equal steps instead of a long and a tiny one; not worth it when the decompositions could stay.
        if (step * 1.6 >= left && _options.FixedStep == 0 && step != _stepper.DecomposedFor) step = 0.5 * left;
        target = _time + step;
        return step;
    }

    // Jacobian and decompositions for this step. False: try again with the new step, or give up with the result.
    private bool TryPrepare(double step, out IntegrationResult? failure)
    {
        failure = null;
        if (_jacobianWanted && !_jacobianIsCurrent)
        {
            if (!_stepper.TryRefreshJacobian(_time, _state, _slope))
            {
                failure = Fail(SolveStatus.Outside, Refusal("close to the state, while differences for the Jacobian were taken"));
                return false;
            }
            _jacobianIsCurrent = true;
        }
        _jacobianWanted = false;
        _norm.At(_state);
        if (_stepper.DecomposedFor == step || _stepper.TryDecompose(step)) return true;
        IterationFailed(step, 0.5, "the matrix of the stage equations is singular");
        return false;
    }

    private bool TryStep(double step, double target, out double error)
    {
        error = 0;
        var outcome = _stepper.Solve(_time, step, _state);
        if (outcome != StepOutcome.Converged)
        {
            bool refused = outcome == StepOutcome.Refused;
            IterationFailed(step, refused ? 0.25 : 0.5, refused ? Refusal("at a stage") : $"the stage equations did not converge (rate {Text(_stepper.Rate)})");
            return false;
        }
        int n = _problem.Count;
        for (int i = 0; i < n; i++) _endState[i] = _state[i] + _stepper.Stages[2 * n + i];
        _stepper.EstimateError(_slope, _stepper.Stages, step, _error);
        error = _norm.Controlled(_error);
        double ratio = _continues ? step / _lastLength : 0;
        _accepted.SetState(_state, _slope, _problem.Mass, _stepper.Stages, step, ratio, _error);
        if (_options.DenseOutputControl) error = Math.Max(error, _norm.Controlled(_error));
        if (error > 1 && _options.FixedStep == 0)
        {
            Reject(step, error);
            return false;
        }
        if (!_evaluator.TryEvaluate(target, _endState, _endSlope))
        {
            IterationFailed(step, 0.25, Refusal("at the end of the step"));
            return false;
        }
        if (_sensitivities is null) return true;
        if (!_sensitivities.TryAdvance(_time, step, _state, _slope, _endState, _endSlope))
        {
            IterationFailed(step, 0.5, "the sensitivities did not converge");
            return false;
        }
        // Its error falls more slowly with the step than the state's: the nodes before the step stay where they are.
        if (_options.Sensitivities!.ErrorControl) error = Math.Max(error, _sensitivities.Error * Math.Max(_sensitivities.Error, 1));
        if (error <= 1 || _options.FixedStep > 0) return true;
        Reject(step, error);
        return false;
    }

    private void Reject(double step, double error)
    {
        _evaluator.Statistics.Rejected++;
        _stepFault = $"the error estimate is {Text(error)} times the tolerance";
        _step = _controller.AfterRejected(step, error, _stepper.Iterations);
    }

    private void IterationFailed(double step, double factor, string fault)
    {
        _evaluator.Statistics.IterationFailures++;
        _stepFault = fault;
        _controller.IterationFailed();
        // An old Jacobian is the likelier cause than a long step.
        if (_jacobianIsCurrent || factor < 0.5) _step = factor * step;
        else _step = step;
        _jacobianWanted = true;
    }

    private bool TryAccept(double step, double target, double error)
    {
        var statistics = _evaluator.Statistics;
        statistics.Steps++;
        _lastError = error;
        _stepFault = "";
        double ratio = _continues ? step / _lastLength : 0;
        _accepted.Accept(_time, step, target);
        if (_sensitivities is not null)
        {
            for (int k = 0; k < _sensitivities.Count; k++) _accepted.SetSensitivity(k, _sensitivities.Value(k), _problem.Mass, _sensitivities.Stages(k), step, ratio, _work);
            _sensitivities.Accept(_time, step, _state);
            statistics.LargestSensitivityError = Math.Max(statistics.LargestSensitivityError, _sensitivities.Error);
        }
        (_continues, _lastLength) = (true, step);
        _stepper.Accept(step);
        bool keep = _stepper.Rate <= _keepRate;
        _step = _options.FixedStep > 0 ? _options.FixedStep : _controller.AfterAccepted(step, error, _stepper.Iterations, keep);
        _jacobianWanted = !keep;
        _jacobianIsCurrent = false;
        _endState.CopyTo(_state, 0);
        _endSlope.CopyTo(_slope, 0);
        _time = _passage.After(_accepted, target, _state);
        _observer?.Invoke(_accepted);
        return _passage.TryAct();
    }

    private bool TryRestart()
    {
        _evaluator.Statistics.Restarts++;
        (_continues, _jacobianIsCurrent, _jacobianWanted) = (false, false, true);
        _stepper.Restart();
        _controller.Restart();
        _sensitivities?.Restart();
        if (!_evaluator.TryEvaluate(_time, _state, _slope)) return false;
        if (_time < _end) ChooseFirstStep();
        return true;
    }

    private void ChooseFirstStep()
    {
        _norm.At(_state);
        _step = _options.FixedStep > 0 ? _options.FixedStep
            : _options.InitialStep > 0 ? _options.InitialStep
            : InitialStepChoice.Choose(_evaluator, _norm, _time, _state, _slope, _end - _time, _work, _endSlope);
    }

    private string Refusal(string where) => _evaluator.BadComponent >= 0
        ? $"the slope of component {_evaluator.BadComponent} was not a finite number {where}"
        : $"the right-hand side refused the state {where}";

    private IntegrationResult Fail(SolveStatus status, string why)
        => Close(new(status, _evaluator.Statistics.Steps, _lastError, $"stopped at time {Text(_time)} of {Text(_start)} to {Text(_end)}: {why}"), null);

    private IntegrationResult Close(SolveReport report, string? stoppedBy)
    {
        ImmutableArray<ImmutableArray<double>> sensitivities = _sensitivities is null ? [] : [.. Enumerable.Range(0, _sensitivities.Count).Select(k => ImmutableArray.Create(_sensitivities.Value(k)))];
        return new(report, _time, [.. _state], sensitivities, _passage.Occurrences, stoppedBy, _evaluator.Statistics.Close());
    }

    private static string Text(double number) => number.ToString("G6", CultureInfo.InvariantCulture);
}
