namespace Coldwright.Design.Charging;

/// <summary>What the pump leaves, before anything goes in. Ideal gas: at these pressures it errs by less than a thousandth. SI, pressures absolute.</summary>
/// <param name="VacuumPa">Pressure that the pump leaves, Pa.</param>
/// <param name="Rinses">Times dry gas is let in and pumped out again.</param>
/// <param name="RinseGas">Which gas.</param>
/// <param name="RinsePa">To which pressure, Pa.</param>
/// <param name="AirMol">Air left, mol.</param>
/// <param name="WaterMol">Water left, mol: what the pump leaves counts as all water before the first rinse, for water comes off the walls last.</param>
public sealed record Evacuation(double VacuumPa, int Rinses, string RinseGas, double RinsePa, double AirMol, double WaterMol)
{
    private const double GasConstant = 8.314462618;

    /// <summary>Each rinse thins what was there by vacuum over rinse pressure.</summary>
    /// <param name="vacuumPa">Pa, above 0 and below the rinse's.</param>
    /// <param name="rinses">0 or more; null: as many as bring the air below a share of the charge.</param>
    /// <param name="rinsePa">Pa.</param>
    /// <param name="rinseGas">Its name.</param>
    /// <param name="volumeM3">m3.</param>
    /// <param name="temperatureK">K.</param>
    /// <param name="chargeMol">mol.</param>
    /// <param name="allowedAir">Share of the charge, mol/mol.</param>
    public static Evacuation Of(double vacuumPa, int? rinses, double rinsePa, string rinseGas, double volumeM3, double temperatureK, double chargeMol, double allowedAir)
    {
        if (!(vacuumPa > 0 && vacuumPa < rinsePa)) throw new ArgumentException(FormattableString.Invariant($"the vacuum is {vacuumPa} Pa; it must be above 0 and below the rinse's {rinsePa} Pa"), nameof(vacuumPa));
        double left = vacuumPa * volumeM3 / (GasConstant * temperatureK), thinning = vacuumPa / rinsePa;
        int n = rinses ?? (left <= allowedAir * chargeMol ? 0 : (int)Math.Ceiling(Math.Log(allowedAir * chargeMol / left) / Math.Log(thinning)));
        double now = left * Math.Pow(thinning, n);
        return new(vacuumPa, n, rinseGas, rinsePa, now, now);
    }
}
