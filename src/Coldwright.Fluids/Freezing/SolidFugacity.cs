using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.Freezing;

/// <summary>
/// ln of the fugacity (Pa) of each component as a pure solid. With a sublimation equation: its pressure, times the
/// fugacity coefficient of the saturated vapour, times the solid's Poynting factor. Otherwise: the fugacity of the
/// subcooled liquid from the model itself, as a pure component of the same mixture model so that its errors cancel, times
/// <see cref="IdealSolubility.LnFugacityRatio"/>. Not thread-safe.
/// </summary>
internal sealed class SolidFugacity
{
    /// <summary>Below this sublimation pressure the vapour is an ideal gas to better than 1e-5.</summary>
    private const double IdealGasPressurePa = 10;

    private readonly HelmholtzModel _model;
    private readonly PhaseEvaluation _e;
    private readonly double[] _pure;
    private readonly double[] _extrapolatedBelow;

    public SolidFugacity(HelmholtzModel model)
    {
        _model = model;
        _e = model.CreateEvaluation();
        _pure = new double[model.Count];
        _extrapolatedBelow = new double[model.Count];
        Solids = model.Substances.Select(s => SolidCatalog.Find(s.Name)).ToArray();
    }

    /// <summary>Data per component; null where there are none.</summary>
    public IReadOnlyList<SolidSubstance?> Solids { get; }

    /// <summary>Temperature (K) below which the liquid of a component had to be extrapolated so far; 0: never.</summary>
    public double ExtrapolatedBelow(int component) => _extrapolatedBelow[component];

    /// <summary>
    /// ln f_solid; NaN above the triple point, without data, or when the model has no liquid at the triple point either.
    /// </summary>
    public double Ln(int component, double temperatureK, double pressurePa)
    {
        if (Solids[component] is not { } solid || temperatureK > solid.TripleTemperatureK) return double.NaN;
        return solid.Sublimation is { } curve
            ? LnFromSublimation(component, curve, Math.Min(temperatureK, curve.TripleTemperatureK), pressurePa)
            : LnLiquid(component, solid.TripleTemperatureK, temperatureK, pressurePa) + IdealSolubility.LnFugacityRatio(solid, temperatureK);
    }

    /// <summary>
    /// ln of the model's liquid fugacity at the triple point over that of the published sublimation pressure: what a
    /// component with a sublimation equation lacks of an exact pure limit. 0 where there is no such equation, NaN without a liquid.
    /// </summary>
    public double TripleMismatch(int component)
    {
        if (Solids[component]?.Sublimation is not { } curve) return 0;
        return LnLiquidDirect(component, curve.TripleTemperatureK, curve.TriplePressurePa)
            - LnFromSublimation(component, curve, curve.TripleTemperatureK, curve.TriplePressurePa);
    }

    private double LnFromSublimation(int component, SublimationCurve curve, double t, double pressurePa)
    {
        double ln = curve.LnPressure(t), p = Math.Exp(ln);
        double poynting = curve.SolidMolarVolume * (pressurePa - p) / (GasConstant.Mixture * t);
        if (p < IdealGasPressurePa) return ln + poynting;
        SetPure(component, t);
        double density = DensityRoots.Find(_e, p, Branch.Vapour);
        return (double.IsNaN(density) ? ln : LnFugacity(component, density)) + poynting;
    }

    private double LnLiquid(int component, double tripleK, double t, double pressurePa)
    {
        double direct = LnLiquidDirect(component, t, pressurePa);
        if (!double.IsNaN(direct)) return direct;
        // far below its triple point an equation may lose its liquid: ln f is continued straight in 1/T, that is with
        // a constant heat of vaporisation
        double cold = double.NaN;
        for (double at = tripleK; at > t && !double.IsNaN(LnLiquidDirect(component, at, pressurePa)); at -= 0.5) cold = at;
        if (double.IsNaN(cold)) return double.NaN;
        double warm = cold + 2, low = LnLiquidDirect(component, cold, pressurePa), high = LnLiquidDirect(component, warm, pressurePa);
        _extrapolatedBelow[component] = Math.Max(_extrapolatedBelow[component], cold);
        return double.IsNaN(high) ? double.NaN : low + (high - low) / (1 / warm - 1 / cold) * (1 / t - 1 / cold);
    }

    private double LnLiquidDirect(int component, double t, double pressurePa)
    {
        SetPure(component, t);
        double density = DensityRoots.Find(_e, pressurePa, Branch.Liquid);
        return double.IsNaN(density) ? double.NaN : LnFugacity(component, density);
    }

    private void SetPure(int component, double t)
    {
        Array.Clear(_pure);
        _pure[component] = 1;
        _e.SetIsotherm(t, _pure);
    }

    // f = x rho R T exp(d psi/d rho_i), with x = 1
    private double LnFugacity(int component, double density)
    {
        _e.Gradient(density);
        return Math.Log(density * _e.GasConstant * _e.Temperature) + _e.G[component];
    }
}
