using System.Globalization;
using System.Text;

namespace Coldwright.Machine.Files;

/// <summary>Reads a small text file, or says why it is none: missing, too large, binary, not UTF-8, empty.</summary>
public static class FileText
{
    /// <summary>Largest file that is read, bytes. A machine is a few kilobytes; this is room for any comment.</summary>
    public const long LargestBytes = 1_000_000;

    /// <summary>The text of a file; null when it cannot be used, which is then in <paramref name="problems"/>.</summary>
    public static string? Read(string path, ProblemList problems)
    {
        byte[] bytes;
        try
        {
            var size = new FileInfo(path).Length;
            if (size > LargestBytes)
            {
                problems.Add($"the file has {Megabytes(size)}; the limit is {Megabytes(LargestBytes)}");
                return null;
            }
            bytes = File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Add($"the file cannot be read: {e.Message}");
            return null;
        }
        return Decode(bytes, problems);
    }

    /// <summary>The text of UTF-8 bytes; null when they are no text, which is then in <paramref name="problems"/>.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes, ProblemList problems)
    {
        if (bytes.StartsWith("\uFEFF"u8)) bytes = bytes[3..];
        var bad = FirstBadByte(bytes);
        if (bad >= 0)
        {
            var line = bytes[..bad].Count((byte)'\n') + 1;
            problems.Add(line, bad - bytes[..bad].LastIndexOf((byte)'\n'), bytes[bad] < 0x20
                ? $"this is not a text file: byte {bad} is a control character (0x{bytes[bad]:X2})"
                : $"byte {bad} (0x{bytes[bad]:X2}) is not UTF-8; save the file as UTF-8");
            return null;
        }
        var text = Encoding.UTF8.GetString(bytes);
        var hasContent = text.Split('\n').Any(l => l.Trim() is { Length: > 0 } t && t[0] != '#');
        if (hasContent) return text;
        problems.Add("the file is empty");
        return null;
    }

    private static int FirstBadByte(ReadOnlySpan<byte> bytes)
    {
        for (int i = 0; i < bytes.Length;)
        {
            if (bytes[i] < 0x20 && bytes[i] is not ((byte)'\t' or (byte)'\n' or (byte)'\r')) return i;
            if (Rune.DecodeFromUtf8(bytes[i..], out _, out var length) != System.Buffers.OperationStatus.Done) return i;
            i += length;
        }
        return -1;
    }

    private static string Megabytes(long bytes) => (bytes / 1e6).ToString("0.0#", CultureInfo.InvariantCulture) + " MB";
}
