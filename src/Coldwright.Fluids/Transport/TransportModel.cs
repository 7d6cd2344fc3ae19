using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.States;

namespace Coldwright.Fluids.Transport;

/// <summary>
/// Viscosity, thermal conductivity and surface tension of pure fluids and mixtures. Pure fluids by their published
/// correlations; mixtures, and pure fluids without one, by residual entropy scaling; surface tension of mixtures by the
/// parachor. Theory, sources and checks: docs/theory/transport.md. Not thread-safe: one object per thread. Allocates nothing
/// when viscosity and conductivity are asked for.
/// </summary>
public sealed class TransportModel
{
    private readonly PureTransport[] _pure;
    private readonly MixtureTransport _mixture;
    private readonly InterfaceTension _interface;

    /// <param name="model">
    /// The fluid model; its substances and their order. Whatever it is, the entropies that the mixture method needs come from the
    /// reference model, with which the method was made.
    /// </param>
    public TransportModel(HelmholtzModel model)
    {
        Model = model;
        _pure = [.. model.Substances.Select(s => new PureTransport(s))];
        _mixture = new MixtureTransport(model as MultiFluidModel ?? ReferenceModel.Create([.. model.Substances.Select(s => s.Name)]), _pure);
        _interface = new InterfaceTension(_pure);
    }

    /// <summary>The fluid model.</summary>
    public HelmholtzModel Model { get; }

    /// <summary>Dynamic viscosity, Pa s.</summary>
    /// <param name="temperatureK">Temperature, K.</param>
    /// <param name="molarDensity">Molar density, mol/m3; 0 gives the dilute gas.</param>
    /// <param name="x">Mole fractions in the model's order.</param>
    public TransportValue Viscosity(double temperatureK, double molarDensity, ReadOnlySpan<double> x)
    {
        Check(temperatureK, molarDensity, x);
        int only = Only(x);
        if (only >= 0 && _pure[only].Data.Viscosity is { } c)
            return new TransportValue(_pure[only].Viscosity(temperatureK, molarDensity), c.Method, c.WarningAt(temperatureK));
        double value = _mixture.Viscosity(temperatureK, molarDensity, x);
        return new TransportValue(value, only >= 0 ? _pure[only].Data.ViscosityCurve!.Method : TransportMethods.MixtureViscosity, Extrapolated(x, viscosity: true));
    }

    /// <summary>Thermal conductivity, W/(m K); arguments as for <see cref="Viscosity"/>.</summary>
    /// <param name="temperatureK">Temperature, K.</param>
    /// <param name="molarDensity">Molar density, mol/m3; 0 gives the dilute gas.</param>
    /// <param name="x">Mole fractions in the model's order.</param>
    public TransportValue Conductivity(double temperatureK, double molarDensity, ReadOnlySpan<double> x)
    {
        return ConductivityAt(temperatureK, molarDensity, x, Viscosity(temperatureK, molarDensity, x).Value);
    }

    // eta in Pa s: the critical enhancement asks for it
    private TransportValue ConductivityAt(double temperatureK, double molarDensity, ReadOnlySpan<double> x, double eta)
    {
        int only = Only(x);
        if (only >= 0 && _pure[only].Data.Conductivity is { } c)
        {
            double value = _pure[only].ConductivityBackground(temperatureK, molarDensity) + _pure[only].ConductivityEnhancement(temperatureK, molarDensity, eta);
            return new TransportValue(value, c.Method, c.WarningAt(temperatureK));
        }
        double mixed = _mixture.Conductivity(temperatureK, molarDensity, x, eta);
        return new TransportValue(mixed, only >= 0 ? _pure[only].Data.ConductivityCurve!.Method : TransportMethods.MixtureConductivity, Extrapolated(x, viscosity: false));
    }

    /// <summary>Both at once; arguments as for <see cref="Viscosity"/>.</summary>
    /// <param name="temperatureK">Temperature, K.</param>
    /// <param name="molarDensity">Molar density, mol/m3; 0 gives the dilute gas.</param>
    /// <param name="x">Mole fractions in the model's order.</param>
    public TransportProperties At(double temperatureK, double molarDensity, ReadOnlySpan<double> x)
    {
        var viscosity = Viscosity(temperatureK, molarDensity, x);
        return new TransportProperties(viscosity, ConductivityAt(temperatureK, molarDensity, x, viscosity.Value));
    }

    /// <summary>Surface tension between a liquid and its vapour, N/m.</summary>
    /// <param name="temperatureK">Temperature, K.</param>
    /// <param name="liquid">Either liquid.</param>
    /// <param name="vapour">The vapour in equilibrium with it.</param>
    /// <exception cref="ArgumentException">The second phase is no vapour: interfaces between two liquids are not covered.</exception>
    public TransportValue SurfaceTension(double temperatureK, PhaseState liquid, PhaseState vapour)
    {
        if (liquid.Kind == PhaseKind.Vapour || vapour.Kind != PhaseKind.Vapour)
            throw new ArgumentException($"surface tension is that of a liquid against its vapour, got {FluidState.Name(liquid.Kind)} against {FluidState.Name(vapour.Kind)}", nameof(vapour));
        double[] x = [.. liquid.Composition], y = [.. vapour.Composition];
        Check(temperatureK, liquid.MolarDensity, x);
        Check(temperatureK, vapour.MolarDensity, y);
        return _interface.At(temperatureK, liquid.MolarDensity, x, vapour.MolarDensity, y);
    }

    /// <summary>The same state with viscosity and conductivity of each phase filled in.</summary>
    /// <param name="state">A state of this model.</param>
    public FluidState Add(FluidState state) => Complete(state).State;

    /// <summary>The same state with its transport properties, their sources and what a person must be told about them.</summary>
    /// <param name="state">A state of this model.</param>
    public TransportedState Complete(FluidState state)
    {
        var (methods, warnings) = (new List<TransportMethod>(), new List<string>());
        double Use(TransportValue value)
        {
            if (!methods.Contains(value.Method)) methods.Add(value.Method);
            if (value.Warning is { } warning && !warnings.Contains(warning)) warnings.Add(warning);
            return value.Value;
        }

        var phases = new PhaseState[state.Phases.Count];
        for (int j = 0; j < phases.Length; j++)
        {
            double[] x = [.. state.Phases[j].Composition];
            var found = At(state.TemperatureK, state.Phases[j].MolarDensity, x);
            phases[j] = state.Phases[j] with { ViscosityPaS = Use(found.Viscosity), ConductivityWPerMK = Use(found.Conductivity) };
        }
        if (Model is not MultiFluidModel && phases.Any(p => p.Kind != PhaseKind.Vapour)) warnings.Add(TransportMethods.OtherDensity(Model.Name));
        // of two liquids either may touch the vapour
        double? tension = phases is [{ Kind: PhaseKind.Vapour } vapour, { Kind: not PhaseKind.Vapour } liquid] ? Use(SurfaceTension(state.TemperatureK, liquid, vapour)) : null;
        return new TransportedState(state with { Phases = phases }, tension, methods, warnings);
    }

    // The method was made with fluids above their triple points; the tangents beyond are ours. Weighted by amount, so that a trace
    // of something that freezes late does not hide a liquid that is too cold.
    private string? Extrapolated(ReadOnlySpan<double> x, bool viscosity)
    {
        double limit = 0, amount = 0;
        for (int i = 0; i < x.Length; i++)
        {
            if (!(x[i] > 0)) continue;
            limit += x[i] * (viscosity ? _pure[i].Data.ViscosityCurve! : _pure[i].Data.ConductivityCurve!).MaximumEntropy;
            amount += x[i];
        }
        limit /= amount;
        return _mixture.ResidualEntropy <= limit ? null : viscosity ? TransportMethods.ViscosityExtrapolated : TransportMethods.ConductivityExtrapolated;
    }

    private static int Only(ReadOnlySpan<double> x)
    {
        int only = -1;
        for (int i = 0; i < x.Length; i++)
        {
            if (!(x[i] > 0)) continue;
            if (only >= 0) return -1;
            only = i;
        }
        return only;
    }

    private void Check(double temperatureK, double molarDensity, ReadOnlySpan<double> x)
    {
        if (!(temperatureK > 0) || !double.IsFinite(temperatureK)) throw new ArgumentOutOfRangeException(nameof(temperatureK), $"the temperature must be above 0 K, got {temperatureK} K");
        if (!(molarDensity >= 0) || !double.IsFinite(molarDensity)) throw new ArgumentOutOfRangeException(nameof(molarDensity), $"the density must not be below 0, got {molarDensity} mol/m3");
        if (x.Length != _pure.Length) throw new ArgumentException($"{_pure.Length} mole fractions expected, got {x.Length}", nameof(x));
        if (Only(x) < 0 && x.IndexOfAnyInRange(double.Epsilon, double.MaxValue) < 0) throw new ArgumentException("no mole fraction is above 0", nameof(x));
    }
}
