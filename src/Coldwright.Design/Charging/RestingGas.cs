using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Design.Charging;

/// <summary>Pressure and liquid of amounts of gases in a rigid space at one temperature. Not thread-safe.</summary>
public sealed class RestingGas
{
    private const double LeastPa = 1e-3, MostPa = 1e8;

    private readonly Func<IReadOnlyList<string>, HelmholtzModel> _models;
    private readonly Dictionary<string, Flash> _flashes = new(StringComparer.Ordinal);

    /// <param name="names">Canonical names of the gases.</param>
    /// <param name="volumeM3">m3, above 0.</param>
    /// <param name="temperatureK">K, above 0.</param>
    /// <param name="models">Makes the fluid model of some of the gases.</param>
    public RestingGas(IReadOnlyList<string> names, double volumeM3, double temperatureK, Func<IReadOnlyList<string>, HelmholtzModel> models)
    {
        if (!(volumeM3 > 0 && double.IsFinite(volumeM3))) throw new ArgumentException($"volume is {volumeM3} m3; it must be finite and above 0 m3", nameof(volumeM3));
        if (!(temperatureK > 0 && double.IsFinite(temperatureK))) throw new ArgumentException($"temperature is {temperatureK} K; it must be finite and above 0 K", nameof(temperatureK));
        (Names, VolumeM3, TemperatureK, _models) = (names, volumeM3, temperatureK, models);
    }

    /// <summary>Canonical names.</summary>
    public IReadOnlyList<string> Names { get; }
    /// <summary>m3.</summary>
    public double VolumeM3 { get; }
    /// <summary>K.</summary>
    public double TemperatureK { get; }

    /// <summary>Pressure that a bottle of a gas has while liquid stands in it, Pa; null above its critical temperature, where the bottle's filling decides.</summary>
    /// <param name="gas">Canonical name.</param>
    public double? BottlePa(string gas)
    {
        var model = _models([gas]);
        return TemperatureK < 0.9999 * model.Substances[0].CriticalTemperatureK ? PureSaturation.AtTemperature(model, TemperatureK).PressurePa : null;
    }

    /// <summary>Pressure (Pa) and share that is liquid (mol/mol) of amounts.</summary>
    /// <param name="moles">mol of each gas.</param>
    /// <exception cref="SolveException">No such state.</exception>
    public (double PressurePa, double LiquidShare) At(IReadOnlyList<double> moles)
    {
        int[] present = [.. Enumerable.Range(0, moles.Count).Where(i => moles[i] > 0)];
        double total = present.Sum(i => moles[i]), density = total / VolumeM3;
        if (present.Length == 0) return (0, 0);
        if (present.Length == 1 && Pure(Names[present[0]], density) is { } wet) return wet;
        var flash = Of([.. present.Select(i => Names[i])]);
        double[] z = [.. present.Select(i => moles[i] / total)];
        double Off(double lnP) => flash.TrySolve(TemperatureK, Math.Exp(lnP), z) ? Math.Log(flash.Density() / density)
            : throw new SolveException(SolveReport.Telling(SolveStatus.NotConverged, 0, 0, $"no phase equilibrium at {SpokenAmount.Temperature(TemperatureK, "0.##")} and {SpokenAmount.Pressure(Math.Exp(lnP), "0.###")} while filling"));
        double ideal = Math.Log(density * flash.Model.GasConstant * TemperatureK), low = ideal, high = ideal, offLow = Off(low), offHigh = offLow;
        while (offLow > 0 && low > Math.Log(LeastPa)) offLow = Off(low -= 0.5);
        while (offHigh < 0 && high < Math.Log(MostPa)) offHigh = Off(high += 0.5);
        if (offLow > 0 || offHigh < 0)
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, offHigh, $"{total:0.##} mol do not go into {1e3 * VolumeM3:0.###} L below {SpokenAmount.Pressure(MostPa, "0")}"));
        double lnPressure = low == high ? low : Brent.Solve(Off, low, offLow, high, offHigh, 1e-12);
        return flash.TrySolve(TemperatureK, Math.Exp(lnPressure), z) ? (Math.Exp(lnPressure), 1 - flash.VapourFraction()) : (Math.Exp(lnPressure), 0);
    }

    /// <summary>Amount of one gas that brings the space to a pressure, mol.</summary>
    /// <param name="moles">mol of each gas before.</param>
    /// <param name="gas">Index of the gas let in.</param>
    /// <param name="untilPa">Pressure to reach, Pa absolute; above that before.</param>
    /// <param name="mostMol">Where the search ends, mol.</param>
    /// <exception cref="SolveException">So much of it condenses that the pressure is not reached.</exception>
    public double MolesUntil(IReadOnlyList<double> moles, int gas, double untilPa, double mostMol)
    {
        double[] n = [.. moles];
        double Off(double add)
        {
            n[gas] = moles[gas] + add;
            return n.Sum() > 0 ? At(n).PressurePa - untilPa : -untilPa;
        }
        double low = Off(0), high = Off(mostMol);
        if (low >= 0) return 0;
        if (high < 0)
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, high, $"{Names[gas]} does not bring the loop to {SpokenAmount.Pressure(untilPa, "0.##")}: {mostMol:0.##} mol of it only come to {SpokenAmount.Pressure(untilPa + high, "0.##")}"));
        return Brent.Solve(Off, 0, low, mostMol, high, 1e-13 * mostMol);
    }

    // one gas alone between its saturated densities stands at its vapour pressure
    private (double, double)? Pure(string gas, double density)
    {
        var model = _models([gas]);
        if (TemperatureK >= 0.9999 * model.Substances[0].CriticalTemperatureK) return null;
        var s = PureSaturation.AtTemperature(model, TemperatureK);
        if (density <= s.VapourDensity || density >= s.LiquidDensity) return null;
        double vapour = (1 / density - 1 / s.LiquidDensity) / (1 / s.VapourDensity - 1 / s.LiquidDensity);
        return (s.PressurePa, 1 - vapour);
    }

    private Flash Of(string[] names)
    {
        string key = string.Join(';', names);
        if (!_flashes.TryGetValue(key, out var flash)) _flashes[key] = flash = new Flash(_models(names));
        return flash;
    }
}
