using System.Buffers;

namespace Coldwright.Web.Http;

/// <summary>
/// Bytes of one reply, in an array that the next reply uses again. Replies hold pictures and tables of hundreds of kilobytes and are asked for by
/// every tab: arrays made for each would fill the memory until the next full collection.
/// </summary>
internal sealed class ReplyBuffer : IBufferWriter<byte>, IDisposable
{
    private const int FirstBytes = 1 << 16, LargestKeptBytes = 1 << 22, KeptOfASize = 4;

    private static readonly ArrayPool<byte> _arrays = ArrayPool<byte>.Create(LargestKeptBytes, KeptOfASize);

    private byte[] _bytes = _arrays.Rent(FirstBytes);
    private int _count;

    public ReadOnlyMemory<byte> Written => _bytes.AsMemory(0, _count);

    public void Advance(int count) => _count += count;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        Grow(sizeHint);
        return _bytes.AsMemory(_count);
    }

    public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

    public void Dispose()
    {
        _arrays.Return(_bytes);
        (_bytes, _count) = ([], 0);
    }

    private void Grow(int more)
    {
        if (_bytes.Length - _count >= Math.Max(more, 1)) return;
        var larger = _arrays.Rent(Math.Max(2 * _bytes.Length, _count + more));
        _bytes.AsSpan(0, _count).CopyTo(larger);
        _arrays.Return(_bytes);
        _bytes = larger;
    }
}
