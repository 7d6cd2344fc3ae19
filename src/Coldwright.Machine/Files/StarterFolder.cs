namespace Coldwright.Machine.Files;

/// <summary>Writes a commented starter folder that a person edits until it is their own cooler.</summary>
public static class StarterFolder
{
    /// <summary>Writes <c>machine.yaml</c>, <c>shop.yaml</c> and <c>runs/</c>; existing files are never touched.</summary>
    /// <param name="directory">The folder; it is made when it does not exist.</param>
    /// <returns>What stood in the way, and then nothing was overwritten; empty when everything was written.</returns>
    public static IReadOnlyList<FileProblem> Write(string directory)
    {
        if (File.Exists(directory)) return [new FileProblem(directory, 0, 0, "this is a file; give the name of a folder")];
        var files = new (string Name, string Text)[]
        {
            (MachineFolderReader.MachineFile, StarterText.Machine),
            (MachineFolderReader.ShopFile, StarterText.Shop),
            (Path.Combine("runs", "README.md"), StarterText.Runs),
        };
        var inTheWay = files.Where(f => Path.Exists(Path.Combine(directory, f.Name)))
            .Select(f => new FileProblem(f.Name, 0, 0, $"this file is already in '{directory}' and is not overwritten; choose another folder or move it away")).ToArray();
        if (inTheWay.Length > 0) return inTheWay;

        var name = files[0].Name;
        try
        {
            Directory.CreateDirectory(Path.Combine(directory, "runs"));
            foreach (var file in files)
            {
                name = file.Name;
                // CreateNew: a file that appeared since the check above is not overwritten either.
                using var stream = new FileStream(Path.Combine(directory, name), FileMode.CreateNew, FileAccess.Write);
                using var writer = new StreamWriter(stream);
                writer.Write(file.Text);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [new FileProblem(name, 0, 0, $"it cannot be written: {e.Message}")];
        }
        return [];
    }
}
