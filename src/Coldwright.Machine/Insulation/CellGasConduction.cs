using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.Freezing;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Insulation;

/// <summary>Conductivity of the gas in cells or gaps against temperature, from free molecules to continuum.</summary>
/// <remarks>
/// <para>k = k0(T, y) / (1 + 2 g/d). k0: dilute gas of the composition y left after condensation, from the transport models. d: distance
/// between walls. g: temperature jump distance, from equating to the flow of free molecules between parallel walls,
/// q = a (gamma + 1)/(gamma - 1) sqrt(R/(8 pi M T)) p dT, a = accommodation/(2 - accommodation); then g = k0 dT/(2 q).</para>
/// <para>Sources: E. H. Kennard, Kinetic Theory of Gases (1938), ch. 8; M. G. Kaganer, Thermal Insulation in Cryogenic Engineering (1969), for
/// gas in cells. Joining both limits as resistances in series is right at both ends and within 10 % between.</para>
/// <para>Below the triple point: the published sublimation pressure where the fluid library has one (carbon dioxide, water); else the liquid's line,
/// straight in ln p against 1/T, lowered by the heat of fusion.</para>
/// </remarks>
public sealed class CellGasConduction
{
    // J/(mol K), CODATA 2018
    private const double GasConstant = 8.314462618;

    private readonly CellGas _gas;
    private readonly HelmholtzModel[] _pure = [];
    private readonly double[] _fraction = [];
    private readonly TransportModel? _transport;
    private readonly Lock _gate = new();

    /// <param name="gas">The gas.</param>
    public CellGasConduction(CellGas gas)
    {
        gas.Validate();
        _gas = gas;
        if (gas.PressurePa == 0) return;
        var names = gas.Composition.Select(c => c.Substance).ToArray();
        _transport = new TransportModel(ReferenceModel.Create(names));
        _pure = names.Select(n => (HelmholtzModel)ReferenceModel.Create([n])).ToArray();
        _fraction = gas.Composition.Select(c => c.MoleFraction).ToArray();
    }

    /// <summary>Pressure of the gas at a temperature, Pa, after condensation.</summary>
    /// <param name="temperatureK">Temperature, K, above 0.</param>
    public double PressurePa(double temperatureK) => Partial(temperatureK).Sum();

    /// <summary>Conductivity, W/(m K); 0 without gas.</summary>
    /// <param name="temperatureK">Temperature, K, above 0.</param>
    /// <param name="gapM">Distance between the walls, m, above 0.</param>
    /// <param name="accommodation">Share of the molecules that take the wall's temperature, above 0 to 1; heavy gases on technical surfaces 0.8 to 1, helium 0.3 to 0.6 (Kennard).</param>
    public double Conductivity(double temperatureK, double gapM, double accommodation = 1)
    {
        if (!(gapM > 0)) throw new ArgumentException(FormattableString.Invariant($"the gap must be above 0 m, got {gapM} m"), nameof(gapM));
        if (!(accommodation is > 0 and <= 1)) throw new ArgumentException(FormattableString.Invariant($"the accommodation must be above 0 and not above 1, got {accommodation}"), nameof(accommodation));
        var partial = Partial(temperatureK);
        var pressure = partial.Sum();
        if (_transport is null || pressure <= 0) return 0;
        var y = partial.Select(p => p / pressure).ToArray();
        double continuum;
        // the transport model serves one thread at a time; layers are shared
        lock (_gate) continuum = _transport.Conductivity(temperatureK, 0, y).Value;
        double molarMass = 0, heat = 0;
        for (var i = 0; i < y.Length; i++)
        {
            molarMass += y[i] * _pure[i].Substances[0].MolarMass;
            heat += y[i] * _pure[i].Substances[0].IdealGas.HeatCapacity(temperatureK);
        }
        // (gamma + 1)/(gamma - 1) = 2 cp/R - 1
        var freeMolecules = accommodation / (2 - accommodation) * (2 * heat - 1) * Math.Sqrt(GasConstant / (8 * Math.PI * molarMass * temperatureK)) * pressure;
        return 1 / (1 / continuum + 1 / (freeMolecules * gapM));
    }

    private double[] Partial(double temperatureK)
    {
        var total = _gas.PressurePa * (_gas.Closed ? temperatureK / _gas.FillTemperatureK : 1);
        var partial = new double[_pure.Length];
        for (var i = 0; i < partial.Length; i++) partial[i] = Math.Min(_fraction[i] * total, VapourPressure(_pure[i], temperatureK));
        return partial;
    }

    private static double VapourPressure(HelmholtzModel pure, double temperatureK)
    {
        var substance = pure.Substances[0];
        if (temperatureK >= 0.999 * substance.CriticalTemperatureK) return double.PositiveInfinity;
        if (temperatureK >= substance.TripleTemperatureK) return PureSaturation.AtTemperature(pure, temperatureK).PressurePa;
        var solid = SolidCatalog.Find(substance.Name);
        if (solid?.Sublimation is { } curve) return Math.Exp(curve.LnPressure(Math.Clamp(temperatureK, curve.MinimumTemperatureK, curve.TripleTemperatureK)));
        double t1 = substance.TripleTemperatureK, t2 = 1.02 * t1;
        double p1 = PureSaturation.AtTemperature(pure, t1).PressurePa, p2 = PureSaturation.AtTemperature(pure, t2).PressurePa;
        var liquid = Math.Log(p1) + Math.Log(p2 / p1) * (1 / t1 - 1 / temperatureK) / (1 / t1 - 1 / t2);
        return Math.Exp(liquid - (solid?.HeatOfFusion ?? 0) / GasConstant * (1 / temperatureK - 1 / t1));
    }
}
