using Xunit;
using Coldwright.Machine.Description;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Tests.Parts;

/// <summary>What cannot be rated, and what must then be said.</summary>
public class PartRefusals
{
    private static MachineDescription Workshop => RatedParts.Workshop;

    public static TheoryData<string, string[]> Bare => new()
    {
        { "compressor", ["displacement and speed, or nameplate, or rating-sheet"] },
        { "precooler", ["loop"] },
        { "recuperator", ["arrangement", "high-tube", "low-tube", "length"] },
        { "throttle", ["capillary, or valve"] },
        { "coil", ["tube", "length", "coil-diameter"] },
        { "buffer", ["valve-bore", "fully-open-pressure"] },
    };

    private static MachineDescription Stripped => Workshop
        .With<CompressorPart>(c => c with { DisplacementM3 = null, SpeedRevPerS = null, FlowMolPerS = 0.08, Nameplate = null })
        .With<PrecoolerPart>(p => p with { Loop = null })
        .With<RecuperatorPart>(r => r with { Arrangement = null, HighTube = null, LowTube = null, LengthM = null })
        .With<ThrottlePart>(t => t with { Capillary = null })
        .With<CoilPart>(c => c with { Tube = null, LengthM = null, CoilDiameterM = null })
        .With<BufferPart>(b => b with { ValveBoreM = null, FullyOpenPressurePa = null });

    [Theory]
    [MemberData(nameof(Bare))]
    public void EveryMissingKeyIsNamedAtOnce(string part, string[] keys)
    {
        var e = Assert.Throws<MissingKeysException>(() => RatedParts.Rate(Stripped, part));
        Assert.Equal(part, e.Part);
        Assert.Equal(keys, e.Keys.Select(k => k.Key));
        Assert.All(e.Keys, k => Assert.NotEqual("", k.Example));
        Assert.All(keys, k => Assert.Contains(k, e.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void ALoopWithoutCompressorAndDeviceNamesBoth()
    {
        var machine = Workshop.With<PrecoolerPart>(p => p with { Loop = p.Loop! with { DisplacementM3 = null, SuperheatK = null } });
        Assert.Equal(2, Assert.Throws<MissingKeysException>(() => RatedParts.Rate(machine, "precooler")).Keys.Count);
    }

    [Fact]
    public void AMixtureWarmerThanTheProductCondensesIsRefusedInWords()
    {
        var e = Assert.Throws<Numerics.SolveException>(() => RatedParts.Rate(Coolers.Folder("stops-leak").Machine!, "coil", RatingModel.Cubic));
        Assert.Contains("nothing condenses", e.Message, StringComparison.Ordinal);
        Assert.Contains(" K", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TubesSideBySideNeedTheirBond()
    {
        var machine = Workshop.With<RecuperatorPart>(r => r with { Arrangement = RecuperatorArrangement.SideBySide });
        Assert.Equal("bond-width", Assert.Single(Assert.Throws<MissingKeysException>(() => RatedParts.Rate(machine, "recuperator")).Keys).Key);
    }

    [Theory]
    [InlineData("nobody")]
    [InlineData("aftercooler")]
    public void APartWithoutAModelIsRefused(string part) => Assert.Contains(part, Assert.Throws<ArgumentException>(() => RatedParts.Rate(Workshop, part)).Message, StringComparison.Ordinal);

    [Fact]
    public void ACoilThatNeedsMoreTubeIsRefusedWithTheNumbers()
    {
        var machine = Workshop.With<CoilPart>(c => c with { Turns = 40 });
        Assert.Contains("40 turns", Assert.Throws<ArgumentException>(() => RatedParts.Rate(machine, "coil")).Message, StringComparison.Ordinal);
    }
}
