namespace Coldwright.Report;

/// <summary>Which units a person reads first.</summary>
public enum UnitSystem
{
    /// <summary>K with °C beside, bar absolute with gauge beside.</summary>
    Si,

    /// <summary>°F with K beside, psig with psia beside.</summary>
    Us,
}
