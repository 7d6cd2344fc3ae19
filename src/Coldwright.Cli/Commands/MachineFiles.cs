using Coldwright.Machine.Files;

namespace Coldwright.Cli.Commands;

/// <summary>Reads a machine folder for a command that needs a good one.</summary>
internal static class MachineFiles
{
    /// <summary>The folder without problems; else the refusal with all of them.</summary>
    public static MachineFolder ReadGood(string directory)
    {
        var folder = MachineFolderReader.Read(directory);
        return folder.IsGood ? folder : throw Refusal(folder);
    }

    /// <summary>Every problem of a folder.</summary>
    public static InputException Refusal(MachineFolder folder)
    {
        var count = folder.Problems.Count;
        return new InputException("", folder.Problems.Select(p => p.Line > 0 ? $"{Path.Combine(folder.Directory, p.File)}:{p.Line}:{p.Column}: {p.Message}" : p.ToString()).ToArray(),
            count > 1 ? $"{count} problems in {folder.Directory}; nothing was computed" : "");
    }
}
