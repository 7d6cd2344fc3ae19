using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Parts;

/// <summary>The word behind <c>kind</c> of the parts that have a model of their own.</summary>
internal static class Kinds
{
    public static string Of(Part part) => part switch
    {
        CompressorPart => "compressor",
        PrecoolerPart => "precooler",
        RecuperatorPart => "recuperator",
        ThrottlePart => "throttle",
        CoilPart => "coil",
        VesselPart => "vessel",
        ColdBoxPart => "cold-box",
        BufferPart => "buffer",
        _ => part.GetType().Name,
    };
}
