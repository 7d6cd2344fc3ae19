using Coldwright.Machine.Files;

namespace Coldwright.Machine.Tests.Files;

/// <summary>Keys that are good one by one and do not go together: one message that says why.</summary>
public sealed class ContradictingDescriptions
{
    private const string Plate = "    nameplate: {rating: appliance, capacity: 2.7 kW, power: 790 W, refrigerant: R410A}   # of the air-conditioner it came from\n";
    private const string Rating = "nameplate: {rating: appliance, capacity: 2.7 kW, power: 790 W, refrigerant: R410A}";
    private const string Wall = "    wall: 180 mm\n    insulation: polyurethane-foam\n";
    private const string Tubes = "    arrangement: tube-in-tube\n    high-side: inner\n";
    private const string Coefficients = "[1, 2, 3, 4, 5, 6, 7, 8, 9, 10]";
    private const string Sheet = "rating-sheet: {refrigerant: R22, mass-flow: " + Coefficients + ", power: " + Coefficients + ", lowest-evaporating: -10 °C, highest-evaporating: 12 °C, lowest-condensing: 30 °C, highest-condensing: 60 °C";
    private const string Capillary = "capillary: {bore: 0.9 mm, length: 1.7 m, coil-diameter: 50 mm}";

    public static TheoryData<string, string, string[]> Cases => new()
    {
        { "    speed: 2850 rpm\n" + Plate, "", ["needs displacement and speed, or molar-flow, or mass-flow, or nameplate, or rating-sheet"] },
        { "    motor-efficiency: 0.82\n", "", ["'isentropic-efficiency', which needs motor-efficiency"] },
        { Rating, Rating.Replace("appliance", "appliance, liquid: 40 °C", StringComparison.Ordinal), ["that of an appliance", "'liquid' belongs to a compressor's own rating"] },
        { Rating, Rating.Replace("appliance", "compressor, evaporating: 10 °C, condensing: 5 °C", StringComparison.Ordinal), ["evaporating: 10 °C is not below condensing, 5 °C"] },
        { Rating, Rating.Replace("appliance", "compressor, evaporating: 10 °C, return-gas: 5 °C", StringComparison.Ordinal), ["evaporating: 10 °C is not below return-gas, 5 °C"] },
        { Rating, Rating.Replace("appliance", "compressor, liquid: 60 °C, condensing: 50 °C", StringComparison.Ordinal), ["liquid: 60 °C is not below condensing, 50 °C"] },
        { Rating, Rating.Replace("capacity: 2.7 kW, ", "", StringComparison.Ordinal), ["nameplate of part 'compressor' needs the key 'capacity'"] },
        { Rating, Rating.Replace("R410A", "R410", StringComparison.Ordinal), ["refrigerant:", "'R410'", "R410A"] },
        { Rating, Sheet + ", return-gas: 18 °C, superheat: 11 K}", ["gives both 'return-gas' and 'superheat'"] },
        { Rating, Sheet.Replace("lowest-evaporating: -10", "lowest-evaporating: 14", StringComparison.Ordinal) + "}", ["lowest-evaporating: 14 °C is not below highest-evaporating, 12 °C"] },
        { Rating, Sheet.Replace("lowest-condensing: 30", "lowest-condensing: 70", StringComparison.Ordinal) + "}", ["lowest-condensing: 70 °C is not below highest-condensing, 60 °C"] },
        { "    maximum-discharge-temperature: 125 °C     # synthetic oil\n", "    maximum-discharge-temperature: 125 °C\n    shell-conductance: 3 W/K\n", ["gives both 'shell-conductance' and 'shell-cooling'"] },
        { "      return-length: 0.5 m\n", "", ["oil of part 'compressor' needs the key 'return-length'"] },
        { "      displacement: 3.8 cm3\n", "", ["loop of part 'precooler' needs displacement, or nameplate, or rating-sheet"] },
        { "      superheat: 6 K\n", "", ["needs superheat, or capillary, or valve"] },
        { "      superheat: 6 K\n", "      superheat: 6 K\n      valve: {kv: 0.01}\n", ["gives both 'superheat' and 'valve'"] },
        { "      superheat: 6 K\n", "      valve: {kv: 0.01, cv: 0.01}\n", ["valve of the loop of part 'precooler' gives both 'kv' and 'cv'"] },
        { "      superheat: 6 K\n", "      valve: {opening: 50 %}\n", ["valve of the loop of part 'precooler' needs kv, or cv"] },
        { "      superheat: 6 K\n", "      capillary: {bore: 0.8 mm}\n", ["capillary of the loop of part 'precooler' needs the key 'length'"] },
        { "    conductance: 100 W/K\n    high-tube: 3/8 in ACR\n", "", ["part 'recuperator' (recuperator) needs conductance, or arrangement, high-tube, low-tube and length"] },
        { "    low-tube: 3/4 in ACR\n", "", ["'arrangement', which needs low-tube as well"] },
        { Tubes, "", ["'coil-diameter', which needs arrangement"] },
        { Tubes, "    arrangement: tubes-in-tube\n", ["needs the number of inner tubes, 2 or more"] },
        { Tubes, Tubes + "    tubes: 3\n", ["3 tubes, which belong to arrangement tubes-in-tube"] },
        { Tubes, "    arrangement: tubes-in-tube\n    tubes: 4\n", ["part 'recuperator': 4 tube(s)", "need an outer bore above"] },
        { Tubes, Tubes.Replace("inner", "outer", StringComparison.Ordinal), ["part 'recuperator': 1 tube(s)", "need an outer bore above"] },
        { Tubes, Tubes + "    bond-width: 4 mm\n", ["no solder between them"] },
        { Tubes, "    arrangement: side-by-side\n", ["width of the solder", "'bond-width'"] },
        { Tubes, "    arrangement: side-by-side\n    bond-width: 4 mm\n    high-side: inner\n", ["neither is the inner one"] },
        { Tubes, "    arrangement: side-by-side\n    bond-width: 40 mm\n", ["bond width must be at most half the smaller circumference"] },
        { "    coil-diameter: 160 mm", "    coil-diameter: 15 mm", ["coil diameter must be at least twice"] },
        { Capillary, Capillary + "\n    valve: {kv: 0.012}", ["gives both 'capillary' and 'valve'"] },
        { Capillary, "capillary: {bore: 0.9 mm, length: 1.7 m, roughness: 0.1 mm}", ["more than a tenth of the bore, 0.9 mm"] },
        { Capillary, "capillary: {bore: 0.9 mm, length: 1.7 m, coil-diameter: 3 mm}", ["less than four bores of 0.9 mm"] },
        { "    difference: 2.5 K\n    tube: 1/4 in ACR\n", "", ["part 'coil' (coil) needs difference, or tube and length"] },
        { "    coil-diameter: 40 mm", "    coil-diameter: 12 mm", ["less than twice the tube's 6.35 mm"] },
        { "    turns: 27", "    turns: 60", ["60 turns of 40 mm make 7.54 m of tube, but the length is 3.5 m"] },
        { Wall, Wall + "    layers: [{material: perlite, thickness: 100 mm}]\n", ["take 'wall' out"] },
        { Wall, "    layers: []\n", ["has 0 layers; 1 to 10"] },
        { Wall, "    wall: 180 mm\n", ["part 'cold-box' (cold-box) needs wall and insulation, or layers"] },
        { Wall, "    layers: [{material: perlite, thickness: 100 mm, cell-gas: helium}]\n", ["calculated for polyurethane-foam only; for perlite"] },
        { Wall, "    layers: [{material: perlite}]\n", ["a layer of part 'cold-box' needs the key 'thickness'"] },
        { "    fully-open-pressure: 20.5 barg", "    fully-open-pressure: 18 barg", ["fully-open-pressure: 19.01 bara is not above the opening pressure, 20.01 bara"] },
        { "    fully-open-pressure: 20.5 barg", "    closing-pressure: 20 barg", ["closing-pressure: 21.01 bara is above the opening pressure, 20.01 bara"] },
        { "    opening-pressure: 19 barg", "    opening-pressure: 3 barg", ["'buffer' opens at 4.01 bara", "it would never shut"] },
        { "    bleed-length: 1.2 m\n", "    maximum-pressure: 19 barg\n", ["'buffer' is made for at most 20.01 bara, but the high side that fills it is 21.51 bara"] },
        { "    length: 3.5 m\n", "    length: 3.5 m\n    maximum-pressure: 10 barg\n", ["'coil' is made for at most 11.01 bara, but the loop's standstill pressure is 16.01 bara"] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void OneMessageSaysWhy(string old, string replacement, string[] expected)
    {
        var read = MachineFolderReader.ReadTexts(Examples.With(old, replacement));
        Assert.Null(read.Machine);
        var all = string.Join(" | ", read.Problems);
        Assert.True(read.Problems.Any(p => expected.All(e => p.Message.Contains(e, StringComparison.Ordinal)) && p is { Line: > 0, Column: > 0 }), all);
        // Each of the two keys that layers make idle is named.
        Assert.True(read.Problems.Count == 1 || replacement.Contains("layers", StringComparison.Ordinal) && replacement.Contains("wall", StringComparison.Ordinal) && read.Problems.Count == 2, all);
    }

    [Fact]
    public void ACoilInsideABlockIsRefused()
    {
        var text = Examples.With("parts:\n", "parts:\n  plate: {kind: block}\n");
        Assert.Contains(MachineFolderReader.ReadTexts(text).Problems, p => p.Message.Contains("what it cools is the block 'plate'; write place: around", StringComparison.Ordinal));
    }
}
