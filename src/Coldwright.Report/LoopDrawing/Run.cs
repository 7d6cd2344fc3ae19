using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Report.Loops.Signs;

namespace Coldwright.Report.Loops;

/// <summary>A stretch between two stations: its lines with what is written and hung on them, and the valves between the lines. Drawn from above.</summary>
internal sealed class Run
{
    private readonly Canvas _canvas;
    private readonly Branches _branches;
    private readonly Track _track;
    private readonly IReadOnlyList<PathStep> _steps;
    private readonly bool _hangsOwn;
    private int _done;

    /// <param name="canvas">Where to.</param>
    /// <param name="branches">What hangs on it.</param>
    /// <param name="track">The upright line.</param>
    /// <param name="steps">The stations behind the start, in the direction of flow: valves, then the next large part (or a valve that ends it).</param>
    /// <param name="hangsOwn">False when the branches of the first port are drawn by somebody else.</param>
    public Run(Canvas canvas, Branches branches, Track track, IReadOnlyList<PathStep> steps, bool hangsOwn = true)
    {
        (_canvas, _branches, _track, _hangsOwn) = (canvas, branches, track, hangsOwn);
        _steps = track.IsUpward ? [.. steps.Reverse()] : steps;
    }

    /// <summary>The line that ends at the lower station.</summary>
    public Line Last => _steps[^1].Line!;

    /// <summary>Draws what stands in the room, or in the cold box, from where it stopped; the rest when <paramref name="isInBox"/> is null.</summary>
    /// <param name="isInBox">Side of the wall.</param>
    /// <param name="place">What the drawing shows here, for branches that stand on the other side.</param>
    public void Draw(bool? isInBox, bool place)
    {
        while (_done < 2 * _steps.Count && (isInBox is null || IsCold(_done) == isInBox))
        {
            var step = _steps[_done / 2];
            if (_done % 2 == 0)
            {
                _canvas.Write(_track, step.Line!);
                if (_hangsOwn || step != _steps[0]) _branches.Hang(_track, step.Line!.From, place);
            }
            else if (ValveAfter(_done / 2) is { } valve)
            {
                _canvas.InLine(_track, valve, RoomSigns.Valve(), step.Line!);
                if (!_track.IsUpward && _done / 2 == _steps.Count - 1) _branches.Hang(_track, valve.Name, place);
            }
            _done++;
        }
    }

    // Flowing down, the valve stands at the line's end; flowing up, drawn from above, at its start.
    private Part? ValveAfter(int i) => _track.IsUpward
        ? i + 1 < _steps.Count ? _steps[i + 1].Part : null
        : _steps[i].Part as ValvePart;

    private bool IsCold(int at)
    {
        var i = at / 2;
        var isCold = _steps[i].Line!.Place == Place.ColdBox;
        // A valve is in the box when both its lines are.
        return at % 2 == 0 || i + 1 >= _steps.Count ? isCold : isCold && _steps[i + 1].Line!.Place == Place.ColdBox;
    }
}
