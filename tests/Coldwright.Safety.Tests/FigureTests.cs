using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Xunit;
using static Coldwright.Safety.Tests.Workbench;

namespace Coldwright.Safety.Tests;

/// <summary>Figures of the findings against published or independently computed ones.</summary>
public sealed class FigureTests
{
    /// <summary>
    /// IEC 60335-2-40 Annex GG for propane with 0.038 kg/m3 (ISO 817, from memory): 0.075 kg at 0.6 m and 9 m2 by the formula, but never
    /// less than m1 = 0.152 kg; 0.302 kg at 1.8 m and 16 m2; at most m2 = 0.988 kg. The volume fraction 1.7 % of IEC 60079-20-1 gives less,
    /// so the expected figures are scaled by the ratio of the two limits.
    /// </summary>
    [Theory]
    [InlineData(0.6, 9, 0.152, 1.0)]
    [InlineData(1.8, 16, 0.302, 1.25)]
    [InlineData(2.2, 900, 0.988, 1.0)]
    public void Propane_charge_limits(double heightM, double floorM2, double expectedKg, double exponent)
    {
        var machine = Sound.WithMixture(["propane"], [1.0]) with { Room = Sound.Room with { FloorAreaM2 = floorM2 } };
        machine = machine with { Charge = machine.Charge with { MassKg = 50, ReleaseHeightM = heightM } };
        var limit = One(machine, "flammable-charge").Limit!.Value;
        var ratio = 0.017 * 0.0440956 * 101325 / (8.314462618 * 295) / 0.038;
        Assert.Equal(expectedKg * Math.Pow(ratio, exponent), limit, 0.004 * expectedKg);
    }

    /// <summary>Le Chatelier by hand: half methane, half propane gives 1 / (0.5/4.4 + 0.5/1.7) = 2.452 %; nitrogen with a little methane does not burn.</summary>
    [Fact]
    public void Mixture_limit_by_le_chatelier()
    {
        Assert.Equal(0.024525, FlammabilityLimits.LowerLimit(new Composition(["methane", "propane"], [0.5, 0.5]))!.Value, 1e-6);
        Assert.Equal(0.017, FlammabilityLimits.LowerLimit(new Composition(["propane"], [1]))!.Value, 1e-12);
        Assert.Null(FlammabilityLimits.LowerLimit(new Composition(["nitrogen", "methane"], [0.96, 0.04])));
        Assert.DoesNotContain(Cautions.For(Sound.WithMixture(["nitrogen", "argon"], [0.5, 0.5]) with { }, Inputs), f => f.Id.StartsWith("flammable", StringComparison.Ordinal));
    }

    /// <summary>Room formula of the University of Nottingham with 0.682 m3 of gas per litre: 10 L in 36 m3 leaves 16.98 %; with 694.6 per volume 16.91 %.</summary>
    [Fact]
    public void Ten_litres_of_nitrogen_in_a_small_room()
    {
        var machine = Sound.WithGas("nitrogen").Without("vessel").With<FlaskPart>(f => f with { VolumeM3 = 0.01 });
        machine = machine with { Room = machine.Room with { FloorAreaM2 = 15, HeightM = 2.4 } };
        Assert.Equal(16.98 - 20.95 * (6.946 - 6.82) / 36, One(machine, "oxygen-poor-room").Value!.Value, 0.01);
    }

    /// <summary>Shut-in nitrogen at 300 K: 2929 bar, computed at constant volume from Span et al. 2000; limits: the weakest tube.</summary>
    [Fact]
    public void Shut_in_nitrogen()
    {
        var machine = CautionTests.Broken("no relief").WithGas("nitrogen");
        var finding = One(machine, "trapped-liquid");
        Assert.Equal("vessel", finding.Part);
        Assert.Equal(2929e5, finding.Value!.Value, 1);
        Assert.Equal(25 * Bar, finding.Limit!.Value, 1);
        var asked = One(machine, "trapped-liquid", Inputs with { TrappedPressurePa = (mixture, k) => mixture.Names[0] == "nitrogen" && k == 295 ? 2.8e8 : null });
        Assert.Equal(2.8e8, asked.Value!.Value, 1);
    }

    /// <summary>Type M 1 in: 337 psi at 100 °F and below (Copper Development Association), above the surroundings.</summary>
    [Theory]
    [InlineData(337 - 2, false)]
    [InlineData(337 + 2, true)]
    public void A_line_is_held_to_the_published_rating(double gaugePsi, bool refused)
    {
        var machine = Sound with
        {
            Lines = [.. Sound.Lines.Where(l => l.From != "aftercooler"), Join("aftercooler", "precooler.high", "1 in type M")],
            Operation = Sound.Operation with { HighPressurePa = gaugePsi * 6894.757293168 + Sound.Room.PressurePa },
        };
        Assert.Equal(refused, Cautions.For(machine, Inputs).Any(f => f.Id == "tube-over-pressure" && f.Part == "aftercooler to precooler.high"));
    }

    [Fact]
    public void Each_stream_is_held_to_its_own_pressure()
    {
        // 50 bar: too much for 1/2 in tube, fine in 1/4 in; the low side is 1/2 in and must not be blamed.
        var machine = Sound with { Operation = Sound.Operation with { HighPressurePa = 52 * Bar } };
        Assert.DoesNotContain(Cautions.For(machine, Inputs), f => f.Id == "tube-over-pressure" && f.Part.Contains("low", StringComparison.Ordinal));
        Assert.DoesNotContain(Cautions.For(machine, Inputs), f => f.Part == "bottle to recuperator.feed");
    }

    [Fact]
    public void A_valve_on_the_warm_gas_side_traps_nothing()
    {
        var machine = Sound
            .Insert(new ValvePart { Name = "one" }, "compressor", "aftercooler")
            .Insert(new ValvePart { Name = "two" }, "aftercooler", "precooler.high")
            .Insert(new ValvePart { Name = "three" }, "bottle", "recuperator.feed");
        Assert.DoesNotContain(Cautions.For(machine, Inputs), f => f.Id == "trapped-liquid");
    }

    private static Finding One(MachineDescription machine, string id, CautionInputs? inputs = null) =>
        Assert.Single(Cautions.For(machine, inputs ?? Inputs), f => f.Id == id);
}
