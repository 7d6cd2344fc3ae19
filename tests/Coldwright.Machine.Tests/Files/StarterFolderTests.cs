using Coldwright.Machine.Files;
using Coldwright.Machine.Files.Keys;

namespace Coldwright.Machine.Tests.Files;

public sealed class StarterFolderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coldwright-test").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void TheStarterIsAGoodMachineFolder()
    {
        var target = Path.Combine(_folder, "deep", "my-cooler");
        Assert.Empty(StarterFolder.Write(target));
        var read = MachineFolderReader.Read(target);
        Assert.Empty(read.Problems);
        Assert.Empty(read.Notes);
        Assert.NotNull(read.Layout);
        Assert.NotNull(read.Shop);
        Assert.True(Directory.Exists(Path.Combine(target, "runs")));
    }

    [Fact]
    public void NothingIsOverwritten()
    {
        var file = Path.Combine(_folder, "machine.yaml");
        File.WriteAllText(file, "mine");
        var problem = Assert.Single(StarterFolder.Write(_folder));
        Assert.Equal("machine.yaml", problem.File);
        Assert.Equal("mine", File.ReadAllText(file));
        Assert.False(File.Exists(Path.Combine(_folder, "shop.yaml")));
        Assert.NotEmpty(StarterFolder.Write(file));
    }

    [Fact]
    public void EveryKeyIsShownInTheStarter()
    {
        var machine = Keys(MachineKeys.Root).Concat(PartKinds.All.SelectMany(k => Keys(k.Section))).Distinct();
        Assert.All(machine, k => Assert.Contains(k, StarterText.Machine, StringComparison.Ordinal));
        Assert.All(PartKinds.Words, w => Assert.Contains(w, StarterText.Machine, StringComparison.Ordinal));
        Assert.All(Keys(ShopKeys.Root), k => Assert.Contains(k + ":", StarterText.Shop, StringComparison.Ordinal));
    }

    private static IEnumerable<string> Keys(FileSection section) => section.Keys.SelectMany(k => k.Form switch
    {
        SectionForm s => Keys(s.Section).Prepend(k.Name),
        SectionListForm s => Keys(s.Section).Prepend(k.Name),
        BySubstanceForm { Value: SectionForm s } => Keys(s.Section).Prepend(k.Name),
        _ => [k.Name],
    });
}
