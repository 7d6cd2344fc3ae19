using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Machine.Feed;

/// <summary>What becomes of a kilogram of product gas: states and let-down, always with the reference equation of the pure gas.</summary>
public sealed class ProductFluid
{
    private static readonly double[] One = [1];
    private readonly Flash _flash;

    /// <param name="gas">Canonical name: nitrogen, argon, oxygen or methane.</param>
    public ProductFluid(string gas)
    {
        Name = gas;
        Model = ReferenceModel.Create([gas]);
        _flash = new Flash(Model);
    }

    /// <summary>Canonical name.</summary>
    public string Name { get; }
    /// <summary>The reference equation.</summary>
    public MultiFluidModel Model { get; }
    /// <summary>kg/mol.</summary>
    public double MolarMass => Model.Substances[0].MolarMass;
    /// <summary>Critical pressure, Pa.</summary>
    public double CriticalPressurePa => Model.Substances[0].CriticalPressurePa;

    /// <summary>State at temperature (K) and pressure (Pa).</summary>
    public FluidState At(double temperatureK, double pressurePa) => _flash.TemperaturePressure(temperatureK, pressurePa, One);

    /// <summary>Saturation at a pressure (Pa); null above the critical pressure.</summary>
    public SaturationPoint? Saturation(double pressurePa) => PureSaturation.AtPressure(Model, pressurePa);

    /// <summary>State at a pressure (Pa) and entropy (J/(mol K)).</summary>
    public FluidState AtEntropy(double pressurePa, double molarEntropy) => _flash.PressureEntropy(pressurePa, molarEntropy, One);

    /// <summary>Saturated liquid (fraction 0) or vapour (1) at a pressure (Pa) below the critical one.</summary>
    public PhaseState Saturated(double pressurePa, double vapourFraction)
    {
        var state = _flash.PressureVapourFraction(pressurePa, vapourFraction, One);
        return state.Phases[vapourFraction > 0.5 ? 0 : ^1];
    }

    /// <summary>Isenthalpic let-down of a state to a pressure (Pa).</summary>
    public FluidState LetDown(double molarEnthalpy, double pressurePa) => _flash.PressureEnthalpy(pressurePa, molarEnthalpy, One);
}
