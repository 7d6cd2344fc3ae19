using Coldwright.Machine.Description;

namespace Coldwright.Safety.Rules;

/// <summary>Heat at the compressor's outlet and what it does to oil and seals; and a high side without relief.</summary>
internal static class DischargeRule
{
    // Discharge line about 110 °C stands for 150 °C at the valve; mineral oil breaks down near 175 °C: from memory, taken as our assumption.
    private const double HighestSensibleLimitK = 423.15;
    private const string OilSource = "the limit is the machine file's; our assumption: a line at 107 to 110 °C near the shell stands for 150 °C at the valve, and mineral oil breaks down near 175 °C";

    public static IEnumerable<Finding> Apply(Layout.MachineLayout layout, CautionInputs inputs)
    {
        foreach (var compressor in layout.Machine.PartsOf<CompressorPart>())
        {
            var limit = compressor.MaximumDischargeTemperatureK;
            if (inputs.DischargeTemperatureK is { } hot && hot > limit)
                yield return new("discharge-too-hot", Grade.Serious, compressor.Name, hot, limit, "K",
                    "discharge temperature at or below the compressor's limit", OilSource,
                    "oil turns to coke and acid, the motor's insulation fails, and hot coke lights what leaks", "lower the pressure ratio, cool the suction or the shell, or add heavier components");
            if (limit > HighestSensibleLimitK)
                yield return new("discharge-limit-high", Grade.Caution, compressor.Name, limit, HighestSensibleLimitK, "K",
                    "a limit above 150 °C in the line leaves nothing for the hotter valve", OilSource,
                    "oil breaks down before the limit is reached", "take the oil maker's figure");
        }
        if (Blocked(layout) is { } blocked) yield return blocked;
    }

    private static Finding? Blocked(Layout.MachineLayout layout)
    {
        if (layout.Machine.PartsOf<CompressorPart>().FirstOrDefault() is not { } compressor) return null;
        var outlet = layout.ClosedVolumes().FirstOrDefault(v => v.TakesDischarge);
        if (outlet is null || outlet.Reliefs.Any(r => layout.ZoneOf(r) == Layout.Zone.High)) return null;
        // With liquid in it the trapped high side is found already.
        if (outlet is { IsBlockedHighSide: true, HoldsLiquid: true }) return null;
        return new("blocked-discharge", outlet.IsBlockedHighSide ? Grade.Serious : Grade.Caution, compressor.Name, null, TrappedLiquidRule.Weakest(outlet, layout), "Pa",
            (outlet.IsBlockedHighSide ? "a relief device between the compressor and a valve that can be shut" : "a relief device on the high side: a throttle plugged by frozen oil or water shuts it") + "; there is none",
            "EN 378-2, protection of positive-displacement compressors, from memory",
            "the compressor pumps on until the weakest part fails", "fit a relief device on the high side that blows outdoors, and a pressure switch that stops the motor");
    }
}
