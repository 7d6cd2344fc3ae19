using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Machine.Layout;
using Coldwright.Report.Loops;

namespace Coldwright.Report.Tests.LoopDrawings;

/// <summary>Machines to draw: the examples and the workshop's with parts taken out or put in.</summary>
internal static class Machines
{
    public sealed record Drawn(string Name, MachineDescription Machine, LoopLayout Layout);

    private static readonly string Root = FindRoot();

    public static IReadOnlyList<Drawn> All { get; } = [.. Examples(), .. Variants()];

    public static Drawn Workshop => All[0];

    public static Drawn Find(string name) => All.First(d => d.Name == name);

    public static Drawn Read(string name, string text)
    {
        var folder = MachineFolderReader.ReadTexts(text);
        Assert.True(folder.Problems.Count == 0, $"{name}: {string.Join("; ", folder.Problems.Select(p => p.Message))}");
        return new(name, folder.Machine!, folder.Layout!);
    }

    /// <summary>A figure for everything: invented, with the shape of real ones.</summary>
    public static LoopFigures Figures(Drawn drawn)
    {
        var entries = new List<LoopFigure>();
        var temperature = 370.0;
        foreach (var step in drawn.Layout.LoopPath.Where(s => s.Line is not null))
        {
            var place = LoopFigures.PlaceOf(step.Line!);
            temperature = Math.Max(93.4, temperature - 31.7);
            entries.Add(new(place, FigureKind.Temperature, temperature));
            entries.Add(new(place, FigureKind.Pressure, 18.53e5));
            if (temperature < 250) entries.Add(new(place, FigureKind.VapourShare, 0.93));
        }
        entries.Add(new(LoopFigures.PlaceOf(drawn.Layout.LoopPath[1].Line!), FigureKind.MassFlow, 2.38e-3));
        entries.Add(new(drawn.Layout.Compressor.Name, FigureKind.Power, 842));
        entries.Add(new(drawn.Layout.Recuperator.Name, FigureKind.Heat, 812, "passes"));
        if (drawn.Layout.Precooler is { } p) entries.AddRange([new(p.Name, FigureKind.Power, 131), new(p.Name, FigureKind.Heat, 215, "takes"), new(p.Name, FigureKind.Temperature, 225.9, "boils at")]);
        if (drawn.Layout.Buffer is { } buffer) entries.Add(new(buffer.Name, FigureKind.Pressure, 7.37e5));
        if (drawn.Layout.ColdBox is { } b) entries.Add(new(b.Name, FigureKind.Heat, 9.91, "leaks in"));
        if (drawn.Layout.Vessel is { } v)
            entries.AddRange([new(v.Name, FigureKind.Temperature, 110.2), new(v.Name, FigureKind.Pressure, 18e5), new(v.Name, FigureKind.Level, null)]);
        if (drawn.Layout.Flask is { } f) entries.Add(new(f.Name, FigureKind.LiquidRate, 0.193e-3 / 3600, "collects"));
        return new() { Entries = entries };
    }

    private static IEnumerable<Drawn> Examples() => new[] { "workshop", "leaky-box", "short-exchanger" }.Select(n => Read(n, Text(n)));

    private static string Text(string example) => File.ReadAllText(Path.Combine(Root, "examples", example, "machine.yaml"));

    private static IEnumerable<Drawn> Variants()
    {
        var workshop = Text("workshop");
        var plain = Text("leaky-box");
        yield return Read("no-precooler", With(Without(plain, "precooler"), ("  - {from: warm-exchanger.high, to: precooler, tube: 3/8 in ACR, length: 0.4 m, in: room}\n", ""),
            ("from: precooler, to: recuperator.high", "from: aftercooler, to: recuperator.high"), ("to: precooler.feed", "to: vessel"),
            ("  - {from: precooler.feed, to: vessel, tube: 1/8 in ACR, length: 0.9 m, in: room}\n", ""),
            ("  - {from: aftercooler, to: warm-exchanger.high, tube: 3/8 in ACR, length: 0.7 m, in: room}\n", ""),
            ("to: warm-exchanger.low", "to: compressor"), ("  - {from: warm-exchanger.low, to: compressor, tube: 5/8 in ACR, length: 0.8 m, in: room}\n", ""),
            ("  warm-exchanger:\n    kind: warm-exchanger\n    conductance: 30 W/K\n", "")));
        yield return Read("block", Block(workshop));
        yield return Read("block-without-box", With(Block(plain), (Section(plain, "cold-box"), "")));
        yield return Read("coil-around", With(workshop, ("place: inside", "place: around"), ("caps: domed", "caps: flat"), (LineWith(workshop, "    high-tube:"), "    high-tube: 3/4 in ACR\n"), (LineWith(workshop, "    low-tube:"), "    low-tube: 3/8 in ACR\n"), ("high-side: inner", "high-side: outer"),
            ("    pressure: 17 barg\n", "    pressure: 17 barg\n    supply-pressure: 0.1 barg\n    compressor-efficiency: 0.5\n"),
            ("type: rotary\n    displacement: 10.8 cm3", "type: reciprocating\n    displacement: 10.8 cm3"), (LineWith(workshop, "    capillary:"), "    valve: {kv: 0.02, opening: 40 %}\n")));
        yield return Read("many-valves", With(workshop,
            ("  flask:\n    kind: flask", "  suction-valve: {kind: valve}\n  discharge-shut-off-valve: {kind: valve}\n  cold-valve: {kind: valve}\n  guard: {kind: valve}\n  second-loop-relief: {kind: relief, set-pressure: 25 barg}\n  low-relief: {kind: relief, set-pressure: 12 barg}\n  buffer-relief: {kind: relief, set-pressure: 25 barg}\n  fill-stop: {kind: valve}\n  flask:\n    kind: flask"),
            ("from: warm-exchanger.low, to: compressor, tube: 5/8 in ACR, length: 0.8 m, in: room}", "from: warm-exchanger.low, to: suction-valve}\n  - {from: suction-valve, to: compressor}\n  - {from: suction-valve, to: low-relief}"),
            ("from: compressor, to: aftercooler, tube: 3/8 in ACR, length: 0.9 m, in: room}", "from: compressor, to: discharge-shut-off-valve}\n  - {from: discharge-shut-off-valve, to: aftercooler}\n  - {from: discharge-shut-off-valve, to: guard}\n  - {from: guard, to: second-loop-relief}"),
            ("from: throttle, to: coil, tube: 1/4 in ACR, length: 0.2 m, in: cold-box}", "from: throttle, to: cold-valve, in: cold-box}\n  - {from: cold-valve, to: coil, in: cold-box}"),
            ("from: aftercooler, to: buffer, tube: 1/4 in ACR, length: 0.4 m, in: room}", "from: aftercooler, to: fill-stop}\n  - {from: fill-stop, to: buffer}\n  - {from: buffer, to: buffer-relief}")));
        yield return Read("long-names", With(plain, ("drain-valve", "the-valve-on-the-drain-of-our-new-vessel"), ("loop-relief", "reliefvalveoftheloopwithoutanyhyphen"), ("precooler.feed", "secondhand-freezer-compressor.feed"),
            ("to: precooler,", "to: secondhand-freezer-compressor,"), ("from: precooler,", "from: secondhand-freezer-compressor,"), ("  precooler:\n    kind", "  secondhand-freezer-compressor:\n    kind")));
    }

    private static string Block(string text)
    {
        foreach (var part in new[] { "vessel", "bottle", "vessel-relief", "flask" }) text = With(text, (Section(text, part), part == "vessel" ? "  plate: {kind: block}\n" : ""));
        text = With(text, ("  fill-valve: {kind: valve}\n  drain-valve: {kind: valve}\n", ""));
        text = text.Replace("    place: inside\n", "    place: around\n", StringComparison.Ordinal);
        return string.Join('\n', text.Split('\n').Where(l => !(l.Contains("{from: ") && new[] { "bottle", "valve", "precooler.feed", "vessel" }.Any(l.Contains))));
    }

    // The lines of one part of the file.
    private static string Section(string text, string part)
    {
        var from = text.IndexOf($"\n  {part}:", StringComparison.Ordinal) + 1;
        var to = from;
        do to = text.IndexOf('\n', to) + 1;
        while (text[to..].StartsWith("    ", StringComparison.Ordinal));
        return text[from..to];
    }

    private static string Without(string text, string part) => text.Replace(Section(text, part), "", StringComparison.Ordinal);

    // The first line that starts so, with its end; the examples' figures may change.
    private static string LineWith(string text, string start)
    {
        var from = text.IndexOf($"\n{start}", StringComparison.Ordinal) + 1;
        return text[from..(text.IndexOf('\n', from) + 1)];
    }

    private static string With(string text, params (string Old, string New)[] changes)
    {
        foreach (var (old, replacement) in changes)
        {
            Assert.Contains(old, text);
            text = text.Replace(old, replacement, StringComparison.Ordinal);
        }
        return text;
    }

    private static string FindRoot()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(at.FullName, "Coldwright.slnx"))) at = at.Parent ?? throw new InvalidOperationException("no Coldwright.slnx above the test's folder");
        return at.FullName;
    }
}
