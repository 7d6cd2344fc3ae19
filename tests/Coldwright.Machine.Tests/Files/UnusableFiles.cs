using Coldwright.Machine.Files;

namespace Coldwright.Machine.Tests.Files;

public sealed class UnusableFiles : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coldwright-test").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void AMissingFolderPointsToNew() =>
        Assert.Contains("coldwright new", Only(Path.Combine(_folder, "nowhere")).Message, StringComparison.Ordinal);

    [Fact]
    public void AFolderWithoutMachineSaysWhatAMachineFolderIs()
    {
        var message = Only(_folder).Message;
        Assert.Contains("holds no machine.yaml", message, StringComparison.Ordinal);
        Assert.Contains("shop.yaml", message, StringComparison.Ordinal);
        Assert.Contains("coldwright new", message, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileInPlaceOfAFolderIsSaid()
    {
        var file = Path.Combine(_folder, "machine.yaml");
        File.WriteAllText(file, Examples.Workshop);
        Assert.Contains("is a file", Only(file).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   \n\n")]
    [InlineData("# only a remark\n")]
    public void AnEmptyFileIsSaid(string text) => Assert.Equal("the file is empty", Written(text).Message);

    [Theory]
    [InlineData("---\n...\n")]
    [InlineData("just words")]
    [InlineData("- a\n- b")]
    public void AFileThatIsNoGroupOfKeysIsSaid(string text) =>
        Assert.NotEmpty(MachineFolderReader.ReadTexts(text).Problems);

    [Fact]
    public void ALargeFileIsRefusedWithItsSizeAndTheLimit()
    {
        File.WriteAllBytes(Path.Combine(_folder, "machine.yaml"), new byte[10_000_000]);
        Assert.Equal("the file has 10.0 MB; the limit is 1.0 MB", Only(_folder).Message);
    }

    [Fact]
    public void BytesThatAreNoTextAreSaidWithTheirPlace()
    {
        Assert.Contains("not a text file", Written("name: a\0b"u8.ToArray()).Message, StringComparison.Ordinal);
        var latin1 = Written([.. "name: a\nroom: 20 "u8, 0xB0, .. "C"u8]);
        Assert.Contains("0xB0", latin1.Message, StringComparison.Ordinal);
        Assert.Contains("UTF-8", latin1.Message, StringComparison.Ordinal);
        Assert.Equal((2, 10), (latin1.Line, latin1.Column));
    }

    [Fact]
    public void AHugeMachineIsRefused()
    {
        var parts = string.Concat(Enumerable.Range(0, 9000).Select(i => $"  valve{i}: {{kind: valve}}\n"));
        var lines = string.Concat(Enumerable.Range(0, 9000).Select(i => $"  - {{from: valve{i}, to: valv{i}}}\n"));
        var read = MachineFolderReader.ReadTexts($"parts:\n{parts}lines:\n{lines}");
        Assert.Contains(read.Problems, p => p.Message == "there are 9000 parts; the limit is 300");
    }

    [Theory]
    [InlineData("[", 900_000)]
    [InlineData("- ", 400_000)]
    [InlineData("a: ", 300_000)]
    [InlineData("{a: ", 200_000)]
    [InlineData("\"", 900_001)]
    public void DeepOrEndlessTextsAreRefused(string piece, int times) =>
        Assert.NotEmpty(MachineFolderReader.ReadTexts(string.Concat(Enumerable.Repeat(piece, times))).Problems);

    [Fact]
    public void AByteOrderMarkIsFine()
    {
        File.WriteAllText(Path.Combine(_folder, "machine.yaml"), Examples.Workshop, new System.Text.UTF8Encoding(true));
        Assert.Empty(MachineFolderReader.Read(_folder).Problems);
    }

    [Fact]
    public void WindowsLineEndsAreFine() =>
        Assert.Empty(MachineFolderReader.ReadTexts(Examples.Workshop.Replace("\n", "\r\n", StringComparison.Ordinal)).Problems);

    [Fact]
    public void AMissingShopIsANoteNotAProblem()
    {
        File.WriteAllText(Path.Combine(_folder, "machine.yaml"), Examples.Workshop);
        var read = MachineFolderReader.Read(_folder);
        Assert.Empty(read.Problems);
        Assert.Contains(read.Notes, n => n.Contains("no shop.yaml", StringComparison.Ordinal));
    }

    private FileProblem Written(string text) => Written(System.Text.Encoding.UTF8.GetBytes(text));

    private FileProblem Written(byte[] bytes)
    {
        File.WriteAllBytes(Path.Combine(_folder, "machine.yaml"), bytes);
        return Only(_folder);
    }

    private static FileProblem Only(string folder)
    {
        var read = MachineFolderReader.Read(folder);
        Assert.Null(read.Machine);
        return Assert.Single(read.Problems);
    }
}
