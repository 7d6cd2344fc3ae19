using Coldwright.Machine.Description;
using Coldwright.Safety.Flammability;

namespace Coldwright.Safety.Rules;

/// <summary>Sparks and hot surfaces beside a compressor that pumps something that burns.</summary>
internal static class IgnitionRule
{
    private const string SparkSource = "IEC 60335-2-40 and IEC 60079-15 (electrical parts near flammable refrigerants and gases), from memory";

    public static IEnumerable<Finding> Apply(MachineDescription machine, CautionInputs inputs)
    {
        var pumps = new List<string>();
        if (FlammabilityLimits.LowerLimit(machine.Charge.Mixture) is not null)
            foreach (var compressor in machine.PartsOf<CompressorPart>())
            {
                pumps.Add(compressor.Name);
                var hot = inputs.DischargeTemperatureK ?? compressor.MaximumDischargeTemperatureK;
                if (IgnitionTemperatures.LowestOf(machine.Charge.Mixture) - IgnitionTemperatures.MarginK is { } limit && hot > limit)
                    yield return new("hot-surface-ignites", Grade.Serious, compressor.Name, hot, limit, "K",
                        "surfaces that a leak can reach stay 100 K below the lowest auto-ignition temperature in the charge", IgnitionTemperatures.Source,
                        "a leak lights by itself", "lower the discharge temperature");
            }
        pumps.AddRange(machine.PartsOf<PrecoolerPart>().Where(p => p.Loop is { } loop && Refrigerants.Burns(loop.Refrigerant)).Select(p => p.Name));
        if (pumps.Count > 0)
            yield return new("ignition-near-compressor", Grade.Caution, string.Join(", ", pumps), null, null, "",
                "relays, overload switches, fans and thermostats near a flammable charge are of a type that cannot light it, or stand away from it and above it", SparkSource,
                "the switch that starts the motor lights the leak", "replace open relays, move switches and sockets a metre away, ventilate low down, no flame or grinder in the room");
    }
}
