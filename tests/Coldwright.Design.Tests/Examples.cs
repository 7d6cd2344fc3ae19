using Coldwright.Machine.Files;

namespace Coldwright.Design.Tests;

/// <summary>The example folders of the clone.</summary>
internal static class Examples
{
    public static MachineFolder Read(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
        var read = MachineFolderReader.Read(Path.Combine(folder!.FullName, "examples", name));
        return read.IsGood ? read : throw new InvalidOperationException(string.Join("\n", read.Problems));
    }
}
