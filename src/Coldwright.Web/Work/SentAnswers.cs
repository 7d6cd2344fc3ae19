namespace Coldwright.Web.Work;

/// <summary>One answer as it is sent: a few forms of it, made once each and handed to every tab.</summary>
internal sealed class SentAnswers
{
    private const int MostForms = 2;

    private readonly Lock _gate = new();
    private readonly List<(string Form, byte[] Bytes)> _kept = [];

    /// <summary>The bytes of a form, made now unless they are there.</summary>
    /// <param name="form">Everything besides the answer that the bytes depend on.</param>
    /// <param name="make">Makes them.</param>
    public byte[] Get(string form, Func<byte[]> make)
    {
        lock (_gate)
        {
            if (_kept.FindIndex(k => k.Form == form) is >= 0 and var at) return _kept[at].Bytes;
            var made = make();
            _kept.Add((form, made));
            if (_kept.Count > MostForms) _kept.RemoveAt(0);
            return made;
        }
    }
}
