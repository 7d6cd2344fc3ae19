using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Numerics;

namespace Coldwright.Machine.ColdVessel;

/// <summary>
/// What is in the cold vessel, at one pressure: the liquid up to its bubble point, the gas from its dew point up, or above the
/// critical pressure one dense fluid. Made once per pressure; immutable; may be shared between threads.
/// </summary>
public sealed class VesselProduct
{
    private const int LiquidNodes = 48, GasNodes = 64, DenseNodes = 320;

    private readonly ProductIsobar? _liquid, _gas, _dense;

    private VesselProduct(ProductIsobar? liquid, ProductIsobar? gas, ProductIsobar? dense) => (_liquid, _gas, _dense) = (liquid, gas, dense);

    /// <summary>Pa absolute.</summary>
    public required double PressurePa { get; init; }
    /// <summary>kg/mol.</summary>
    public required double MolarMass { get; init; }
    /// <summary>Mole fractions, in the model's order.</summary>
    public required IReadOnlyList<double> Composition { get; init; }
    /// <summary>Bubble point, K: where the liquid of this composition meets its gas; null above the critical pressure.</summary>
    public double? BubbleK { get; private init; }
    /// <summary>Dew point, K; of a pure gas equal to <see cref="BubbleK"/>; null above the critical pressure.</summary>
    public double? DewK { get; private init; }
    /// <summary>Heat given up from dew to bubble point, J/kg; 0 above the critical pressure.</summary>
    public double HeatOfCondensation { get; private init; }
    /// <summary>Enthalpy of the liquid at its bubble point, J/kg; not a number above the critical pressure.</summary>
    public double BubbleEnthalpy { get; private init; } = double.NaN;
    /// <summary>Mole-weighted mean of the components' critical pressures, Pa; from there up the content counts as dense.</summary>
    public required double CriticalPressurePa { get; init; }
    /// <summary>Warmest triple point among the main components (a tenth and more), K: below it ice must be expected on the coil.</summary>
    public required double FreezingK { get; init; }
    /// <summary>Coldest temperature of the tables, K.</summary>
    public required double ColdestK { get; init; }
    /// <summary>Warmest temperature of the tables, K.</summary>
    public required double WarmestK { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>True above the critical pressure: nothing condenses.</summary>
    public bool IsDense => _dense is not null;
    /// <summary>From bubble to dew point, K; 0 for a pure gas and above the critical pressure.</summary>
    public double GlideK => DewK is { } dew ? dew - BubbleK!.Value : 0;

    /// <summary>Makes the tables.</summary>
    /// <param name="flash">Flash of the product's model; used during the call only.</param>
    /// <param name="transport">Transport properties of the same substances; used during the call only.</param>
    /// <param name="z">Mole fractions, sum 1.</param>
    /// <param name="pressurePa">Vessel, Pa absolute, 1e4 to 1e8.</param>
    /// <param name="coldestK">Coldest the content may get, K: the coldest mixture.</param>
    /// <param name="warmestK">Warmest feed, K.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    /// <exception cref="SolveException">No phase equilibrium.</exception>
    public static VesselProduct Create(Flash flash, TransportModel transport, IReadOnlyList<double> z, double pressurePa, double coldestK, double warmestK, CancellationToken cancel = default)
    {
        double[] x = Compression.InputCheck.Fractions(z, flash.Model.Count, nameof(z));
        VesselGuard.Within(pressurePa, 1e4, 1e8, "Pa", nameof(pressurePa));
        VesselGuard.Within(warmestK, 30, 600, "K", nameof(warmestK));
        VesselGuard.Within(coldestK, 20, warmestK, "K", nameof(coldestK));
        double critical = 0, freezing = 0, mass = 0;
        for (int i = 0; i < x.Length; i++)
        {
            var s = flash.Model.Substances[i];
            critical += x[i] * s.CriticalPressurePa;
            mass += x[i] * s.MolarMass;
            if (x[i] >= 0.1) freezing = Math.Max(freezing, s.TripleTemperatureK);
        }
        var source = new ProductSource(flash, transport, x);
        // a little below freezing the equations still give the undercooled liquid; much below they give nothing to rely on
        double cold = Math.Max(coldestK - 1, 0.95 * freezing);
        if (pressurePa >= critical)
        {
            double warm = Math.Max(warmestK, cold + 10);
            var dense = new ProductIsobar(source, pressurePa, cold, warm, DenseNodes, null, null, cancel);
            return new VesselProduct(null, null, dense)
            {
                PressurePa = pressurePa, MolarMass = mass, Composition = x, CriticalPressurePa = critical, FreezingK = freezing, ColdestK = cold, WarmestK = warm, Warnings = [.. flash.Model.Warnings, .. source.Warnings],
            };
        }
        var bubble = flash.PressureVapourFraction(pressurePa, 0, x);
        var dew = flash.PressureVapourFraction(pressurePa, 1, x);
        double tb = bubble.TemperatureK, td = Math.Max(dew.TemperatureK, tb), least = Math.Min(cold, tb - 1), most = Math.Max(warmestK, td + 1);
        var atBubble = source.Of(tb, bubble.Phases[^1]);
        var atDew = source.Of(td, dew.Phases[0]);
        var liquid = new ProductIsobar(source, pressurePa, least, tb, LiquidNodes, true, atBubble, cancel);
        var gas = new ProductIsobar(source, pressurePa, td, most, GasNodes, false, atDew, cancel);
        return new VesselProduct(liquid, gas, null)
        {
            PressurePa = pressurePa, MolarMass = mass, Composition = x, CriticalPressurePa = critical, BubbleK = tb, DewK = td, BubbleEnthalpy = atBubble.MassEnthalpy,
            HeatOfCondensation = atDew.MassEnthalpy - atBubble.MassEnthalpy,
            FreezingK = freezing, ColdestK = least, WarmestK = most, Warnings = [.. flash.Model.Warnings, .. source.Warnings],
        };
    }

    /// <summary>The liquid at a temperature (K); above the bubble point that of the bubble point. The dense fluid above the critical pressure.</summary>
    public ProductProperties Liquid(double temperatureK) => (_dense ?? _liquid!).At(temperatureK);

    /// <summary>The gas at a temperature (K); below the dew point that of the dew point. The dense fluid above the critical pressure.</summary>
    public ProductProperties Gas(double temperatureK) => (_dense ?? _gas!).At(temperatureK);
}
