using Coldwright.Machine.Description;
using Coldwright.Materials.Tubes;
using CsCheck;
using Xunit;
using static Coldwright.Safety.Tests.Workbench;

namespace Coldwright.Safety.Tests;

/// <summary>What must never pass in silence, over machines made at random; the expected answers are worked out here by other means.</summary>
public sealed class PropertyTests
{
    private static readonly string[] LoopPath = ["compressor", "aftercooler", "precooler.high", "recuperator.high", "capillary", "coil", "recuperator.low", "compressor"];
    private static readonly string[] ProductPath = ["bottle", "recuperator.feed", "vessel", "outlet", "flask"];

    /// <summary>No tube of line, recuperator, coil or vessel is rated below its pressure without a finding of its own.</summary>
    [Fact]
    public void No_tube_rated_below_its_pressure_is_passed_over()
    {
        var sizes = TubeTable.Sizes.Select(s => s.Text).Append("20 x 0.3 mm").Append("60 x 0.4 mm").ToArray();
        var tube = Gen.Int[0, sizes.Length - 1].Select(i => TubeOf(sizes[i]));
        var pressure = Gen.Double[1.5, 120];
        Gen.Select(tube.Array[6], pressure, pressure, pressure, Gen.Bool).Sample((tubes, high, low, feed, stood) =>
        {
            var machine = Tubed(tubes, Math.Max(high, low), Math.Min(high, low), feed, stood ? (high + low) / 2 : null);
            var found = Cautions.For(machine, Inputs with { DischargeTemperatureK = 340 });
            var lowest = stood ? Math.Max(Math.Min(high, low), (high + low) / 2) : Math.Min(high, low);
            var expected = new (string Name, Tube Tube, double Bar, double Kelvin)[]
            {
                ("compressor to aftercooler", tubes[0], Math.Max(high, low), 340), ("recuperator.low to compressor", tubes[1], lowest, 295),
                ("vessel to outlet", tubes[2], feed, 295), ("recuperator.high", tubes[3], Math.Max(high, low), 295),
                ("coil", tubes[4], lowest, 295), ("vessel", tubes[5], feed, 295),
            };
            foreach (var (name, t, bar, kelvin) in expected)
            {
                var limit = 101325 + TubeRating.AllowableGaugePressurePa(t.OutsideDiameterM, t.WallM, kelvin);
                var said = found.Any(f => f.Part == name && f.Grade == Grade.Stop && f.Id == "tube-over-pressure");
                if (said != bar * Bar > limit) return false;
            }
            return true;
        }, iter: 300);
    }

    /// <summary>No stamp below the pressure of its part is passed over, and no flat end too thin for it; the order of the parts does not matter.</summary>
    [Fact]
    public void No_stamp_or_end_below_its_pressure_is_passed_over() =>
        Gen.Select(Gen.Double[1.2, 80].Array[4], Gen.Double[1.5, 80], Gen.Double[1.5, 80], Gen.Double[0.0005, 0.02], Gen.Bool).Sample((stamps, high, feed, thicknessM, turned) =>
        {
            var machine = Sound
                .With<CompressorPart>(c => c with { MaximumPressurePa = stamps[0] * Bar }).With<PrecoolerPart>(p => p with { MaximumPressurePa = stamps[1] * Bar })
                .With<CoilPart>(c => c with { MaximumPressurePa = stamps[2] * Bar }).With<VesselPart>(v => v with { MaximumPressurePa = stamps[3] * Bar, CapThicknessM = thicknessM })
                .With<FeedPart>(f => f with { PressurePa = feed * Bar }) with
            { Operation = new() { HighPressurePa = high * Bar, LowPressurePa = 1.3 * Bar } };
            if (turned) machine = machine with { Parts = machine.Parts.Reverse().ToArray() };
            var found = Cautions.For(machine, Inputs).Where(f => f.Grade is Grade.Stop or Grade.Serious).Select(f => (f.Id, f.Part)).ToHashSet();
            bool Right(string part, double limit, double pressure) => found.Contains(("part-over-pressure", part)) == limit < pressure;
            // UG-34 by hand with C 0.33 and the 6000 psi of annealed copper: P = S (t/d)^2 / 0.33.
            var bore = TubeOf("1-5/8 in ACR").InsideDiameterM;
            var end = 101325 + 6000 * 6894.757293168 * thicknessM * thicknessM / (bore * bore) / 0.33;
            return Right("compressor", stamps[0], high) && Right("precooler", stamps[1], high) && Right("coil", stamps[2], 1.3) && Right("vessel", stamps[3], feed)
                && found.Contains(("stamp-above-formula", "vessel ends")) == end < feed * Bar;
        }, iter: 300);

    /// <summary>Whatever a machine file may hold: an answer without exception, every figure finite, every sentence there.</summary>
    [Fact]
    public void Extremes_of_the_file_are_answered() =>
        Gen.Select(Gen.Double[0.01, 300].Array[4], Gen.Double[1e-4, 0.2], Gen.Double[1e-4, 1000], Gen.Double[0.1, 1e5], Gen.Int[0, 2], Gen.Int[0, 3]).Sample((bars, thicknessM, massKg, floorM2, caps, gas) =>
        {
            var machine = Sound
                .With<VesselPart>(v => v with { MaximumPressurePa = null, CapThicknessM = thicknessM < 0.1 ? thicknessM : null, Caps = caps == 0 ? null : caps == 1 ? CapShape.Flat : CapShape.Domed })
                .With<FeedPart>(f => f with { PressurePa = bars[0] * Bar, Gas = new[] { "nitrogen", "argon", "oxygen", "methane" }[gas] })
                .With<ReliefPart>(r => r with { SetPressurePa = bars[1] * Bar }) with
            {
                Charge = Sound.Charge with { MassKg = massKg, EvacuatedToPa = bars[3] * 400 },
                Operation = new() { HighPressurePa = Math.Max(bars[1], bars[2]) * Bar, LowPressurePa = Math.Min(bars[1], bars[2]) * Bar, StandstillPressurePa = bars[3] * Bar },
                Room = Sound.Room with { FloorAreaM2 = floorM2 },
            };
            return Cautions.For(machine, Inputs).All(f => (f.Value is null || double.IsFinite(f.Value.Value)) && (f.Limit is null || double.IsFinite(f.Limit.Value))
                && f.Part.Length > 0 && f.Rule.Length > 0 && f.Source.Length > 0 && f.Consequence.Length > 0 && f.Do.Length > 0);
        }, iter: 500);

    /// <summary>
    /// Valves and reliefs put into any lines: every stretch between valves that cold liquid can reach, without flask, compressor or relief, is found,
    /// and no other. Liquid reaches all that lies after the precooler's outlet as far as the recuperator's low side, and the product from the
    /// recuperator onwards.
    /// </summary>
    [Fact]
    public void No_closed_cold_volume_without_relief_is_passed_over() =>
        Gen.Select(Gen.Bool.Array[LoopPath.Length - 1], Gen.Bool.Array[ProductPath.Length - 1], Gen.Bool.Array[ProductPath.Length - 1], Gen.Bool.Array[LoopPath.Length - 1], Gen.Bool)
            .Sample((loopValves, productValves, productReliefs, loopReliefs, throttleValve) =>
            {
                // A relief joined to a valve sits on neither side of it for certain.
                if (throttleValve) loopReliefs = [.. loopReliefs[..3], false, .. loopReliefs[4..]];
                var machine = Piped(loopValves, loopReliefs, productValves, productReliefs);
                if (throttleValve) machine = machine.With<ThrottlePart>(t => t with { Capillary = null, Valve = new() { FlowCoefficientKv = 0.01 } });
                var found = Cautions.For(machine, Inputs).Count(f => f.Id is "trapped-liquid" or "trapped-high-side");
                return found == LoopTraps(loopValves, loopReliefs, throttleValve) + ProductTraps(productValves, productReliefs);
            }, iter: 400);

    // The loop as a ring of lines, each cut in two by its valve. What lies between a valve and the compressor's suction drains through the compressor;
    // what lies between its outlet and a valve does not.
    private static int LoopTraps(bool[] valves, bool[] reliefs, bool throttleValve)
    {
        if (!valves.Any(v => v) && !throttleValve) return 0;
        var traps = 0;
        // The last relief sits on the compressor, on its outlet.
        bool wet = false, relief = reliefs[^1];
        for (var i = 0; i < valves.Length; i++)
        {
            // Lines 2 to 5 (precooler to recuperator's low side) hold cold liquid.
            var cold = i is >= 2 and <= 5;
            wet |= cold;
            if (valves[i])
            {
                if (wet && !relief) traps++;
                (wet, relief) = (cold, false);
            }
            // A relief sits on the part at the end of its line, so after the cut.
            relief |= reliefs[i];
            // The throttle ends line 3.
            if (!throttleValve || i != 3) continue;
            if (!relief) traps++;
            (wet, relief) = (false, false);
        }
        return traps;
    }

    // bottle | recuperator.feed, vessel, (outlet) flask: the outlet valve always cuts; so does the bottle.
    private static int ProductTraps(bool[] valves, bool[] reliefs)
    {
        var traps = 0;
        bool wet = false, relief = false, open = false;
        void Cut()
        {
            if (wet && !relief && !open) traps++;
            (wet, relief, open) = (false, false, false);
        }
        for (var i = 0; i < valves.Length; i++)
        {
            // Line 0 is warm gas as far as the recuperator.
            wet |= i > 0;
            if (valves[i]) { Cut(); wet = i > 0; }
            relief |= i != 2 && reliefs[i];
            if (i == 2) Cut();
            if (i == 3) open = true;
        }
        Cut();
        return traps;
    }

    private static MachineDescription Piped(bool[] loopValves, bool[] loopReliefs, bool[] productValves, bool[] productReliefs)
    {
        var parts = Sound.Parts.Where(p => p is not ReliefPart).ToList();
        var lines = new List<Line>();
        void Lay(string[] path, bool[] valves, bool[] reliefs, string tag)
        {
            for (var i = 0; i + 1 < path.Length; i++)
            {
                var from = path[i];
                if (valves[i])
                {
                    parts.Add(new ValvePart { Name = $"{tag}-valve-{i}" });
                    lines.Add(Join(from, $"{tag}-valve-{i}", "1/8 in ACR"));
                    from = $"{tag}-valve-{i}";
                }
                lines.Add(Join(from, path[i + 1], "1/8 in ACR"));
                if (!reliefs[i] || path[i + 1] == "outlet") continue;
                parts.Add(new ReliefPart { Name = $"{tag}-relief-{i}", SetPressurePa = 5 * Bar });
                lines.Add(Join(path[i + 1], $"{tag}-relief-{i}", "1/8 in ACR"));
            }
        }
        Lay(LoopPath, loopValves, loopReliefs, "loop");
        Lay(ProductPath, productValves, [productReliefs[0], productReliefs[1], false, productReliefs[3]], "product");
        // Order of the lines: the answer must not depend on it.
        return Sound with { Parts = parts, Lines = lines.OrderBy(l => (l.From + l.To).Sum(c => c * 7919) % 101).ToArray() };
    }

    private static MachineDescription Tubed(Tube[] tubes, double highBar, double lowBar, double feedBar, double? standstillBar) => Sound
        .With<RecuperatorPart>(r => r with { HighTube = tubes[3], LowTube = null })
        .With<CoilPart>(c => c with { Tube = tubes[4] })
        .With<VesselPart>(v => v with { Tube = tubes[5], MaximumPressurePa = null })
        .With<FeedPart>(f => f with { PressurePa = feedBar * Bar }) with
    {
        Operation = new() { HighPressurePa = highBar * Bar, LowPressurePa = lowBar * Bar, StandstillPressurePa = standstillBar * Bar },
        Lines = Sound.Lines.Select(l => (l.From, l.To) switch
        {
            ("compressor", "aftercooler") => l with { Tube = tubes[0] },
            ("recuperator.low", "compressor") => l with { Tube = tubes[1] },
            ("vessel", "outlet") => l with { Tube = tubes[2] },
            _ => l,
        }).ToArray(),
    };
}
