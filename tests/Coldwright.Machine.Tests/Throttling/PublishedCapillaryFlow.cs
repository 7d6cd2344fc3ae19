using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Tests.Throttling;

/// <summary>Published explicit correlations of measured capillary flows of one pure refrigerant, to set the march against.</summary>
internal sealed class PublishedCapillaryFlow
{
    private readonly TransportModel _transport;

    public PublishedCapillaryFlow(string name)
    {
        var model = ReferenceModel.Create([name]);
        (Flash, _transport) = (new Flash(model), new TransportModel(model));
    }

    public Flash Flash { get; }

    public TransportModel Transport => _transport;

    /// <summary>
    /// D. A. Wolf, R. R. Bittle, M. B. Pate, ASHRAE research project 762 final report (1995), as given in the ASHRAE Handbook
    /// Refrigeration, chapter on refrigerant-control devices; subcooled inlet (1 to 17 K). Equation and exponents from memory. kg/s.
    /// </summary>
    public double WolfBittlePate(double boreM, double lengthM, double inletPa, double inletK, double subcoolingK)
    {
        var (liquid, vapour) = Saturated(inletK);
        double vf = 1 / (liquid.MolarDensity * liquid.MolarMass), vg = 1 / (vapour.MolarDensity * vapour.MolarMass);
        double mf = _transport.Viscosity(inletK, liquid.MolarDensity, [1]).Value, mg = _transport.Viscosity(inletK, vapour.MolarDensity, [1]).Value;
        double hfg = (vapour.MolarEnthalpy - liquid.MolarEnthalpy) / liquid.MolarMass, cp = liquid.MolarHeatCapacity / liquid.MolarMass;
        double d2 = boreM * boreM, scale = vf * vf * mf * mf;
        double pi1 = lengthM / boreM, pi2 = d2 * hfg / scale, pi4 = d2 * inletPa / (vf * mf * mf), pi5 = d2 * cp * subcoolingK / scale;
        double pi6 = vg / vf, pi7 = (mf - mg) / mg;
        double pi8 = 1.8925 * Math.Pow(pi1, -0.484) * Math.Pow(pi2, -0.824) * Math.Pow(pi4, 1.369) * Math.Pow(pi5, 0.0187) * Math.Pow(pi6, 0.773) * Math.Pow(pi7, 0.265);
        return pi8 * boreM * mf;
    }

    /// <summary>
    /// C. J. L. Hermes, C. Melo, F. T. Knabben, Appl. Therm. Eng. 30 (2010) 449-457: explicit model fitted to measured R134a and R600a
    /// flows (over 90 % within 10 %: abstract, read); equation and the constant 6.0 from memory. kg/s.
    /// </summary>
    public double HermesMeloKnabben(double boreM, double lengthM, double inletPa, double inletK, double backPa)
    {
        var (liquid, _) = Saturated(inletK);
        double pf = SaturationPressure(inletK), vf = 1 / (liquid.MolarDensity * liquid.MolarMass);
        double k = 1.63e5 * Math.Pow(pf, -0.72), a = vf * (1 - k), b = vf * pf * k;
        double driven = (inletPa - pf) / vf + (pf - backPa) / a + b / (a * a) * Math.Log((a * backPa + b) / (a * pf + b));
        return 6.0 * Math.Sqrt(Math.Pow(boreM, 5) / lengthM * driven);
    }

    public double SaturationPressure(double temperatureK) => Flash.TemperatureVapourFraction(temperatureK, 0, [1]).PressurePa;

    private (PhaseState Liquid, PhaseState Vapour) Saturated(double temperatureK)
    {
        var state = Flash.TemperatureVapourFraction(temperatureK, 0.5, [1]);
        return (state.Phases[1], state.Phases[0]);
    }
}
