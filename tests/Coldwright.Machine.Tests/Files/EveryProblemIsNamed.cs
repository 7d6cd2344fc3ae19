using Coldwright.Machine.Files;

namespace Coldwright.Machine.Tests.Files;

/// <summary>One wrong place in the workshop's file; the message must say what, the limit or the nearest right word.</summary>
public sealed class EveryProblemIsNamed
{
    public static TheoryData<string, string, string[]> Cases => new()
    {
        { "length: 16 m", "legnth: 16 m", ["no key 'legnth'", "nearest is 'length'"] },
        { "conductance: 100 W/K", "conductance: 100 W/K\n    colour: blue", ["no key 'colour'", "known are kind, conductance"] },
        { "    approach: 6 K\n", "", ["needs the key 'approach'"] },
        { "conductance: 100 W/K", "conductance: 100 W", ["not a heat conductance", "12 W/K"] },
        { "conductance: 100 W/K", "conductance: -100 W/K", ["more than 0 W/K"] },
        { "length: 16 m", "length: -16 m", ["-16 m", "more than 0 m"] },
        { "length: 16 m", "length: 16 mt", ["'mt'", "no known unit"] },
        { "length: 16 m", "length: [16 m]", ["must be a single value", "a list"] },
        { "length: 16 m", "length:", ["must be a single value", "nothing"] },
        { "high-pressure: 17.5 barg", "high-pressure: 17.5 bar", ["gauge", "17.5 barg", "17.5 bara"] },
        { "high-pressure: 17.5 barg", "high-pressure: 17,5 barg", ["comma", "point"] },
        { "high-pressure: 17.5 barg", "high-pressure: 2 barg", ["high-pressure: 3.01 bara is not above the low pressure, 4.61 bara"] },
        { "high-pressure: 17.5 barg", "high-pressure: 400 barg", ["at most", "298.992 barg"] },
        { "temperature: 20 °C", "temperature: -300 °C", ["-300 °C", "absolute zero", "-273.15 °C"] },
        { "outlet-temperature: -35 °C", "outlet-temperature: -280 °C", ["-280 °C", "absolute zero", "-273.15 °C"] },
        { "outlet-temperature: -35 °C", "outlet-temperature: -150 °C", ["-150 °C", "at least -123.15 °C"] },
        { "outlet-temperature: -35 °C", "outlet-temperature: 30 °C", ["'precooler' cools to 30 °C", "room's 20 °C"] },
        { "pressure: 1008 mbara", "pressure: 1008 mbar", ["absolute", "1008 mbara"] },
        { "motor-efficiency: 0.82", "motor-efficiency: 1.2", ["1.2", "at most 1"] },
        { "motor-efficiency: 0.82", "motor-efficiency: 0", ["more than 0"] },
        { "10: 0.45}", "10: 1.45}", ["1.45", "at most 1"] },
        { "10: 0.45}", "6: 0.45}", ["twice"] },
        { "{2: 0.60, 4: 0.58, 6: 0.54, 10: 0.45}", "[0.6]", ["one efficiency (0.55) or a group"] },
        { "isobutane 0.06", "isobutane 0.16", ["sum to 1.1", "must sum to 1"] },
        { "isobutane 0.06", "isobutan 0.06", ["unknown substance 'isobutan'", "isobutane"] },
        { "isobutane 0.06", "isobutane", ["has no fraction"] },
        { "isobutane 0.06", "R600a 0.03, iC4 0.03", ["isobutane is named 2 times"] },
        { "type: rotary", "type: rotery", ["none of rotary, reciprocating", "nearest is 'rotary'"] },
        { "kind: throttle", "kind: throtle", ["unknown kind 'throtle'", "nearest is 'throttle'"] },
        { "    kind: throttle", "    kinds: throttle", ["does not say its kind"] },
        { "high-tube: 3/8 in ACR", "high-tube: 3/8 in foo", ["no tube size", "6.35 x 0.8 mm"] },
        { "high-tube: 3/8 in ACR", "high-tube: 6.35 x 4 mm", ["no tube size"] },
        { "insulation: polyurethane-foam", "insulation: polyuretane-foam", ["no material", "polyurethane-foam"] },
        { "inside: 0.26 x 0.22 x 0.34 m", "inside: 0.26 x 0.22 m", ["three lengths"] },
        { "inside: 0.26 x 0.22 x 0.34 m", "inside: 0.26 x -0.22 x 0.34 m", ["more than 0 m"] },
        { "gas: nitrogen", "gas: nitrgoen", ["none of nitrogen, argon, oxygen, methane", "nearest is 'nitrogen'"] },
        { "    pressure: 17 barg", "    pressure: 17 barg\n    supply-pressure: 30 barg\n    compressor-efficiency: 0.4", ["not below the vessel's"] },
        { "    pressure: 17 barg", "    pressure: 17 barg\n    supply-pressure: 3 barg", ["needs the compressor-efficiency"] },
        { "    pressure: 17 barg", "    pressure: -0.5 barg", ["below the room's"] },
        { "    speed: 2850 rpm\n", "    speed: 2850 rpm\n    molar-flow: 0.1 mol/s\n", ["both the swept volume and a measured flow"] },
        { "to: loop-relief", "to: loop-relif", ["no part 'loop-relif'", "nearest is 'loop-relief'"] },
        { "to: recuperator.low", "to: recuperator.lwo", ["no stream 'lwo'", "'recuperator.low'"] },
        { "to: recuperator.low", "to: recuperator", ["several streams", "recuperator.high or recuperator.low"] },
        { "from: drain-valve", "from: flask", ["no line can start at 'flask'"] },
        { "to: coil", "to: cold-box", ["no line can end at 'cold-box'"] },
        { "flask:\n", "throttle:\n", ["'throttle' is here twice", "first is in line"] },
        { "    kind: throttle\n", "    kind: throttle\n    maximum-pressure: 10 barg\n", ["made for at most 11.01 bara", "high pressure is 18.51 bara"] },
        { "name: workshop cooler", "name: workshop cooler\n--- \n", ["second document"] },
        { "name: workshop cooler", "name: &a workshop cooler\nother: *a", ["'*a' refers to another place"] },
        { "name: workshop cooler", "name: [[[[[[[[[[[[[[1]]]]]]]]]]]]]]", ["nested", "limit is 12"] },
        { "name: workshop cooler", "name: 'workshop cooler", ["not readable YAML"] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void TheMessageSaysWhatAndWhere(string old, string replacement, string[] expected)
    {
        var read = MachineFolderReader.ReadTexts(Examples.With(old, replacement));
        Assert.Null(read.Machine);
        Assert.Contains(read.Problems, p => expected.All(e => p.Message.Contains(e, StringComparison.Ordinal)) && p is { Line: > 0, Column: > 0, File: "machine.yaml" });
        // One mistake, one message: nothing else in the file is blamed for it.
        if (!replacement.Contains("kind", StringComparison.Ordinal) && !replacement.StartsWith("name", StringComparison.Ordinal) && !replacement.StartsWith("throttle", StringComparison.Ordinal))
            Assert.Single(read.Problems);
    }

    [Fact]
    public void TheLineIsTheOneWhereTheMistakeStands()
    {
        var text = Examples.With("length: 16 m", "legnth: 16 m");
        var line = text[..text.IndexOf("legnth", StringComparison.Ordinal)].Count(c => c == '\n') + 1;
        var problem = Assert.Single(MachineFolderReader.ReadTexts(text).Problems);
        Assert.Equal((line, 5), (problem.Line, problem.Column));
        Assert.StartsWith($"machine.yaml:{line}:5: ", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void AllProblemsComeAtOnceInFileOrder()
    {
        var text = Examples.Workshop
            .Replace("temperature: 20 °C", "temperature: 20", StringComparison.Ordinal)
            .Replace("isobutane 0.06", "isobutane 0.30", StringComparison.Ordinal)
            .Replace("type: rotary", "typ: rotary", StringComparison.Ordinal)
            .Replace("from: coil", "from: coli", StringComparison.Ordinal);
        var problems = MachineFolderReader.ReadTexts(text, "currency: EUR\nelectricity: 0.31\n").Problems;
        Assert.Equal(5, problems.Count);
        Assert.Equal(problems.Where(p => p.File == "machine.yaml").Select(p => p.Line).Order(), problems.Where(p => p.File == "machine.yaml").Select(p => p.Line));
        Assert.Contains(problems, p => p.File == "shop.yaml" && p.Message.Contains("0.31 per kWh", StringComparison.Ordinal));
    }

    [Fact]
    public void AlmostRightFractionsAreNormalisedAndSaid()
    {
        var read = MachineFolderReader.ReadTexts(Examples.With("isobutane 0.06", "isobutane 0.0608"), Examples.WorkshopShop);
        Assert.Empty(read.Problems);
        Assert.Contains(read.Notes, n => n.Contains("sum to 1.0008 and were normalised", StringComparison.Ordinal));
        Assert.Equal(1, read.Machine!.Charge.Mixture.MoleFractions.Sum(), 1e-12);
    }

    [Fact]
    public void AMeasuredMassFlowBecomesMolar()
    {
        var text = Examples.With("    displacement: 10.8 cm3\n    speed: 2850 rpm\n", "    mass-flow: 1 g/s\n");
        var compressor = MachineFolderReader.ReadTexts(text).Layout!.Compressor;
        // IUPAC standard atomic weights (2021): 28.014, 16.043, 30.070, 44.097, 58.124 g/mol.
        const double molarMass = 0.27 * 28.014 + 0.38 * 16.043 + 0.20 * 30.070 + 0.09 * 44.097 + 0.06 * 58.124;
        Assert.Equal(1 / molarMass, compressor.FlowMolPerS!.Value, 1e-5);
        Assert.Null(compressor.DisplacementM3);
    }
}
