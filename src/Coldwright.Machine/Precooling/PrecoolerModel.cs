using Coldwright.Machine.Description;

namespace Coldwright.Machine.Precooling;

/// <summary>
/// A second refrigeration loop that holds a given outlet temperature: its electrical power from the duty as a share of
/// Carnot between evaporating and condensing temperature.
/// </summary>
public static class PrecoolerModel
{
    /// <summary>Evaporating temperature, K.</summary>
    public static double EvaporatingK(PrecoolerPart part) => part.OutletTemperatureK - part.EvaporatorDifferenceK;

    /// <summary>Cooling over electrical input at a room temperature (K).</summary>
    public static double CoefficientOfPerformance(PrecoolerPart part, double roomK)
    {
        double evaporating = EvaporatingK(part), condensing = roomK + part.CondenserDifferenceK;
        return part.CarnotShare * evaporating / (condensing - evaporating);
    }
}
