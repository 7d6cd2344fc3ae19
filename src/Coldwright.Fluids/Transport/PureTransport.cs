using Coldwright.Fluids.Substances;
using Coldwright.Fluids.Transport.Terms;

namespace Coldwright.Fluids.Transport;

/// <summary>Transport properties of one pure component, for use alone or in a mixture. One object per thread.</summary>
internal sealed class PureTransport
{
    // R in J/(mol K) of the kinetic theory of gases; the fifth digit is of no account here
    private const double R = GasConstant.Mixture;

    // Some dilute conductivities are straight lines in temperature that cross zero in the cold. Below this share of the translational
    // part 15/4 R eta0/M, which every gas has, they mean nothing and the share is taken. Our addition, far outside every stated range.
    private const double LeastTranslation = 0.9;

    private readonly PurePoint _point;
    private readonly TransportTerm[] _critical;

    public PureTransport(Substance substance)
    {
        Substance = substance;
        Data = TransportCatalog.Get(substance.Name);
        _point = new PurePoint(substance);
        _critical = Data.Conductivity?.Critical ?? Data.Critical;
    }

    public Substance Substance { get; }
    public FluidTransportData Data { get; }

    /// <summary>Viscosity at zero density, Pa s: the correlation's, else that of a Lennard-Jones gas.</summary>
    public double DiluteViscosity(double temperatureK)
    {
        if (Data.Viscosity is not { } c) return Data.Dilute!.At(temperatureK);
        _point.Set(temperatureK, 0);
        return TransportTerm.Sum(c.Dilute, _point);
    }

    /// <summary>
    /// Conductivity at zero density, W/(m K): the correlation's, else lambda0 = eta0/M (15/4 R + f (cp0 - 5/2 R)) in the form of
    /// McLinden, Klein, Perkins, Int. J. Refrig. 23 (2000) 43; for single atoms the second part is 0.
    /// </summary>
    public double DiluteConductivity(double temperatureK, double diluteViscosity)
    {
        _point.Set(temperatureK, 0);
        _point.DiluteViscosity = diluteViscosity;
        return Data.Conductivity is { } c
            ? Dilute(c, diluteViscosity)
            : diluteViscosity * R / Substance.MolarMass * (3.75 + (Data.InternalFactor.F0 + Data.InternalFactor.F1PerK * temperatureK) * (_point.IdealHeatCapacity - 2.5));
    }

    private double Dilute(Correlation c, double eta) =>
        Math.Max(TransportTerm.Sum(c.Dilute, _point), LeastTranslation * 3.75 * R * eta / Substance.MolarMass);

    /// <summary>Viscosity, Pa s, by the correlation; only where there is one.</summary>
    public double Viscosity(double temperatureK, double molarDensity)
    {
        var c = Data.Viscosity!;
        _point.Set(temperatureK, molarDensity);
        double dilute = _point.DiluteViscosity = TransportTerm.Sum(c.Dilute, _point);
        return molarDensity > 0 ? dilute + TransportTerm.Sum(c.Dense, _point) + TransportTerm.Sum(c.Critical, _point) : dilute;
    }

    /// <summary>Conductivity without critical enhancement, W/(m K), by the correlation; only where there is one.</summary>
    public double ConductivityBackground(double temperatureK, double molarDensity)
    {
        var c = Data.Conductivity!;
        double eta = DiluteViscosity(temperatureK);
        _point.Set(temperatureK, molarDensity);
        _point.DiluteViscosity = eta;
        double dilute = _point.DiluteConductivity = Dilute(c, eta);
        return molarDensity > 0 ? dilute + TransportTerm.Sum(c.Dense, _point) : dilute;
    }

    /// <summary>Critical enhancement of the conductivity, W/(m K); 0 where none is published.</summary>
    public double ConductivityEnhancement(double temperatureK, double molarDensity, double viscosity)
    {
        if (_critical.Length == 0 || !(molarDensity > 0)) return 0;
        _point.Set(temperatureK, molarDensity);
        _point.Viscosity = viscosity;
        return TransportTerm.Sum(_critical, _point);
    }
}
