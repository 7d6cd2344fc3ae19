using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Machine.Compression;

/// <summary>A state of the gas inside a compressor.</summary>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa absolute.</param>
/// <param name="MolarDensity">mol/m3.</param>
/// <param name="MolarEnthalpy">J/mol.</param>
/// <param name="MolarEntropy">J/(mol K).</param>
public readonly record struct GasPoint(double TemperatureK, double PressurePa, double MolarDensity, double MolarEnthalpy, double MolarEntropy);

/// <summary>
/// States of a fixed composition along the gas branch, some fifty times cheaper than a certified flash: an iteration asks
/// for dozens. The caller certifies the ends. With <see cref="Wet"/> every state is a flash instead; each place has
/// one of its own, which starts from the state that was there before.
/// </summary>
internal sealed class GasPath(Flash flash, double[] z)
{
    private const int MostSteps = 60;
    private readonly PhaseEvaluation _gas = flash.Model.CreateEvaluation();
    private readonly Flash?[] _wet = new Flash?[Enum.GetValues<GasPlace>().Length];

    /// <summary>Liquid takes part: every state is a certified flash.</summary>
    public bool Wet { get; set; }

    public GasPoint At(double temperatureK, double pressurePa, double densityGuess = double.NaN, GasPlace place = GasPlace.Suction)
    {
        if (!Wet)
        {
            _gas.SetIsotherm(temperatureK, z);
            double density = DensityRoots.Find(_gas, pressurePa, Branch.Vapour, densityGuess);
            if (density > 0)
            {
                var (h, s) = PhaseProperties.Caloric(flash.Model, _gas, density);
                return new GasPoint(temperatureK, pressurePa, density, h, s);
            }
            // the gas branch ends below this pressure: only a flash can answer, here and from here on
            Wet = true;
        }
        var wet = Wetted(place);
        return wet.TrySolve(temperatureK, pressurePa, z, warm: true) ? Read(wet) : Of(wet.TemperaturePressure(temperatureK, pressurePa, z));
    }

    public GasPoint AtEnthalpy(double pressurePa, double molarEnthalpy, double guessK, GasPlace place = GasPlace.Suction) =>
        Wet ? Flashed(Wetted(place), pressurePa, molarEnthalpy, guessK, true) : Search(pressurePa, molarEnthalpy, guessK, true, place);

    public GasPoint AtEntropy(double pressurePa, double molarEntropy, double guessK, GasPlace place = GasPlace.Suction) =>
        Wet ? Flashed(Wetted(place), pressurePa, molarEntropy, guessK, false) : Search(pressurePa, molarEntropy, guessK, false, place);

    // a state inside a step of no width is only to be had as a whole
    private GasPoint Flashed(Flash wet, double p, double target, double guessK, bool enthalpy) => enthalpy
        ? wet.TrySolvePressureEnthalpy(p, target, z, guessK) ? Read(wet) : Of(wet.PressureEnthalpy(p, target, z, guessK))
        : wet.TrySolvePressureEntropy(p, target, z, guessK) ? Read(wet) : Of(wet.PressureEntropy(p, target, z, guessK));

    private Flash Wetted(GasPlace place) => _wet[(int)place] ??= new Flash(flash.Model);

    // secant steps; h and s rise with temperature along a gas isobar, nearly straight
    private GasPoint Search(double p, double target, double guessK, bool enthalpy, GasPlace place)
    {
        double r = flash.Model.GasConstant, scale = enthalpy ? 300 * r : r, slope = 1;
        var point = At(guessK, p);
        if (!Wet)
        {
            // heat capacity where the search starts; a secant over a long step is better, over a short one it is rounding
            double heat = PhaseProperties.Second(flash.Model, _gas, point.MolarDensity).Cp;
            slope = enthalpy ? heat : heat / guessK;
        }
        double f = (enthalpy ? point.MolarEnthalpy : point.MolarEntropy) - target;
        for (int i = 0; i < MostSteps; i++)
        {
            if (Wet) return enthalpy ? AtEnthalpy(p, target, guessK, place) : AtEntropy(p, target, guessK, place);
            double step = Math.Clamp(-f / slope, -0.3 * point.TemperatureK, 0.5 * point.TemperatureK);
            if (Math.Abs(f) <= 2e-13 * scale || Math.Abs(step) < 1e-13 * point.TemperatureK) return point;
            var next = At(point.TemperatureK + step, p, point.MolarDensity * (1 - step / (point.TemperatureK + step)));
            double g = (enthalpy ? next.MolarEnthalpy : next.MolarEntropy) - target, rise = (g - f) / step;
            if (Math.Abs(step) > 1e-2 && rise > 0) slope = rise;
            bool stalled = Math.Abs(g) >= Math.Abs(f) && Math.Abs(step) < 1e-8;
            (point, f) = (next, g);
            if (stalled && Math.Abs(f) < 1e-10 * scale) return point;
        }
        throw new SolveException(SolveReport.Telling(SolveStatus.NotConverged, MostSteps, f,
            $"compressor: no gas state at {SpokenAmount.Pressure(p, "0.###")} with {(enthalpy ? "enthalpy" : "entropy")} {target:0.####}: last tried {SpokenAmount.Temperature(point.TemperatureK, "0.###")}"));
    }

    private static GasPoint Read(Flash f) => new(f.TemperatureK, f.PressurePa, f.Density(), f.Enthalpy(), f.Entropy());

    private static GasPoint Of(FluidState s) => new(s.TemperatureK, s.PressurePa, s.MolarDensity, s.MolarEnthalpy, s.MolarEntropy);
}
