using Coldwright.Fluids.Substances;

namespace Coldwright.Design.Charging;

/// <summary>Steps that fill a space with a mixture, and what each error does. All figures at the room's temperature.</summary>
/// <param name="Steps">In order.</param>
/// <param name="Moles">Wanted, mol of each gas of the mixture.</param>
/// <param name="StandstillPa">At the end, Pa absolute.</param>
/// <param name="LiquidShare">Liquid then, mol/mol.</param>
public sealed record FillingRecipe(IReadOnlyList<FillingStep> Steps, IReadOnlyList<double> Moles, double StandstillPa, double LiquidShare)
{
    /// <summary>Makes the recipe.</summary>
    /// <param name="gas">Space and gases.</param>
    /// <param name="moles">What is wanted, mol of each.</param>
    /// <param name="roomPa">Room, Pa absolute.</param>
    /// <param name="options">Scale, gauge, tolerance.</param>
    /// <param name="cooling">Smallest isothermal enthalpy difference (J/mol) of mole fractions; null: not asked for.</param>
    /// <param name="cancel">Cancels the work.</param>
    public static FillingRecipe Make(RestingGas gas, IReadOnlyList<double> moles, double roomPa, ChargeOptions options, Func<IReadOnlyList<double>, double>? cooling = null, CancellationToken cancel = default)
    {
        double total = moles.Sum(), scale = Math.Sqrt(2) * options.ScaleKg, gauge = Math.Sqrt(2) * options.GaugePa;
        var (endPa, endLiquid) = gas.At(moles);
        double? best = cooling?.Invoke([.. moles.Select(n => n / total)]);
        var now = new double[moles.Count];
        double pressure = 0;
        var steps = new List<FillingStep>();
        foreach (var (i, amount) in FillingOrder.Of(gas, moles, roomPa))
        {
            cancel.ThrowIfCancellationRequested();
            double mass = SubstanceCatalog.Get(gas.Names[i]).MolarMass;
            now[i] += amount;
            var (until, liquid) = gas.At(now);
            double perMol = Rise(gas, now, i, amount);
            // a mole more of it makes its fraction larger by (1 - x)/n
            double tolerance = options.AllowedFraction * total / Math.Max(1 - moles[i] / total, 0.05);
            bool tells = liquid < 1e-9 && perMol > 0;
            double? byGauge = tells ? mass * Math.Sqrt(gauge / perMol * (gauge / perMol) + amount * options.GasTemperatureK / gas.TemperatureK * (amount * options.GasTemperatureK / gas.TemperatureK)) : null;
            steps.Add(new FillingStep
            {
                Gas = gas.Names[i],
                Moles = amount,
                MassKg = amount * mass,
                FromPa = pressure,
                UntilPa = until,
                LiquidShare = liquid,
                BottlePa = gas.BottlePa(gas.Names[i]),
                ByScaleKg = scale,
                ByGaugeKg = byGauge,
                By = byGauge is { } g && g < scale ? FillingMeasure.Pressure : FillingMeasure.Weight,
                ToleranceKg = tolerance * mass,
                TolerancePa = tells ? tolerance * perMol : null,
                Error = Error(gas, moles, i, tolerance, endPa, cooling, best),
            });
            pressure = until;
        }
        return new(steps, [.. moles], endPa, endLiquid);
    }

    /// <summary>What is in the space when the steps are followed by their readings: those told by the gauge end at its reading, the others at their weight.</summary>
    /// <param name="gas">Space and gases.</param>
    /// <param name="gaugeErrorPa">Added to every pressure reached, Pa; by step.</param>
    /// <param name="scaleErrorKg">Added to every mass let in, kg; by step.</param>
    /// <returns>mol of each gas.</returns>
    public IReadOnlyList<double> Followed(RestingGas gas, Func<int, double>? gaugeErrorPa = null, Func<int, double>? scaleErrorKg = null)
    {
        var now = new double[Moles.Count];
        for (int k = 0; k < Steps.Count; k++)
        {
            var step = Steps[k];
            int i = gas.Names.ToList().IndexOf(step.Gas);
            double mass = SubstanceCatalog.Get(step.Gas).MolarMass;
            now[i] += step.By == FillingMeasure.Pressure
                ? gas.MolesUntil(now, i, step.UntilPa + (gaugeErrorPa?.Invoke(k) ?? 0), 3 * Moles.Sum())
                : Math.Max(0, step.Moles + (scaleErrorKg?.Invoke(k) ?? 0) / mass);
        }
        return now;
    }

    private static double Rise(RestingGas gas, double[] now, int i, double amount)
    {
        double d = 1e-3 * amount;
        double[] less = [.. now];
        less[i] -= d;
        return (gas.At(now).PressurePa - gas.At(less).PressurePa) / d;
    }

    private static StepError Error(RestingGas gas, IReadOnlyList<double> moles, int i, double more, double endPa, Func<IReadOnlyList<double>, double>? cooling, double? best)
    {
        double[] off = [.. moles];
        off[i] += more;
        double total = off.Sum();
        return new(off[i] / total - moles[i] / moles.Sum(), gas.At(off).PressurePa - endPa, best is { } b && b != 0 ? cooling!([.. off.Select(n => n / total)]) / b - 1 : null);
    }
}
