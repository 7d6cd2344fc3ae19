namespace Coldwright.Machine.Recuperation;

/// <summary>Heat from the room along the exchanger.</summary>
/// <param name="ConductancePerLength">Of the insulation around it, W/(m K), at least 0.</param>
/// <param name="EnvironmentK">Temperature outside the insulation, K, above 0.</param>
public sealed record RoomLeak(double ConductancePerLength, double EnvironmentK)
{
    internal void Check()
    {
        if (!(ConductancePerLength >= 0) || !double.IsFinite(ConductancePerLength)) throw new ArgumentException($"leak conductance must not be below 0 W/(m K), got {ConductancePerLength} W/(m K)");
        GeometryGuard.Positive(EnvironmentK, "temperature around the exchanger", "K");
    }
}
