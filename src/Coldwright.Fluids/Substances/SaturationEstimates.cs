namespace Coldwright.Fluids.Substances;

/// <summary>
/// Starting values of the saturation line (per cent accuracy or better): pressure (Pa), liquid and vapour density
/// (mol/m3) as functions of temperature. Never an answer: <c>PureSaturation</c> solves the equation of state.
/// </summary>
/// <param name="Pressure">Vapour pressure, Pa.</param>
/// <param name="LiquidDensity">Saturated liquid density, mol/m3.</param>
/// <param name="VapourDensity">Saturated vapour density, mol/m3.</param>
public sealed record SaturationEstimates(SaturationFit Pressure, SaturationFit LiquidDensity, SaturationFit VapourDensity);

/// <summary>
/// y/y_r = 1 + s (direct), exp(s) (exponential) or exp(s T_r/T) (scaled exponential) with s = sum n (1 - T/T_r)^t.
/// </summary>
public sealed record SaturationFit(SaturationForm Form, double Reducing, double ReducingTemperatureK, double[] N, double[] T)
{
    /// <summary>Value at <paramref name="temperatureK"/>, below the reducing temperature.</summary>
    public double At(double temperatureK)
    {
        double theta = Math.Max(1 - temperatureK / ReducingTemperatureK, 0), s = 0;
        for (int i = 0; i < N.Length; i++) s += N[i] * Math.Pow(theta, T[i]);
        return Reducing * (Form switch
        {
            SaturationForm.Direct => 1 + s,
            SaturationForm.Exponential => Math.Exp(s),
            _ => Math.Exp(s * ReducingTemperatureK / temperatureK),
        });
    }
}

/// <summary>Form of a <see cref="SaturationFit"/>.</summary>
public enum SaturationForm
{
    /// <summary>1 + s.</summary>
    Direct,
    /// <summary>exp(s).</summary>
    Exponential,
    /// <summary>exp(s T_r/T).</summary>
    ScaledExponential,
}
