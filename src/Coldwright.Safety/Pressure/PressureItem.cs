using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;

namespace Coldwright.Safety.Pressure;

/// <summary>What a pressure limit rests on.</summary>
internal enum PressureBasis
{
    /// <summary>Annealed copper tube by formula.</summary>
    Tube,

    /// <summary>The maker's figure in the machine file.</summary>
    Stamp,

    /// <summary>End of a vessel by formula.</summary>
    Cap,
}

/// <summary>Something that holds pressure, with what it sees and what it carries.</summary>
/// <param name="Name">Line, part or tube of a part.</param>
/// <param name="Zone">Zone of its content.</param>
/// <param name="WorkingPa">Highest working pressure, Pa absolute.</param>
/// <param name="LimitPa">Allowed pressure, Pa absolute; null when the metal is too hot for any.</param>
/// <param name="Basis">What the limit rests on.</param>
/// <param name="TemperatureK">Metal temperature, K.</param>
/// <param name="Tube">The tube; null for stamps and ends.</param>
/// <param name="Stamped">True when the part that a tube or end belongs to also carries its maker's figure.</param>
internal sealed record PressureItem(string Name, Zone Zone, double WorkingPa, double? LimitPa, PressureBasis Basis, double TemperatureK, Tube? Tube = null, bool Stamped = false)
{
    /// <summary>Working over allowed pressure, both above the room.</summary>
    public double UsedShare(double roomPa) => LimitPa is { } limit ? (WorkingPa - roomPa) / (limit - roomPa) : double.PositiveInfinity;
}
