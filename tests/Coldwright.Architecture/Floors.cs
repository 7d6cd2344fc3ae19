using System.Reflection;
using System.Xml.Linq;

namespace Coldwright.Architecture;

/// <summary>A project may use only projects on lower floors (docs/decisions/001-floors.md).</summary>
public class Floors
{
    private static readonly Dictionary<string, int> _floor = new(StringComparer.Ordinal)
    {
        ["Coldwright.Quantities"] = 0,
        ["Coldwright.Numerics"] = 0,
        ["Coldwright.Fluids"] = 1,
        ["Coldwright.Materials"] = 1,
        ["Coldwright.Machine"] = 2,
        ["Coldwright.Simulation"] = 3,
        ["Coldwright.Safety"] = 4,
        ["Coldwright.Runs"] = 4,
        ["Coldwright.Design"] = 5,
        ["Coldwright.Report"] = 6,
        ["Coldwright.Cli"] = 8,
        ["Coldwright.Web"] = 7,
    };

    public static TheoryData<string> Projects => [.. Clone.Projects];

    [Theory]
    [MemberData(nameof(Projects))]
    public void ReferencesGoDownwards(string project)
    {
        Assert.True(_floor.TryGetValue(project, out var floor), $"{project} has no floor yet; give it one here and in docs/decisions/001-floors.md");
        foreach (var reference in References(project))
            Assert.True(_floor.TryGetValue(reference, out var below) && below < floor, $"{project} (floor {floor}) uses {reference}, which is not below it");
    }

    /// <summary>The compiled assemblies agree: what a lower floor drags along is used downwards too.</summary>
    [Fact]
    public void CompiledReferencesGoDownwards()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var open = new Queue<Assembly>([typeof(Cli.Program).Assembly]);
        while (open.TryDequeue(out var assembly))
        {
            var name = ProjectOf(assembly.GetName().Name!);
            if (!seen.Add(name)) continue;
            foreach (var reference in assembly.GetReferencedAssemblies().Where(r => r.Name!.StartsWith("Coldwright.", StringComparison.Ordinal)))
            {
                Assert.True(_floor[reference.Name!] < _floor[name], $"{name} uses {reference.Name}, which is not below it");
                open.Enqueue(Assembly.Load(reference));
            }
        }
        Assert.Superset(new HashSet<string> { "Coldwright.Fluids", "Coldwright.Numerics", "Coldwright.Machine", "Coldwright.Simulation" }, seen);
    }

    [Fact]
    public void NumericsAndQuantitiesKnowNoPhysics()
    {
        Assert.Empty(References("Coldwright.Numerics"));
        Assert.Empty(References("Coldwright.Quantities"));
    }

    /// <summary>Native builds of the command line must stay possible: only these packages are used below the tests.</summary>
    [Fact]
    public void PackagesAreFew()
    {
        var packages = Clone.Projects.SelectMany(p => XDocument.Load(Clone.ProjectFile(p)).Descendants("PackageReference").Select(r => $"{p} {r.Attribute("Include")!.Value}"));
        Assert.Equal(["Coldwright.Cli System.CommandLine", "Coldwright.Machine YamlDotNet", "Coldwright.Runs MQTTnet"], packages.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void SomethingLivesInEveryRoom(string project) => Assert.NotEmpty(Clone.Sources(Path.Combine("src", project)));

    private static string[] References(string project) => XDocument.Load(Clone.ProjectFile(project)).Descendants("ProjectReference")
        .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/'))).ToArray();

    private static string ProjectOf(string assembly) => assembly == "coldwright" ? "Coldwright.Cli" : assembly;
}
