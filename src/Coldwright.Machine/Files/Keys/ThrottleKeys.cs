using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys of a throttle.</summary>
public static class ThrottleKeys
{
    /// <summary>A capillary.</summary>
    public static FileSection Capillary { get; } = new("capillary",
    [
        Required("bore", (QuantityKind.Length with { Example = "0.8 mm" }).Between(5e-5, 0.02), "Bore; measure it well, the flow goes with its power of about 2.6."),
        Required("length", (QuantityKind.Length with { Example = "2.4 m" }).Above(0, 200), "Length."),
        Optional("roughness", (QuantityKind.Length with { Example = "0.5 µm" }).Between(0, 1e-3), "Roughness of the bore; that of a drawn capillary when left out."),
        Optional("coil-diameter", (QuantityKind.Length with { Example = "60 mm" }).Above(0, 10), "Mean diameter of the coil it is wound to; straight when left out."),
    ]);

    /// <summary>A valve.</summary>
    public static FileSection Valve { get; } = new("valve",
    [
        Optional("kv", (QuantityKind.Number with { Name = "a flow coefficient", Example = "0.012" }).Above(0, 100), "Flow coefficient at full opening, m3/h of water at 1 bar."),
        Optional("cv", (QuantityKind.Number with { Name = "a flow coefficient", Example = "0.014" }).Above(0, 100), "Flow coefficient at full opening, US gallons of water per minute at 1 psi."),
        Optional("opening", (QuantityKind.Fraction with { Example = "60 %" }).Above(0, 1), "Share of the flow coefficient that the present opening gives; all of it when left out."),
    ])
    {
        Needs = [new(["kv"], ["cv"])],
    };

    /// <summary>Keys of the throttle.</summary>
    internal static IReadOnlyList<FileKey> Keys { get; } =
    [
        new("capillary", new SectionForm(Capillary), false, "Its sizes, when it is a capillary."),
        new("valve", new SectionForm(Valve), false, "Its flow coefficient, when it is a needle or motor valve."),
    ];
}
