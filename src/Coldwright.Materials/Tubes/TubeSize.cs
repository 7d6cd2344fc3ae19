namespace Coldwright.Materials.Tubes;

/// <summary>One row of a tube standard.</summary>
/// <param name="Size">Size as the standard names it, in inches, for example <c>2-1/8</c>.</param>
/// <param name="Series"><c>ACR</c>, <c>type K</c>, <c>type L</c> or <c>type M</c>.</param>
/// <param name="OutsideDiameterM">Outside diameter, m.</param>
/// <param name="WallM">Nominal wall, m.</param>
/// <param name="Source">Citation of the standard.</param>
public sealed record TubeSize(string Size, string Series, double OutsideDiameterM, double WallM, string Source)
{
    /// <summary>The text that finds this tube again.</summary>
    public string Text => $"{Size} in {Series}";
}
