using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;
using Coldwright.Fluids.Transport;

namespace Coldwright.Cli.States;

/// <summary>One mixture with one model, ready to answer.</summary>
internal sealed class StateEngine
{
    private readonly Flash _flash;
    private readonly TransportModel _transport;
    private readonly double[] _fractions;
    private readonly StateRange _range;

    /// <param name="mixture">The mixture.</param>
    /// <param name="flash">A flash of the mixture's substances in the same order; one thread at a time.</param>
    /// <param name="transport">Transport properties of the same substances; made here when none is given.</param>
    public StateEngine(Composition mixture, Flash flash, TransportModel? transport = null)
    {
        _flash = flash;
        _transport = transport ?? new TransportModel(flash.Model);
        _fractions = [.. mixture.MoleFractions];
        _range = new StateRange(mixture);
    }

    /// <summary>A flash for named substances.</summary>
    /// <param name="names">Canonical names.</param>
    /// <param name="cubic">True for the cubic model, false for the reference model.</param>
    public static Flash CreateFlash(IReadOnlyList<string> names, bool cubic) => new(cubic ? (HelmholtzModel)CubicModel.Create(names) : ReferenceModel.Create(names));

    /// <summary>Name of the model.</summary>
    public string ModelName => _flash.Model.Name;

    /// <summary>The state with its transport properties, or null with the reason when it lies outside every range.</summary>
    /// <param name="known">The two known values.</param>
    /// <param name="warnings">What a person must be told.</param>
    /// <param name="outside">Why it is outside; null when there is a state.</param>
    /// <exception cref="Numerics.SolveException">No answer.</exception>
    public TransportedState? Solve(KnownPair known, out IReadOnlyList<string> warnings, out string? outside)
    {
        warnings = _range.Check(known.TemperatureK, known.PressurePa, out outside);
        if (outside is not null) return null;
        var state = known.Solve(_flash, _fractions);
        // What was not given is known now.
        warnings = [.. _flash.Model.Warnings, .. _range.Check(state.TemperatureK, state.PressurePa, out outside)];
        if (outside is not null) return null;
        var complete = _transport.Complete(state);
        warnings = [.. warnings, .. complete.Warnings];
        return complete;
    }
}
