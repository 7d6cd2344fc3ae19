using System.Collections.Frozen;
using System.Text;
using Coldwright.Report.Views;

namespace Coldwright.Web.Http;

/// <summary>The page's own files, which are part of the program; nothing is read from disk or from outside.</summary>
internal static class PageResources
{
    private const string Prefix = "page/";

    private static readonly FrozenDictionary<string, byte[]> _files = Load();

    /// <summary>A file by its bare name; null when there is none.</summary>
    public static byte[]? Find(string name) => _files.GetValueOrDefault(name);

    public static string Text(string name) => Encoding.UTF8.GetString(Find(name) ?? throw new InvalidOperationException($"the page's file '{name}' is not part of the program"));

    public static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".html" => "text/html; charset=utf-8",
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".svg" => "image/svg+xml",
        _ => "application/octet-stream",
    };

    private static FrozenDictionary<string, byte[]> Load()
    {
        var assembly = typeof(PageResources).Assembly;
        var files = assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)).ToDictionary(n => n[Prefix.Length..], n =>
        {
            using var stream = assembly.GetManifestResourceStream(n)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return bytes;
        });
        // Pictures, tables and findings look as in the reports.
        files["report.css"] = Encoding.UTF8.GetBytes(ViewStyle.Css);
        return files.ToFrozenDictionary();
    }
}
