using Coldwright.Machine.Description;
using Coldwright.Machine.Files;

namespace Coldwright.Machine.Layout;

/// <summary>Matches the loop, station by station, with the order the solvers know.</summary>
internal sealed class LoopMatch(List<PathStep> path, List<LayoutRefusal> refusals)
{
    private int _at = 1;

    public IReadOnlyList<PathStep> Path => path;
    public AftercoolerPart? Aftercooler { get; private set; }
    public WarmExchangerPart? WarmExchanger { get; private set; }
    public PrecoolerPart? Precooler { get; private set; }
    public RecuperatorPart? Recuperator { get; private set; }
    public ThrottlePart? Throttle { get; private set; }
    public CoilPart? Coil { get; private set; }

    /// <summary>True when the whole loop fits; else the first misfit is refused.</summary>
    public bool Match()
    {
        if ((Aftercooler = Take<AftercoolerPart>()) is null) return Refuse("an aftercooler");
        WarmExchanger = Take<WarmExchangerPart>("high");
        Precooler = Take<PrecoolerPart>("high");
        if ((Recuperator = Take<RecuperatorPart>("high")) is null) return Refuse(Precooler is null ? "a warm-exchanger's high stream, a precooler or a recuperator's high stream" : "a recuperator's high stream");
        if ((Throttle = Take<ThrottlePart>()) is null) return Refuse("a throttle");
        if ((Coil = Take<CoilPart>()) is null) return Refuse("a coil");
        if (Take<RecuperatorPart>("low") is null) return Refuse($"'{Recuperator.Name}.low'");
        if (WarmExchanger is not null && Take<WarmExchangerPart>("low") is null) return Refuse($"'{WarmExchanger.Name}.low', because the high stream passes that exchanger");
        return Take<CompressorPart>() is not null || Refuse($"the compressor, '{path[0].Part.Name}'");
    }

    /// <summary>The next station that is no valve, when it is of this kind and stream; else null and nothing is taken.</summary>
    private T? Take<T>(string? stream = null) where T : Part
    {
        SkipValves();
        if (_at >= path.Count || path[_at].Part is not T part || Ports.StreamName(path[_at].Port) != stream) return null;
        _at++;
        return part;
    }

    private void SkipValves()
    {
        while (_at < path.Count && path[_at].Part is ValvePart) _at++;
    }

    private bool Refuse(string expected)
    {
        SkipValves();
        var before = path[Math.Min(_at, path.Count) - 1];
        if (_at < path.Count)
            refusals.Add(new(path[_at].Line!.FileLine, $"after '{before.Port}' the mixture reaches '{path[_at].Port}' ({PartWords.KindOf(path[_at].Part).Word}); expected is {expected}"));
        else
            refusals.Add(new(before.Line?.FileLine ?? before.Part.FileLine, $"no line leads on from '{before.Port}'; expected is one to {expected}"));
        return false;
    }
}
