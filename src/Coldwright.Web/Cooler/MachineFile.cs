using System.Text;
using Coldwright.Machine.Files;

namespace Coldwright.Web.Cooler;

/// <summary>One text file that is read often and written seldom, while an editor may write it too.</summary>
internal sealed class MachineFile(string path)
{
    private static readonly byte[] _mark = [0xEF, 0xBB, 0xBF];

    private (DateTime Written, long Length) _stamp;
    private bool _isSettled;
    private byte[]? _bytes;

    /// <summary>The file's bytes; null when it is not there or cannot be read. Read again only when size or time have changed, and for two seconds after
    /// that, because times are coarse.</summary>
    public byte[]? Bytes()
    {
        try
        {
            var info = new FileInfo(path);
            if (!info.Exists || info.Length > FileText.LargestBytes) return _bytes = null;
            var stamp = (info.LastWriteTimeUtc, info.Length);
            var isOld = DateTime.UtcNow - info.LastWriteTimeUtc > TimeSpan.FromSeconds(2);
            if (_bytes is not null && _isSettled && _stamp == stamp) return _bytes;
            _bytes = File.ReadAllBytes(path);
            (_stamp, _isSettled) = (stamp, isOld);
            return _bytes;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Just now being saved by somebody, or gone: the next look will tell.
            return _bytes = null;
        }
    }

    /// <summary>Text of bytes, without the mark that some editors put first; null when they are no text.</summary>
    public static string? Text(byte[]? bytes) => bytes is null ? null : FileText.Decode(bytes, new ProblemList(MachineFolderReader.MachineFile));

    /// <summary>
    /// Puts a text in place of the one that was read; false, with the file as it was, when somebody else has written it since. The file is
    /// never half written, and what another program saved in the same moment is put back.
    /// </summary>
    /// <param name="text">The new text.</param>
    /// <param name="read">The bytes that the new text was made from.</param>
    public bool Replace(string text, byte[] read)
    {
        if (new FileInfo(path).LinkTarget is not null) throw new IOException($"{Path.GetFileName(path)} is a link to another place; the page changes no file outside its folder");
        var folder = Path.GetDirectoryName(path)!;
        var name = $".{Path.GetFileName(path)}.{Environment.ProcessId}";
        var (beside, before) = (Path.Combine(folder, name + ".writing"), Path.Combine(folder, name + ".before"));
        try
        {
            var bytes = Encoding.UTF8.GetBytes(text);
            File.WriteAllBytes(beside, read.AsSpan().StartsWith(_mark) ? [.. _mark, .. bytes] : bytes);
            if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(beside, File.GetUnixFileMode(path));
            File.Replace(beside, path, before);
            _bytes = null;
            if (File.ReadAllBytes(before).AsSpan().SequenceEqual(read)) return true;
            // An editor saved between our reading and our writing: its text wins, ours is made again from it.
            File.Move(before, path, overwrite: true);
            return false;
        }
        finally
        {
            File.Delete(beside);
            File.Delete(before);
        }
    }
}
