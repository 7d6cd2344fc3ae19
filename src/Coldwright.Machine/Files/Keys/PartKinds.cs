using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The kinds of parts that are known, with their keys and streams.</summary>
public static class PartKinds
{
    /// <summary>All kinds.</summary>
    public static IReadOnlyList<PartKind> All { get; } =
    [
        Kind("compressor", PortDirection.Through, [.. CompressorKeys.Keys]).With(CompressorKeys.Needs),
        Kind("aftercooler", PortDirection.Through,
            Required("approach", QuantityKinds.Difference, "Outlet temperature above room air."),
            Optional("pressure-drop", QuantityKinds.Drop, "Pressure drop."),
            Optional("fan-power", QuantityKinds.Power, "Electrical power of its fan."),
            GasVolume("0.15 L", "Volume of its passages; part of what the charge fills.")),
        Kind("warm-exchanger", PortDirection.Through,
            Required("conductance", QuantityKinds.Conductance, "Overall heat conductance UA."),
            GasVolume("0.2 L", "Volume of both its passages; part of what the charge fills.")) with { Streams = ["high", "low"] },
        Kind("precooler", PortDirection.Through, [.. PrecoolerKeys.Keys]) with { Streams = ["high", "feed"], DefaultStream = "high" },
        Kind("recuperator", PortDirection.Through, [.. RecuperatorKeys.Keys]).With(RecuperatorKeys.Needs) with { Streams = ["high", "low", "feed"], IsCold = true },
        Kind("throttle", PortDirection.Through, [.. ThrottleKeys.Keys]) with { IsCold = true },
        Kind("coil", PortDirection.Through, [.. ColdEndKeys.Coil]).With(ColdEndKeys.CoilNeeds) with { IsCold = true },
        Kind("vessel", PortDirection.Through, [.. ColdEndKeys.Vessel]) with { IsCold = true },
        Kind("block", PortDirection.None) with { IsCold = true },
        Kind("cold-box", PortDirection.None, [.. ColdEndKeys.ColdBox]).With(ColdEndKeys.ColdBoxNeeds),
        Kind("feed", PortDirection.Source, [.. FeedKeys.Feed]),
        Kind("buffer", PortDirection.Through, [.. BufferKeys.Keys]),
        Kind("valve", PortDirection.Through, [.. FeedKeys.Valve]),
        Kind("relief", PortDirection.End,
            Required("set-pressure", PressureInMachine with { Example = "24 barg" }, "Pressure at which it opens."),
            Optional("bore", (QuantityKind.Length with { Example = "6 mm" }).Above(0, 0.2), "Least bore when it is open; that of its line counts when it is left out.")),
        Kind("flask", PortDirection.End, [.. FeedKeys.Flask]),
    ];

    /// <summary>The words of all kinds.</summary>
    public static IReadOnlyList<string> Words { get; } = All.Select(k => k.Word).ToArray();

    /// <summary>The kind of that word; null when there is none.</summary>
    public static PartKind? Find(string word) => All.FirstOrDefault(k => k.Word == word);

    /// <summary>The key of a passage's volume.</summary>
    internal static FileKey GasVolume(string example, string meaning) => Optional("gas-volume", (QuantityKind.Volume with { Example = example }).Above(0, 1), meaning);

    private static PartKind Kind(string word, PortDirection direction, params ReadOnlySpan<FileKey> keys)
    {
        var all = new List<FileKey> { new("kind", new ChoiceForm(word), true, "What the part is.") };
        all.AddRange(keys);
        if (word is not ("cold-box" or "block" or "flask"))
            all.Add(Optional("maximum-pressure", PressureInMachine with { Example = "28 barg" }, "Allowed pressure stamped on the part or given by its maker."));
        return new PartKind(word, new FileSection(word, all), [], direction);
    }

    private static PartKind With(this PartKind kind, IReadOnlyList<KeyNeed> needs) => kind with { Section = kind.Section with { Needs = needs } };
}
