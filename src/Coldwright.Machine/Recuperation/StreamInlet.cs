using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Recuperation;

/// <summary>A stream as it enters an exchanger.</summary>
/// <param name="Table">Its properties; they must cover what it meets.</param>
/// <param name="MolarFlow">mol/s, above 0.</param>
/// <param name="MolarEnthalpy">J/mol, within the table.</param>
/// <param name="PressurePa">Pa, above 0.</param>
public sealed record StreamInlet(StreamTable Table, double MolarFlow, double MolarEnthalpy, double PressurePa)
{
    /// <summary>By temperature (K).</summary>
    public static StreamInlet AtTemperature(StreamTable table, double molarFlow, double temperatureK, double pressurePa) =>
        new(table, molarFlow, table.Enthalpy(temperatureK, pressurePa), pressurePa);

    /// <summary>kg/s.</summary>
    public double MassFlow => MolarFlow * Table.MolarMass;

    /// <summary>K.</summary>
    public double TemperatureK => Table.Temperature(MolarEnthalpy, PressurePa, out _);

    internal void Check(string name)
    {
        if (!(MolarFlow > 0) || !double.IsFinite(MolarFlow)) throw new ArgumentException($"molar flow of the {name} stream must be above 0 mol/s, got {MolarFlow} mol/s");
        if (!(PressurePa > 0) || !double.IsFinite(PressurePa)) throw new ArgumentException($"pressure of the {name} stream must be above 0 Pa, got {PressurePa} Pa");
        var (low, high) = Table.Range(PressurePa);
        double slack = 1e-9 * (high - low);
        if (!(MolarEnthalpy >= low - slack && MolarEnthalpy <= high + slack))
            throw new ArgumentException($"enthalpy of the {name} stream must lie within its table, {low} to {high} J/mol, got {MolarEnthalpy} J/mol");
    }
}
