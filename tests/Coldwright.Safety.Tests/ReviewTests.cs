using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Xunit;
using static Coldwright.Safety.Tests.Workbench;

namespace Coldwright.Safety.Tests;

/// <summary>The findings beyond the basic ones: a machine or an input that triggers each, and the same mended.</summary>
public sealed class ReviewTests
{
    private static readonly CautionInputs Known = Inputs with { OxygenInFeed = 1e-5 };

    /// <summary>id, how to break, grade.</summary>
    public static TheoryData<string, string, Grade> Breakages => new()
    {
        { "tube-over-pressure", "standstill above the low side", Grade.Stop },
        { "part-over-pressure", "aftercooler drop lifts the discharge above the compressor's stamp", Grade.Stop },
        { "stamp-above-formula", "vessel stamped above its tube", Grade.Serious },
        { "cap-over-pressure", "thin flat ends", Grade.Stop },
        { "air-into-loop", "suction at half an atmosphere", Grade.Serious },
        { "residual-air", "not evacuated", Grade.Serious },
        { "discharge-too-hot", "computed discharge above the limit", Grade.Serious },
        { "discharge-limit-high", "limit at 160 °C", Grade.Caution },
        { "blocked-discharge", "no relief on the high side", Grade.Caution },
        { "hot-surface-ignites", "butane and a hot compressor", Grade.Serious },
        { "condensing-air-in-foam", "loop at 79 K in polyurethane", Grade.Serious },
        { "condensing-air-in-foam", "nitrogen let down inside the box", Grade.Serious },
        { "condensing-air-in-foam", "nitrogen vessel at 1.5 bar", Grade.Serious },
        { "condensing-air", "loop at 79 K in perlite", Grade.Caution },
        { "brittle-wall", "vessel of nylon", Grade.Serious },
        { "oxygen-organic-insulation", "oxygen in polyurethane", Grade.Stop },
        { "flammable-charge", "20 kg of charge", Grade.Stop },
        { "flammable-cloud", "1 kg of charge", Grade.Caution },
        { "flammable-cloud", "20 kg of charge", Grade.Stop },
        { "oxygen-poor-while-running", "4 m3/h of argon without ventilation", Grade.Stop },
        { "oxygen-poor-charge", "20 kg of nitrogen in the loop", Grade.Stop },
        { "refrigerant-recovery", "compressor from an air-conditioner", Grade.Caution },
        { "relief-too-small", "0.4 mm relief on the vessel", Grade.Serious },
        { "relief-too-small", "0.3 mm relief on the high side", Grade.Serious },
        { "relief-small-in-fire", "3 mm relief on the vessel", Grade.Caution },
        { "oxygen-enriching", "nitrogen at 90 %", Grade.Serious },
        { "oxygen-enriching", "nitrogen at 70 %", Grade.Stop },
    };

    [Theory]
    [MemberData(nameof(Breakages))]
    public void Each_finding_appears_when_broken_and_not_when_mended(string id, string breakage, Grade grade)
    {
        var (machine, inputs) = Broken(breakage);
        var found = SafetyReview.Of(machine, inputs, TestContext.Current.CancellationToken).Findings.Where(f => f.Id == id).ToArray();
        Assert.NotEmpty(found);
        Assert.All(found, f =>
        {
            Assert.Equal(grade, f.Grade);
            Assert.All((string[])[f.Part, f.Rule, f.Source, f.Consequence, f.Do], Assert.NotEmpty);
            Assert.All((double?[])[f.Value, f.Limit], v => Assert.True(v is null || double.IsFinite(v.Value)));
        });
        var mended = machine.PartsOf<FeedPart>().Single().Gas == "nitrogen" ? Sound.WithGas("nitrogen") : Sound;
        Assert.DoesNotContain(SafetyReview.Of(mended, Known, TestContext.Current.CancellationToken).Findings, f => f.Id == id && f.Grade != Grade.Note);
    }

    [Fact]
    public void A_sound_machine_has_figures_but_nothing_serious()
    {
        var review = SafetyReview.Of(Sound, Known, TestContext.Current.CancellationToken);
        Assert.Empty(review.Warnings);
        Assert.DoesNotContain(review.Findings, f => f.Grade is Grade.Stop or Grade.Serious);
        foreach (var id in (string[])["weakest-part", "proof-test", "stored-energy", "warm-full-vessel", "relief-size", "cold-seals"])
            Assert.Contains(review.Findings, f => f.Id == id && f.Grade == Grade.Note);
        Assert.Equal("local-codes", review.Findings[^1].Id);
        var grades = review.Findings.SkipLast(1).Select(f => f.Grade).ToArray();
        Assert.Equal(grades.Order(), grades);
    }

    [Fact]
    public void Everything_in_the_basic_list_is_in_the_full_one()
    {
        foreach (var (machine, inputs) in Breakages.Select(b => Broken(b.Data.Item2)))
        {
            var full = SafetyReview.Of(machine, inputs, TestContext.Current.CancellationToken).Findings.Select(f => (f.Id, f.Part, f.Grade)).ToHashSet();
            Assert.All(Cautions.For(machine, inputs), f => Assert.Contains((f.Id, f.Part, f.Grade), full));
            Assert.DoesNotContain(Cautions.For(machine, inputs), f => f.Grade == Grade.Note);
        }
    }

    [Fact]
    public void Unknowns_are_asked_for()
    {
        var unsaid = Sound.WithGas("nitrogen") with { Charge = Sound.Charge with { EvacuatedToPa = null } };
        var ids = SafetyReview.Of(unsaid, Inputs, TestContext.Current.CancellationToken).Findings.Select(f => f.Id).ToArray();
        foreach (var id in (string[])["nitrogen-purity-unknown", "evacuate-first", "standstill-unknown"]) Assert.Contains(id, ids);
        var bare = Sound.With<ReliefPart>(r => r with { BoreM = null }) with { Lines = Sound.Lines.Select(l => l.To == "burst-disc" ? l with { Tube = null } : l).ToArray() };
        Assert.Contains(SafetyReview.Of(bare, Inputs, TestContext.Current.CancellationToken).Findings, f => f.Id == "relief-bore-unknown");
    }

    /// <summary>The full review works out what a shut-in product and a shut-in charge reach; the short list has only the built-in figures.</summary>
    [Fact]
    public void Shut_in_pressures_are_computed()
    {
        var product = SafetyReview.Of(CautionTests.Broken("no relief").WithGas("methane"), Known, TestContext.Current.CancellationToken).Findings;
        Assert.InRange(Assert.Single(product, f => f.Id == "trapped-liquid").Value!.Value, 1000e5, 3000e5);
        var loop = SafetyReview.Of(CautionTests.Broken("loop closed at both ends of the cold part"), Known with { ColdestTemperatureK = 100 }, TestContext.Current.CancellationToken).Findings;
        Assert.Contains(loop, f => f.Id == "trapped-liquid" && f.Value is null or > 100e5);
    }

    /// <summary>Of the product side of the sound machine the vessel, stamped 25 bar and worked at 15, uses most of what it may.</summary>
    [Fact]
    public void The_weakest_part_is_named_and_the_proof_test_follows_the_relief()
    {
        var findings = SafetyReview.Of(Sound, Known, TestContext.Current.CancellationToken).Findings;
        Assert.Contains(findings, f => f.Id == "weakest-part" && f.Part == "vessel" && f.Limit == 25 * Bar);
        var test = findings.Single(f => f.Id == "proof-test" && f.Part == "product side");
        Assert.Equal(101325 + 1.43 * (20 * Bar - 101325), test.Value!.Value, 1);
    }

    /// <summary>Machines at the edge of what is described, and the vessel at pressures from its room's to far above critical: reviewed without exception.</summary>
    [Fact]
    public void Odd_machines_are_reviewed()
    {
        var block = Sound.Without("flask").Without("outlet").Without("vessel").Without("bottle").Without("burst-disc");
        var heavy = Sound.WithMixture(["propane", "isobutane"], [0.5, 0.5]);
        var shut = CautionTests.Broken("loop closed at both ends of the cold part");
        MachineDescription[] machines =
        [
            block, heavy, shut, shut with { Charge = heavy.Charge }, Sound.Without("compressor"), Sound.WithMixture(["nitrogen"], [1]), Sound.WithMixture(["R14", "R23"], [0.5, 0.5]),
            .. new[] { 1.02, 5, 33, 34.5, 60, 250 }.Select(bar => Sound.WithGas("nitrogen").With<FeedPart>(f => f with { PressurePa = bar * Bar }).With<ReliefPart>(r => r with { SetPressurePa = 1.2 * bar * Bar })),
            .. new[] { "argon", "oxygen", "methane" }.Select(g => Sound.WithGas(g).With<ReliefPart>(r => r with { SetPressurePa = 80 * Bar })),
        ];
        var inputs = Known with { MolarMassKgPerMol = n => SubstanceCatalog.Get(n).MolarMass };
        foreach (var machine in machines)
        {
            var review = SafetyReview.Of(machine, inputs, TestContext.Current.CancellationToken);
            Assert.Equal("local-codes", review.Findings[^1].Id);
            Assert.All(review.Findings, f => Assert.True(double.IsFinite(f.Value ?? 0) && double.IsFinite(f.Limit ?? 0), f.ToString()));
        }
    }

    [Fact]
    public void Grades_have_words()
    {
        Assert.Equal(["danger", "serious", "caution", "note"], Enum.GetValues<Grade>().Select(GradeWords.Of));
        Assert.Throws<ArgumentOutOfRangeException>(() => GradeWords.Of((Grade)9));
    }

    [Fact]
    public void A_cancelled_review_stops() =>
        Assert.Throws<OperationCanceledException>(() => SafetyReview.Of(Sound, Known, new CancellationToken(true)));

    internal static (MachineDescription Machine, CautionInputs Inputs) Broken(string breakage)
    {
        var nitrogen = Sound.WithGas("nitrogen");
        (MachineDescription, CautionInputs) Bore(string relief, double bore) => (Sound.With<ReliefPart>(r => r.Name == relief ? r with { BoreM = bore } : r), Known);
        return breakage switch
        {
            "standstill above the low side" => (Sound.With<RecuperatorPart>(r => r with { LowTube = new("30 x 0.3 mm", 0.03, 0.0003) }) with { Operation = Sound.Operation with { StandstillPressurePa = 18 * Bar } }, Known),
            "aftercooler drop lifts the discharge above the compressor's stamp" => (Sound.With<AftercoolerPart>(a => a with { PressureDropPa = Bar }).With<CompressorPart>(c => c with { MaximumPressurePa = 19.5 * Bar }), Known),
            "vessel stamped above its tube" => (Sound.With<VesselPart>(v => v with { MaximumPressurePa = 60 * Bar }).With<FeedPart>(f => f with { PressurePa = 40 * Bar }), Known),
            "thin flat ends" => (Sound.With<VesselPart>(v => v with { MaximumPressurePa = null, CapThicknessM = 0.0015 }), Known),
            "suction at half an atmosphere" => (Sound with { Operation = Sound.Operation with { LowPressurePa = 0.5 * Bar } }, Known),
            "not evacuated" => (Sound with { Charge = Sound.Charge with { EvacuatedToPa = 101325 } }, Known),
            "computed discharge above the limit" => (Sound, Known with { DischargeTemperatureK = 400 }),
            "limit at 160 °C" => (Sound.With<CompressorPart>(c => c with { MaximumDischargeTemperatureK = 433 }), Known),
            "no relief on the high side" => (Sound.Without("loop-relief"), Known),
            "butane and a hot compressor" => (Sound.WithMixture(["nitrogen", "butane"], [0.5, 0.5]), Known with { DischargeTemperatureK = 560 }),
            "loop at 79 K in polyurethane" => (Sound, Known with { ColdestTemperatureK = 79 }),
            "loop at 79 K in perlite" => (Sound.With<ColdBoxPart>(b => b with { Insulation = "perlite" }), Known with { ColdestTemperatureK = 79 }),
            "nitrogen let down inside the box" => (nitrogen with { Lines = nitrogen.Lines.Select(l => l.To == "flask" ? l with { Place = Place.ColdBox } : l).ToArray() }, Known),
            "nitrogen vessel at 1.5 bar" => (nitrogen.With<FeedPart>(f => f with { PressurePa = 1.5 * Bar }), Known),
            "4 m3/h of argon without ventilation" => (Sound, Known with { VentedProductKgPerS = 4.0 / 3600 * 101325 * 0.039948 / (8.314462618 * 295) }),
            "20 kg of nitrogen in the loop" => (Sound.WithMixture(["nitrogen"], [1]) with { Charge = new() { Mixture = new(["nitrogen"], [1]), MassKg = 20 } }, Known),
            "vessel of nylon" => (Sound.With<VesselPart>(v => v with { WallMaterial = "nylon" }), Known),
            "oxygen in polyurethane" => (Sound.WithGas("oxygen"), Known),
            "20 kg of charge" => (Sound with { Charge = Sound.Charge with { MassKg = 20 } }, Known),
            "1 kg of charge" => (Sound with { Charge = Sound.Charge with { MassKg = 1 } }, Known),
            "compressor from an air-conditioner" => (Sound.With<CompressorPart>(c => c with { Nameplate = new() { Rating = NameplateRating.Appliance, CapacityW = 2600, Refrigerant = "R410A" } }), Known),
            "0.4 mm relief on the vessel" => Bore("burst-disc", 0.0004),
            "0.3 mm relief on the high side" => (Bore("loop-relief", 0.0003).Item1.With<CompressorPart>(c => c with { DisplacementM3 = 12e-6, SpeedRevPerS = 48 }), Known),
            "3 mm relief on the vessel" => Bore("burst-disc", 0.003),
            "nitrogen at 90 %" => (nitrogen, Known with { OxygenInFeed = 0.1 }),
            "nitrogen at 70 %" => (nitrogen, Known with { OxygenInFeed = 0.3 }),
            _ => throw new ArgumentException(breakage),
        };
    }
}
