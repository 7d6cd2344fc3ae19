using Coldwright.Machine.Description;
using Coldwright.Materials.Tubes;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Design.Charging;

/// <summary>What filling adds to the findings about a machine.</summary>
internal static class ChargeFindings
{
    // Hydrocarbons need 8.5 to 10.7 % of oxygen to burn in nitrogen; a thousandth of that is far off, and still more than a well rinsed loop holds. Our own margin.
    private const double OxygenInFuel = 1e-4;
    private const string Computed = "computed with the reference equations at the room's temperature";

    public static IReadOnlyList<Finding> Of(MachineDescription charged, ShopDescription? shop, FillingRecipe recipe, Evacuation pump, IReadOnlyList<TraceInCharge> traces, ModelRating? cold, double chargeMol)
    {
        var all = Cautions.For(charged, CautionInputs.Of(charged, shop, cold));
        return [.. all.SkipLast(1).Concat(Own(charged, recipe, pump, traces)).OrderBy(f => f.Grade), all[^1]];
    }

    /// <summary>Lowest pressure that anything of the loop allows at the room's temperature, Pa absolute.</summary>
    public static (string Name, double Pa)? LowestLimit(MachineDescription machine)
    {
        double room = machine.Room.PressurePa;
        double Tube(Machine.Description.Tube t) => room + TubeRating.AllowableGaugePressurePa(t.OutsideDiameterM, t.WallM, machine.Room.TemperatureK);
        var limits = new List<(string, double)>();
        foreach (var part in machine.Parts)
            switch (part)
            {
                case CompressorPart { MaximumPressurePa: { } p }: limits.Add((part.Name, p)); break;
                case AftercoolerPart { MaximumPressurePa: { } p }: limits.Add((part.Name, p)); break;
                case RecuperatorPart r:
                    if (r.HighTube is { } high) limits.Add(($"{r.Name}, high tube", Tube(high)));
                    if (r.LowTube is { } low) limits.Add(($"{r.Name}, low tube", Tube(low)));
                    break;
                case CoilPart { Tube: { } tube }: limits.Add((part.Name, Tube(tube))); break;
                case ReliefPart relief when OfLoop(machine, relief): limits.Add((part.Name, relief.SetPressurePa)); break;
            }
        return limits.Count == 0 ? null : limits.MinBy(l => l.Item2);
    }

    // a relief of the product's side hangs on vessel or feed
    private static bool OfLoop(MachineDescription machine, ReliefPart relief) =>
        machine.Lines.Where(l => l.To == relief.Name).All(l => machine.Parts.FirstOrDefault(p => p.Name == l.From.Split('.')[0]) is not (VesselPart or FeedPart or ValvePart));

    private static IEnumerable<Finding> Own(MachineDescription machine, FillingRecipe recipe, Evacuation pump, IReadOnlyList<TraceInCharge> traces)
    {
        bool burns = machine.Charge.Mixture.Names.Any(FlammabilityLimits.Burns);
        if (traces.FirstOrDefault(t => t.Name == "oxygen") is { } oxygen && burns && oxygen.Total > OxygenInFuel)
            yield return new("oxygen-in-charge", Grade.Serious, "charge", 1e6 * oxygen.Total, 1e6 * OxygenInFuel, "ppm", "hydrocarbons are charged without air",
                "limiting oxygen of methane, ethylene and propane in nitrogen: 10.7, 8.5 and 10.5 % (ASTM E2079-19, after Zlochower); the limit here is our own margin",
                "air and fuel go through the compressor together, and the air's water and carbon dioxide freeze", "pump longer, rinse with dry nitrogen once more, and take gases with a certificate");
        if (LowestLimit(machine) is { } limit && recipe.StandstillPa > limit.Pa)
            yield return new("standstill-above-limit", Grade.Stop, limit.Name, recipe.StandstillPa, limit.Pa, "Pa", "the loop at rest, all of it at room temperature, stays below every part's pressure and every relief's set pressure", Computed,
                "a relief opens or a part bursts on the first warm morning, with nobody there", "charge less, or give the loop a larger buffer");
        foreach (var step in recipe.Steps)
        {
            if (step.BottleTooWeak)
                yield return new("bottle-too-weak", Grade.Caution, step.Gas, step.UntilPa, step.BottlePa, "Pa", $"the bottle of {step.Gas} has more pressure than the loop it is let into", Computed,
                    "nothing flows in, or the mixture flows back into the bottle", "let it in while the compressor runs and sucks, with a check valve in the hose; never warm a bottle with a flame");
            if (step.LiquidShare > 1e-6)
                yield return new("condenses-while-filling", Grade.Caution, step.Gas, 100 * step.LiquidShare, null, "%", "a gauge says nothing more of the amount once liquid stands in the loop", Computed,
                    "far too much goes in although the gauge stands still, and liquid can reach the compressor", "weigh it in; let the compressor stand until all is in and mixed");
        }
        foreach (var trace in traces.Where(t => t.Freezes))
            yield return new($"freezes-{trace.Name}", Grade.Caution, "charge", 1e6 * trace.Total, 1e6 * trace.AllowedAtColdest, "ppm", $"no more {trace.Name.Replace('-', ' ')} in the charge than stays dissolved at the cold end",
                "solid fugacity against the reference model, see docs/theory/freezing.md", "it plugs the throttle", "pump longer and warm the tubes while pumping; put a drier (molecular sieve) into the loop");
        if (pump.VacuumPa > 2000)
            yield return new("vacuum-too-poor", Grade.Caution, "charge", pump.VacuumPa, 2000, "Pa", "the pump's pressure is far below the vapour pressure of water at room temperature, 2.3 kPa at 20 °C",
                "W. Wagner, A. Pruss, J. Phys. Chem. Ref. Data 31 (2002) 387", "wet corners stay wet", "find the leak, or take a better pump");
    }
}
