using Coldwright.Machine.Compression;
using Coldwright.Machine.Throttling;

namespace Coldwright.Machine.Precooling;

/// <summary>What meters the liquid into the evaporator.</summary>
public abstract record ExpansionDevice
{
    internal abstract void Check();
}

/// <summary>Thermostatic (or electronic) valve: holds the superheat at the evaporator's outlet whatever the flow.</summary>
/// <param name="SuperheatK">Above the dew point, K, 0 to 30; 5 to 8 is common practice.</param>
public sealed record ThermostaticExpansion(double SuperheatK) : ExpansionDevice
{
    internal override void Check() => InputCheck.Within(SuperheatK, 0, 30, "K", nameof(SuperheatK));
}

/// <summary>Capillary: passes what it passes; the superheat floats, and when it is gone the subcooling falls.</summary>
/// <param name="Tube">Bore, length, number.</param>
public sealed record CapillaryExpansion(CapillaryTube Tube) : ExpansionDevice
{
    internal override void Check()
    {
        Tube.Check();
        if (Tube.LengthM is null) throw new ArgumentException("LengthM of the precooler's capillary is not given; it is needed, in m", nameof(Tube));
    }
}

/// <summary>Needle valve, orifice or motor valve left at one opening.</summary>
/// <param name="Valve">Flow coefficient and opening.</param>
public sealed record FixedValveExpansion(ControlValve Valve) : ExpansionDevice
{
    internal override void Check() => Valve.Check();
}
