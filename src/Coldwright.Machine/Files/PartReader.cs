using Coldwright.Machine.Description;
using Coldwright.Machine.Files.Keys;
using Coldwright.Machine.Files.Tree;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>Makes a part from its group of keys.</summary>
internal static class PartReader
{
    /// <summary>The part; null when its kind is missing or unknown. Wrong values stand in as NaN and are reported.</summary>
    public static Part? Read(ReadingContext context, ScalarNode name, FileNode node)
    {
        var where = $"part '{FileTree.Shorten(name.Text)}'";
        if (!IsName(name.Text))
            context.Problems.Add(name, $"'{FileTree.Shorten(name.Text)}' cannot name a part; use letters, digits, - and _, at most 40");
        if (node is not MapNode map)
        {
            context.Problems.Add(node, $"{where} must be a group of keys, at least {{kind: …}}; here is {node.What}");
            return null;
        }
        var kindNode = map.Entries.FirstOrDefault(e => e.Key.Text == "kind").Value;
        if (kindNode is not ScalarNode { Text.Length: > 0 } word)
        {
            context.Problems.Add(map, $"{where} does not say its kind; known are {string.Join(", ", PartKinds.Words)}");
            return null;
        }
        if (PartKinds.Find(word.Text) is not { } kind)
        {
            var near = NearestWord.Find(word.Text, PartKinds.Words).FirstOrDefault();
            context.Problems.Add(word, $"{where} has the unknown kind '{FileTree.Shorten(word.Text)}'; " + (near is null ? $"known are {string.Join(", ", PartKinds.Words)}" : $"the nearest is '{near}'"));
            return null;
        }
        var reader = new SectionReader(context, map, kind.Section, $"{where} ({kind.Word})");
        var part = Make(reader, kind, name.Text);
        return part with
        {
            FileLine = name.Line,
            MaximumPressurePa = kind.Section.Keys.Any(k => k.Name == "maximum-pressure") ? reader.OptionalQuantity("maximum-pressure") : null,
        };
    }

    private static bool IsName(string text) =>
        text.Length <= 40 && text.All(c => char.IsLetterOrDigit(c) || c is '-' or '_');

    private static Part Make(SectionReader r, PartKind kind, string name) => kind.Word switch
    {
        "compressor" => Compressor(r, name),
        "aftercooler" => new AftercoolerPart { Name = name, ApproachK = r.Quantity("approach"), PressureDropPa = r.Quantity("pressure-drop", 0), FanPowerW = r.Quantity("fan-power", 0) },
        "warm-exchanger" => new WarmExchangerPart { Name = name, ConductanceWPerK = r.Quantity("conductance") },
        "precooler" => new PrecoolerPart
        {
            Name = name,
            OutletTemperatureK = r.Quantity("outlet-temperature"),
            EvaporatorDifferenceK = r.Quantity("evaporator-difference"),
            CondenserDifferenceK = r.Quantity("condenser-difference"),
            CarnotShare = r.Quantity("carnot-share"),
            CapacityW = r.OptionalQuantity("capacity"),
            FanPowerW = r.Quantity("fan-power", 0),
        },
        "recuperator" => new RecuperatorPart
        {
            Name = name,
            ConductanceWPerK = r.Quantity("conductance"),
            HighTube = r.Tube("high-tube"),
            LowTube = r.Tube("low-tube"),
            LengthM = r.OptionalQuantity("length"),
            LowSidePressureDropPa = r.Quantity("low-side-pressure-drop", 0),
        },
        "throttle" => new ThrottlePart { Name = name },
        "coil" => new CoilPart { Name = name, DifferenceK = r.Quantity("difference"), Tube = r.Tube("tube"), LengthM = r.OptionalQuantity("length") },
        "vessel" => new VesselPart { Name = name, Tube = r.Tube("tube") ?? new Tube("", double.NaN, double.NaN), LengthM = r.Quantity("length") },
        "block" => new BlockPart { Name = name },
        "cold-box" => ColdBox(r, name),
        "feed" => Feed(r, name),
        "valve" => new ValvePart { Name = name },
        "relief" => new ReliefPart { Name = name, SetPressurePa = r.Quantity("set-pressure") },
        "flask" => new FlaskPart { Name = name, VolumeM3 = r.Quantity("volume") },
        _ => throw new InvalidOperationException($"the part kind '{kind.Word}' is in the key table but no part is made of it"),
    };

    private static CompressorPart Compressor(SectionReader r, string name)
    {
        var hasSwept = r.Has("displacement") || r.Has("speed");
        var flows = (r.Has("molar-flow") ? 1 : 0) + (r.Has("mass-flow") ? 1 : 0);
        if (hasSwept && flows > 0)
            r.Complain("displacement", $"part '{name}' gives both the swept volume and a measured flow; keep one of the two");
        else if (flows == 2)
            r.Complain("mass-flow", $"part '{name}' gives both molar-flow and mass-flow; keep one of the two");
        else if (flows == 0 && !(r.Has("displacement") && r.Has("speed")))
            r.Complain("displacement", $"part '{name}' needs displacement and speed, or a measured molar-flow or mass-flow");

        return new CompressorPart
        {
            Name = name,
            Type = r.Choice("type") == "reciprocating" ? CompressorType.Reciprocating : CompressorType.Rotary,
            DisplacementM3 = r.OptionalQuantity("displacement"),
            SpeedRevPerS = r.OptionalQuantity("speed"),
            FlowMolPerS = r.OptionalQuantity("molar-flow") ?? r.OptionalQuantity("mass-flow") / r.Context.MixtureKgPerMol,
            ClearanceFraction = r.Quantity("clearance", 0),
            LeakagePerRatio = r.Quantity("leakage-per-ratio", 0),
            SuctionHeatingK = r.Quantity("suction-heating", 0),
            IsentropicEfficiency = r.Efficiencies("isentropic-efficiency"),
            MotorEfficiency = r.Quantity("motor-efficiency"),
            ShellHeatFraction = r.Quantity("shell-heat", 0),
            MaximumDischargeTemperatureK = r.Quantity("maximum-discharge-temperature"),
        };
    }

    private static ColdBoxPart ColdBox(SectionReader r, string name) => new()
    {
        Name = name,
        Inside = r.Box("inside"),
        WallM = r.Quantity("wall"),
        Insulation = r.Material("insulation"),
        Penetrations = r.Sections("penetrations", $"a penetration of part '{name}'")
            .Select(p => (p.Reader.Material("material"), p.Reader.Quantity("area"), p.Reader.Quantity("length"))).ToArray(),
    };

    private static FeedPart Feed(SectionReader r, string name)
    {
        var supply = r.OptionalQuantity("supply-pressure");
        var pressure = r.Quantity("pressure");
        if (supply is not null && !r.Has("compressor-efficiency"))
            r.Complain("supply-pressure", $"part '{name}' has a supply-pressure, so it needs the compressor-efficiency of the feed compressor");
        if (supply is null && r.Has("compressor-efficiency"))
            r.Complain("compressor-efficiency", $"part '{name}' has a compressor-efficiency but no supply-pressure to compress from");
        if (supply >= pressure)
            r.Complain("supply-pressure", $"supply-pressure: {QuantityText.Pressure(supply.Value)} is not below the vessel's {QuantityText.Pressure(pressure)}; leave it out when the supply gives enough pressure");
        return new FeedPart
        {
            Name = name,
            Gas = r.Choice("gas") ?? "nitrogen",
            PressurePa = pressure,
            SupplyPressurePa = supply,
            FeedCompressorEfficiency = r.Quantity("compressor-efficiency", 1),
        };
    }
}
