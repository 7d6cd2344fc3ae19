namespace Coldwright.Cli;

/// <summary>Writes a file whole or not at all: first beside it, then moved into place.</summary>
internal static class SafeFile
{
    /// <summary>Writes the file; what stood there before stays until the new text is complete.</summary>
    /// <param name="path">The file; its folder must exist.</param>
    /// <param name="write">Writes the text (UTF-8, LF).</param>
    public static void Write(string path, Action<TextWriter> write)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var beside = Path.Combine(folder, $".{Path.GetFileName(path)}.{Environment.ProcessId}.part");
        try
        {
            using (var writer = new StreamWriter(beside) { NewLine = "\n" }) write(writer);
            File.Move(beside, path, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
