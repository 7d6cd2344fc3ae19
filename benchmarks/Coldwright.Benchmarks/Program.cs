using System.Globalization;
using System.Text.Json;
using Coldwright.Benchmarks;

if (args.Contains("first-state"))
{
    FluidBenchmarks.PrintFirstState();
    return 0;
}

int Option(string name, int otherwise)
{
    int i = Array.IndexOf(args, name);
    return i >= 0 && i + 1 < args.Length ? int.Parse(args[i + 1], CultureInfo.InvariantCulture) : otherwise;
}

if (args.Contains("soak"))
{
    int count = Option("--count", 20000), seed = Option("--seed", 1), from = Option("--from", 0);
    int failures = 0;
    string[] models = args.Contains("--model") ? [args[Array.IndexOf(args, "--model") + 1]] : ["reference", "cubic"];
    foreach (var model in models)
    {
        var t = Soak.Run(model, count, seed, from, Option("--caloric-every", 10), i => { if (i % 2000 == 0 && i > from) Console.Error.WriteLine($"  {model}: {i - from} of {count}"); });
        var real = t.Faults.Where(f => !f.Contains("(apart)")).ToList();
        failures += real.Count;
        if (t.Outside > 0.02 * t.States) failures++;
        Console.WriteLine($"{model}: {t.States} states, {t.OnePhase} one phase, {t.TwoPhase} two, {t.ThreePhase} three; {t.Caloric} (p,h) and (p,s) round trips; {real.Count} faults");
        Console.WriteLine($"  apart (a substance more than 30 K below its triple point): {t.Apart} states, {t.Outside} without an answer ({100.0 * t.Outside / t.States:0.00} % of all)");
        Console.WriteLine($"  density roots refused by the admissibility rule: {t.RejectedRoots}; {t.Seconds:0.0} s");
        foreach (var f in real.Take(Option("--show", 12)).Concat(args.Contains("--apart") ? t.Faults.Where(f => f.Contains("(apart)")).Take(400) : [])) Console.WriteLine("  " + f);
    }
    return failures == 0 ? 0 : 1;
}

if (args is ["page-host", var directory]) return await PageHost.Run(directory);

if (args.Contains("identify")) return IdentifyTable.Run();

if (args.Contains("blind"))
{
    string Word(string name, string otherwise) => Array.IndexOf(args, name) + 1 is > 0 and var at && at < args.Length ? args[at] : otherwise;
    return BlindBench.Run(Word("--hand", "first"), Option("--seed", 1), Option("--cases", 120), Word("--sensors", "usual"), args.Contains("--against"), args.Contains("--oracle"), args.Contains("--verbose"));
}

var rows = new List<Measurement>();
bool json = args.Contains("--json");
if (!json) Console.WriteLine($"{"",-30}{"median us",12}{"bytes/call",12}");
int prefix = Array.IndexOf(args, "--rows") + 1;
string wanted = prefix > 0 && prefix < args.Length ? args[prefix] : "";
foreach (var each in FluidBenchmarks.Rows().Concat(RatingBenchmarks.Rows()).Concat(CooldownBenchmarks.Rows()).Concat(BatchBenchmarks.Rows()).Concat(RecuperatorBenchmarks.Rows()).Concat(PartBenchmarks.Rows()).Concat(WetAndPureBenchmarks.Rows()).Concat(BlendBenchmarks.Rows()))
{
    if (!each.Name.StartsWith(wanted, StringComparison.Ordinal) || (each.Name == CooldownBenchmarks.DirectRow && wanted != each.Name)
        || (each.Name.StartsWith(BlendBenchmarks.Prefix, StringComparison.Ordinal) && !wanted.StartsWith(BlendBenchmarks.Prefix, StringComparison.Ordinal))) continue;
    var row = each.Measure();
    rows.Add(row);
    if (!json) Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{row.Name,-30}{row.MedianMicroseconds,12:0.00}{row.AllocatedBytes,12:0}"));
}
if (json)
{
    using var output = Console.OpenStandardOutput();
    using var writer = new Utf8JsonWriter(output, new JsonWriterOptions { Indented = true });
    writer.WriteStartArray();
    foreach (var row in rows)
    {
        writer.WriteStartObject();
        writer.WriteString("name", row.Name);
        writer.WriteNumber("median_us", Math.Round(row.MedianMicroseconds, 3));
        writer.WriteNumber("allocated_bytes", row.AllocatedBytes);
        writer.WriteEndObject();
    }
    writer.WriteEndArray();
}
return 0;
