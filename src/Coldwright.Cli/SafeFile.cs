namespace Coldwright.Cli;

/// <summary>Writes a file whole or not at all: first beside it, then moved into place.</summary>
internal static class SafeFile
{
    /// <summary>Ending of the file that keeps unfinished work.</summary>
    public const string PartEnding = ".part";

    /// <summary>Makes a report's folder; a file of that name is wrong input.</summary>
    public static void MakeFolder(string folder)
    {
        if (File.Exists(folder)) throw new InputException("--report", $"'{folder}' is a file; give the name of a folder");
        Directory.CreateDirectory(folder);
    }

    /// <summary>Writes the file; what stood there before stays until the new text is complete.</summary>
    /// <param name="path">The file; its folder must exist.</param>
    /// <param name="write">Writes the text (UTF-8, LF).</param>
    public static void Write(string path, Action<TextWriter> write) => Write(path, w =>
    {
        write(w);
        return true;
    });

    /// <summary>The same for work that may be stopped: false from <paramref name="write"/> leaves the file alone and keeps the text beside it, with <see cref="PartEnding"/>.</summary>
    public static void Write(string path, Func<TextWriter, bool> write)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var beside = Path.Combine(folder, $".{Path.GetFileName(path)}.{Environment.ProcessId}.writing");
        try
        {
            bool complete;
            using (var writer = new StreamWriter(beside) { NewLine = "\n" }) complete = write(writer);
            File.Move(beside, complete ? path : path + PartEnding, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
