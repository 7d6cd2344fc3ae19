using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys of a buffer.</summary>
internal static class BufferKeys
{
    /// <summary>Its keys.</summary>
    public static IReadOnlyList<FileKey> Keys { get; } =
    [
        Required("volume", (QuantityKind.Volume with { Example = "6 L" }).Between(1e-5, 1), "Volume of the tank."),
        Required("opening-pressure", PressureInMachine with { Example = "19 barg" }, "High-side pressure at which its valve begins to open."),
        Optional("fully-open-pressure", PressureInMachine with { Example = "20.5 barg" }, "High-side pressure at which the valve is fully open."),
        Optional("closing-pressure", PressureInMachine with { Example = "18.5 barg" }, "High-side pressure at which the valve shuts again; where it opened when left out."),
        Optional("valve-bore", (QuantityKind.Length with { Example = "3 mm" }).Between(1e-4, 0.05), "Bore of the open valve."),
        Required("bleed-bore", (QuantityKind.Length with { Example = "0.5 mm" }).Between(5e-5, 0.02), "Bore through which it bleeds back to the suction."),
        Optional("bleed-length", (QuantityKind.Length with { Example = "1.5 m" }).Between(0, 20), "Length of the bleed when it is a capillary; an orifice when left out."),
    ];
}
