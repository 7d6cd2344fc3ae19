using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Rules;

namespace Coldwright.Safety;

/// <summary>What every command shows: the findings that need no fluid computed, notes left out.</summary>
public static class Cautions
{
    /// <summary>Danger, serious and caution, gravest first; the last is always that local codes come first.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="inputs">Molar masses and, after a rating, computed temperatures.</param>
    public static IReadOnlyList<Finding> For(MachineDescription machine, CautionInputs inputs) =>
        [.. FromDescription(new MachineLayout(inputs.Applied(machine)), inputs).Where(f => f.Grade != Grade.Note).OrderBy(f => f.Grade), LocalCodes];

    /// <summary>The standing reminder.</summary>
    public static Finding LocalCodes { get; } = new("local-codes", Grade.Caution, "machine", null, null, "",
        "local codes and licensed practice come first; this list is no certificate", "laws on pressure equipment, electrics, gases and refrigerants differ from place to place",
        "a list made from a description cannot see workmanship, corrosion or what was left out",
        "have pressure parts, electrics and flammable gases checked by people licensed for them");

    /// <summary>Everything that follows from the description alone, notes with it, in no order.</summary>
    internal static IEnumerable<Finding> FromDescription(MachineLayout layout, CautionInputs inputs) =>
        OxygenRule.Apply(layout.Machine)
            .Concat(PressureRatingRule.Apply(layout, inputs))
            .Concat(UnratedPartsRule.Apply(layout.Machine))
            .Concat(TrappedLiquidRule.Apply(layout, inputs))
            .Concat(FlammableChargeRule.Apply(layout.Machine, inputs))
            .Concat(AirInLoopRule.Apply(layout.Machine, inputs))
            .Concat(RoomAirRule.Apply(layout.Machine, inputs))
            .Concat(DischargeRule.Apply(layout, inputs))
            .Concat(ColdSurfaceRule.Apply(layout, inputs))
            .Concat(ColdMaterialRule.Apply(layout))
            .Concat(IgnitionRule.Apply(layout.Machine, inputs))
            .Concat(RefrigerantHandlingRule.Apply(layout.Machine));
}
