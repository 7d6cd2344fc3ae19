using Coldwright.Machine.Description;
using Xunit;
using static Coldwright.Safety.Tests.Workbench;

namespace Coldwright.Safety.Tests;

/// <summary>Every finding: a machine that triggers it and the same machine mended.</summary>
public sealed class CautionTests
{
    [Fact]
    public void A_sound_machine_gets_only_the_standing_lines()
    {
        var ids = Cautions.For(Sound, Inputs).Select(f => f.Id);
        Assert.Equal(["cold-burns", "ignition-near-compressor", "brazing-flammables", "local-codes"], ids);
    }

    /// <summary>id, how to break the sound machine, the grade it must get.</summary>
    public static TheoryData<string, string, Grade> Breakages => new()
    {
        { "tube-over-pressure", "high side at 60 bar in 3/8 in", Grade.Stop },
        { "tube-over-pressure", "thin vessel without stamp", Grade.Stop },
        { "tube-over-pressure", "low tube of the recuperator", Grade.Stop },
        { "tube-too-hot", "discharge at 480 K", Grade.Stop },
        { "part-over-pressure", "vessel stamped below the feed", Grade.Stop },
        { "part-over-pressure", "compressor stamped below the high side", Grade.Stop },
        { "vessel-ends-not-rated", "vessel without stamp", Grade.Serious },
        { "trapped-liquid", "no relief", Grade.Stop },
        { "trapped-liquid", "second valve at the outlet", Grade.Stop },
        { "trapped-liquid", "valve between vessel and relief", Grade.Stop },
        { "trapped-liquid", "loop closed at both ends of the cold part", Grade.Stop },
        { "relief-set-too-high", "relief at 30 bar", Grade.Stop },
        { "flammable-charge", "2 kg of charge", Grade.Serious },
        { "flammable-charge-unknown", "charge not weighed", Grade.Caution },
        { "oxygen-poor-room", "10 litre flask in a small room", Grade.Stop },
        { "oxygen-poor-room", "6.5 litre flask", Grade.Serious },
        { "oxygen-rich-room", "oxygen, 10 litre flask", Grade.Stop },
        { "oxygen-product", "oxygen", Grade.Stop },
        { "flammable-product", "methane", Grade.Serious },
        { "oxygen-in-charge", "oxygen in the charge", Grade.Stop },
        { "condensing-air", "nitrogen", Grade.Caution },
        { "trapped-high-side", "throttle valve and no relief on the high side", Grade.Serious },
        { "blocked-discharge", "valve behind the compressor and no relief", Grade.Serious },
        { "not-rated", "nothing known of the aftercooler", Grade.Caution },
    };

    [Theory]
    [MemberData(nameof(Breakages))]
    public void Each_finding_appears_when_broken_and_not_when_mended(string id, string breakage, Grade grade)
    {
        var found = Cautions.For(Broken(breakage), Inputs).Where(f => f.Id == id).ToArray();
        Assert.NotEmpty(found);
        Assert.All(found, f =>
        {
            Assert.Equal(grade, f.Grade);
            Assert.All((string[])[f.Part, f.Rule, f.Source, f.Consequence, f.Do], Assert.NotEmpty);
            Assert.All((double?[])[f.Value, f.Limit], v => Assert.True(v is null || double.IsFinite(v.Value)));
        });
        Assert.DoesNotContain(Cautions.For(Sound, Inputs), f => f.Id == id);
    }

    [Fact]
    public void Cold_burns_are_said_only_where_liquid_comes_out()
    {
        var block = Sound.Without("flask").Without("outlet").Without("vessel").Without("bottle");
        Assert.DoesNotContain(Cautions.For(block, Inputs), f => f.Id == "cold-burns");
        Assert.Contains(Cautions.For(Sound, Inputs), f => f.Id == "cold-burns");
    }

    [Fact]
    public void Local_codes_always_come_last_and_grades_are_in_order()
    {
        foreach (var machine in Breakages.Select(b => Broken(b.Data.Item2)))
        {
            var findings = Cautions.For(machine, Inputs);
            Assert.Equal("local-codes", findings[^1].Id);
            var grades = findings.SkipLast(1).Select(f => f.Grade).ToArray();
            Assert.Equal(grades.Order(), grades);
        }
    }

    [Fact]
    public void A_computed_loop_temperature_below_the_dew_point_of_air_is_said()
    {
        Assert.Contains(Cautions.For(Sound, Inputs with { ColdestTemperatureK = 80 }), f => f.Id == "condensing-air-in-foam");
        Assert.DoesNotContain(Cautions.For(Sound, Inputs with { ColdestTemperatureK = 83 }), f => f.Id.StartsWith("condensing-air", StringComparison.Ordinal));
    }

    [Fact]
    public void Computed_pressures_count()
    {
        Assert.Contains(Cautions.For(Sound, Inputs with { HighPressurePa = 30 * Bar }), f => f.Id == "part-over-pressure" && f.Part == "compressor");
        Assert.Contains(Cautions.For(Sound, Inputs with { LowPressurePa = 0.9 * Bar }), f => f.Id == "air-into-loop");
        // A computed high pressure below the file's does not excuse it.
        Assert.Contains(Cautions.For(Broken("compressor stamped below the high side"), Inputs with { HighPressurePa = 10 * Bar }), f => f.Id == "part-over-pressure");
    }

    /// <summary>A relief on the high side serves it also when the throttle is a valve that can be shut; one on the low side does not.</summary>
    [Fact]
    public void The_compressors_valves_let_nothing_back()
    {
        var valve = Sound.With<ThrottlePart>(t => t with { Capillary = null, Valve = new() { FlowCoefficientKv = 0.01 } });
        Assert.DoesNotContain(Cautions.For(valve, Inputs), f => f.Id is "trapped-high-side" or "trapped-liquid");
        var moved = valve with { Lines = valve.Lines.Select(l => l.To == "loop-relief" ? l with { From = "coil" } : l).ToArray() };
        Assert.Contains(Cautions.For(moved, Inputs), f => f.Id == "trapped-high-side");
        // Through an open capillary the high side drains into the low one.
        Assert.DoesNotContain(Cautions.For(Sound.Without("loop-relief"), Inputs), f => f.Id == "trapped-high-side");
    }

    [Fact]
    public void A_measured_discharge_temperature_replaces_the_compressors_limit()
    {
        var hot = Broken("discharge at 480 K");
        Assert.DoesNotContain(Cautions.For(hot, Inputs with { DischargeTemperatureK = 370 }), f => f.Id == "tube-too-hot");
    }

    internal static MachineDescription Broken(string breakage) => breakage switch
    {
        "high side at 60 bar in 3/8 in" => Sound with { Operation = Sound.Operation with { HighPressurePa = 60 * Bar } },
        "thin vessel without stamp" => Sound.With<VesselPart>(v => v with { Tube = new("41.3 x 0.5 mm", 0.0413, 0.0005), MaximumPressurePa = null }),
        "low tube of the recuperator" => Sound.With<RecuperatorPart>(r => r with { LowTube = new("80 x 0.1 mm", 0.08, 0.0001) }),
        "discharge at 480 K" => Sound.With<CompressorPart>(c => c with { MaximumDischargeTemperatureK = 480 }),
        "vessel stamped below the feed" => Sound.With<VesselPart>(v => v with { MaximumPressurePa = 10 * Bar }),
        "compressor stamped below the high side" => Sound.With<CompressorPart>(c => c with { MaximumPressurePa = 15 * Bar }),
        "vessel without stamp" => Sound.With<VesselPart>(v => v with { MaximumPressurePa = null }),
        "no relief" => Sound.Without("burst-disc"),
        "second valve at the outlet" => Sound.Insert(new ValvePart { Name = "spout" }, "outlet", "flask"),
        "valve between vessel and relief" => Sound.Insert(new ValvePart { Name = "isolator" }, "vessel", "burst-disc"),
        "loop closed at both ends of the cold part" => Sound
            .Insert(new ValvePart { Name = "warm-stop" }, "precooler.high", "recuperator.high")
            .Insert(new ValvePart { Name = "suction-stop" }, "recuperator.low", "compressor"),
        "relief at 30 bar" => Sound.With<ReliefPart>(r => r with { SetPressurePa = 30 * Bar }),
        "2 kg of charge" => Sound with { Charge = Sound.Charge with { MassKg = 2 } },
        "charge not weighed" => Sound with { Charge = Sound.Charge with { MassKg = null } },
        "10 litre flask in a small room" => Sound.With<FlaskPart>(f => f with { VolumeM3 = 0.01 }) with { Room = Sound.Room with { FloorAreaM2 = 15 } },
        "6.5 litre flask" => Sound.With<FlaskPart>(f => f with { VolumeM3 = 0.0065 }),
        "oxygen, 10 litre flask" => Sound.WithGas("oxygen").With<FlaskPart>(f => f with { VolumeM3 = 0.01 }),
        "oxygen" => Sound.WithGas("oxygen"),
        "methane" => Sound.WithGas("methane"),
        "oxygen in the charge" => Sound.WithMixture(["oxygen", "methane"], [0.4, 0.6]),
        "nitrogen" => Sound.WithGas("nitrogen"),
        "throttle valve and no relief on the high side" => Sound.Without("loop-relief").With<ThrottlePart>(t => t with { Capillary = null, Valve = new() { FlowCoefficientKv = 0.01 } }),
        "valve behind the compressor and no relief" => Sound.Without("loop-relief").Insert(new ValvePart { Name = "stop" }, "compressor", "aftercooler"),
        "nothing known of the aftercooler" => Sound.With<AftercoolerPart>(a => a with { MaximumPressurePa = null }),
        _ => throw new ArgumentException(breakage),
    };
}
