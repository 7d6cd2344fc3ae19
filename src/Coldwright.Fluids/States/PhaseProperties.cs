using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.IdealGas;

namespace Coldwright.Fluids.States;

/// <summary>Caloric properties of a homogeneous phase from the Helmholtz energy: written once for all models.</summary>
public static class PhaseProperties
{
    /// <summary>
    /// h (J/mol) and s (J/(mol K)) at the evaluation's isotherm and the density (mol/m3), on the documented caloric zero.
    /// </summary>
    public static (double Enthalpy, double Entropy) Caloric(HelmholtzModel model, PhaseEvaluation e, double density)
    {
        e.Gradient(density);
        return FromGradient(model, e, density);
    }

    internal static (double Enthalpy, double Entropy) FromGradient(HelmholtzModel model, PhaseEvaluation e, double density)
    {
        double t = e.Temperature, r = e.GasConstant;
        double dt = t - CaloricZero.TemperatureK, lnT = Math.Log(t / CaloricZero.TemperatureK);
        double h = r * (t * (e.ADensity - e.ATemperature) + dt);
        double s = r * (lnT - e.A - e.ATemperature - Math.Log(density * r * t / CaloricZero.PressurePa));
        for (int i = 0; i < e.Count; i++)
        {
            double x = e.X[i];
            if (x == 0) continue;
            // cv0 carries the gas constant of the fluid's paper, p v the mixture's: docs/theory/caloric-zero.md
            var ideal = model.Substances[i].IdealGas;
            double ri = model.Substances[i].GasConstant;
            h += x * ri * (ideal.Enthalpy(t) - dt);
            s += x * (ri * (ideal.Entropy(t) - lnT) - r * Math.Log(x));
        }
        return (h, s);
    }

    /// <summary>h of the ideal-gas mixture as in <see cref="Caloric"/>, J/mol.</summary>
    internal static double IdealEnthalpy(HelmholtzModel model, double temperatureK, ReadOnlySpan<double> x)
    {
        double dt = temperatureK - CaloricZero.TemperatureK, h = model.GasConstant * dt;
        for (int i = 0; i < x.Length; i++)
            if (x[i] > 0) h += x[i] * model.Substances[i].GasConstant * (model.Substances[i].IdealGas.Enthalpy(temperatureK) - dt);
        return h;
    }

    /// <summary>s of the ideal gases at a pressure (Pa), not yet mixed, on the zero of <see cref="Caloric"/>, J/(mol K).</summary>
    internal static double IdealEntropy(HelmholtzModel model, double temperatureK, double pressurePa, ReadOnlySpan<double> x)
    {
        double lnT = Math.Log(temperatureK / CaloricZero.TemperatureK), s = model.GasConstant * (lnT - Math.Log(pressurePa / CaloricZero.PressurePa));
        for (int i = 0; i < x.Length; i++)
            if (x[i] > 0) s += x[i] * model.Substances[i].GasConstant * (model.Substances[i].IdealGas.Entropy(temperatureK) - lnT);
        return s;
    }

    /// <summary>cv and cp, J/(mol K), and the speed of sound, m/s; <see cref="PhaseEvaluation.Caloric"/> is called here.</summary>
    public static (double Cv, double Cp, double SpeedOfSound) Second(HelmholtzModel model, PhaseEvaluation e, double density)
    {
        e.Caloric(density);
        double r = e.GasConstant;
        double cv = -2 * e.ATemperature - e.ATemperature2, mass = 0;
        for (int i = 0; i < e.Count; i++)
        {
            cv += e.X[i] * model.Substances[i].GasConstant / r * (model.Substances[i].IdealGas.HeatCapacity(e.Temperature) - 1);
            mass += e.X[i] * model.Substances[i].MolarMass;
        }
        double slope = 1 + 2 * e.ADensity + e.ADensity2, cross = 1 + e.ADensity + e.ATemperatureDensity;
        double w2 = r * e.Temperature / mass * (slope + cross * cross / cv);
        return (r * cv, r * (cv + cross * cross / slope), w2 > 0 ? Math.Sqrt(w2) : 0);
    }
}
