using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Rules;

namespace Coldwright.Safety;

/// <summary>The basic cautions about a machine, worked out from its description.</summary>
public static class Cautions
{
    /// <summary>Everything found, gravest first; the last is always that local codes come first.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="inputs">Molar masses and, after a rating, computed temperatures.</param>
    public static IReadOnlyList<Finding> For(MachineDescription machine, CautionInputs inputs)
    {
        var layout = new MachineLayout(machine);
        return
        [
            .. OxygenRule.Apply(machine)
                .Concat(PressureRatingRule.Apply(layout, inputs))
                .Concat(TrappedLiquidRule.Apply(layout, inputs))
                .Concat(FlammableChargeRule.Apply(machine, inputs))
                .Concat(RoomAirRule.Apply(machine))
                .Concat(ColdSurfaceRule.Apply(layout, inputs))
                .OrderBy(f => f.Grade),
            LocalCodes,
        ];
    }

    /// <summary>The standing reminder.</summary>
    public static Finding LocalCodes { get; } = new("local-codes", Grade.Caution, "machine", null, null, "",
        "local codes and licensed practice come first; this list is no certificate", "common practice",
        "a list made from a description cannot see workmanship, corrosion or what was left out",
        "have pressure parts, electrics and flammable gases checked by people licensed for them");
}
