using Coldwright.Machine.Description;
using Coldwright.Machine.Files.Keys;

namespace Coldwright.Machine.Files;

/// <summary>From a part to its kind in the key table.</summary>
public static class PartWords
{
    /// <summary>The kind of a part.</summary>
    public static PartKind KindOf(Part part) => PartKinds.Find(Word(part))
        ?? throw new InvalidOperationException($"the part kind '{Word(part)}' is not in the key table");

    private static string Word(Part part) => part switch
    {
        CompressorPart => "compressor",
        AftercoolerPart => "aftercooler",
        WarmExchangerPart => "warm-exchanger",
        PrecoolerPart => "precooler",
        RecuperatorPart => "recuperator",
        ThrottlePart => "throttle",
        CoilPart => "coil",
        VesselPart => "vessel",
        BlockPart => "block",
        ColdBoxPart => "cold-box",
        FeedPart => "feed",
        BufferPart => "buffer",
        ValvePart => "valve",
        ReliefPart => "relief",
        FlaskPart => "flask",
        _ => part.GetType().Name,
    };
}
