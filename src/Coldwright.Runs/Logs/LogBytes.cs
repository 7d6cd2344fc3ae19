using System.Text;
using Coldwright.Machine.Files;

namespace Coldwright.Runs.Logs;

/// <summary>Reads a log as bytes in which digits, delimiters and line ends are single bytes, whatever it was written in.</summary>
internal static class LogBytes
{
    /// <summary>Largest log that is read, bytes.</summary>
    public const long LargestBytes = 1_000_000_000;

    /// <summary>The bytes; null, and reported, when the file cannot be read.</summary>
    public static byte[]? Read(string path, string file, ProblemList problems)
    {
        try
        {
            var size = new FileInfo(path).Length;
            if (size > LargestBytes)
            {
                problems.Add($"{file} has {size / 1000000} MB; the limit is {LargestBytes / 1000000} MB; split it into several runs");
                return null;
            }
            return Plain(File.ReadAllBytes(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            problems.Add($"{file} cannot be read: {e.Message}");
            return null;
        }
    }

    /// <summary>UTF-16 becomes UTF-8, a byte-order mark is dropped, everything else stays as it is.</summary>
    public static byte[] Plain(byte[] bytes)
    {
        if (bytes.AsSpan().StartsWith("\uFEFF"u8)) return bytes[3..];
        if (bytes.Length >= 2 && bytes[0] == 0xFF && bytes[1] == 0xFE) return Encoding.UTF8.GetBytes(Encoding.Unicode.GetString(bytes, 2, bytes.Length - 2));
        if (bytes.Length >= 2 && bytes[0] == 0xFE && bytes[1] == 0xFF) return Encoding.UTF8.GetBytes(Encoding.BigEndianUnicode.GetString(bytes, 2, bytes.Length - 2));
        // Without a mark, text of 16 bits shows by its empty upper bytes.
        var head = bytes.AsSpan(0, Math.Min(bytes.Length, 4096) & ~1);
        int odd = 0, even = 0;
        for (var i = 0; i + 1 < head.Length; i += 2)
        {
            if (head[i] == 0) even++;
            if (head[i + 1] == 0) odd++;
        }
        if (head.Length < 8) return bytes;
        if (odd > head.Length / 4 && even == 0) return Encoding.UTF8.GetBytes(Encoding.Unicode.GetString(bytes));
        if (even > head.Length / 4 && odd == 0) return Encoding.UTF8.GetBytes(Encoding.BigEndianUnicode.GetString(bytes));
        return bytes;
    }

    /// <summary>Text of a cell: UTF-8, or Latin-1 where it is not (many loggers write their degree sign so).</summary>
    public static string Text(ReadOnlySpan<byte> cell)
    {
        var text = System.Text.Unicode.Utf8.IsValid(cell) ? Encoding.UTF8.GetString(cell) : Encoding.Latin1.GetString(cell);
        return text.Trim().Trim('"').Trim();
    }
}
