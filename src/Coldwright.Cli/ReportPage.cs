namespace Coldwright.Cli;

/// <summary>Writes a command's page where a folder was asked for.</summary>
internal static class ReportPage
{
    public static void Write(Faces faces, string fileName, Func<string> text)
    {
        if (faces.ReportFolder is not { } folder) return;
        var page = Path.Combine(folder, fileName);
        SafeFile.Write(page, w => w.Write(text()));
        // JSON stays alone on standard output.
        (faces.Json ? faces.Terminal.Error : faces.Terminal.Output).WriteLine($"Report page: {page}");
    }
}
