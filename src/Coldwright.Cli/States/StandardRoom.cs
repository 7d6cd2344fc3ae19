using System.Globalization;
using Coldwright.Quantities;

namespace Coldwright.Cli.States;

/// <summary>The air pressure gauge readings are counted from where no room is described: one standard atmosphere, as Quantities defines it.</summary>
internal static class StandardRoom
{
    /// <summary>Pa absolute.</summary>
    public static double PressurePa { get; } = UnitTable.TryFindWord("atma", out var atmosphere)
        ? atmosphere.ToSi(1, 0)
        : throw new InvalidOperationException("the unit table has no standard atmosphere");

    /// <summary>The same in words.</summary>
    public static string Text => $"{PressurePa.ToString("0", CultureInfo.InvariantCulture)} Pa absolute (one standard atmosphere)";
}
