namespace Coldwright.Report.Loops;

/// <summary>One of the upright lines while the drawing is made from top to bottom.</summary>
/// <param name="x">Where it stands.</param>
/// <param name="form">How it is drawn.</param>
/// <param name="isUpward">True when the gas flows up in it.</param>
/// <param name="side">Texts and branches stand right (1) or left (-1) of it.</param>
/// <param name="edge">How far texts may reach to that side, x.</param>
internal sealed class Track(double x, WireForm form, bool isUpward, int side, double edge)
{
    public double X => x;
    /// <summary>How the line that is being drawn looks; behind the throttle the pressure is low.</summary>
    public WireForm Form { get; set; } = form;
    public bool IsUpward => isUpward;
    public int Side => side;
    public double Edge => edge;

    /// <summary>Nothing of this line may stand above this.</summary>
    public double Y { get; set; }

    /// <summary>The points of the line that is being drawn, so far, from above.</summary>
    public List<(double X, double Y)> Open { get; } = [];

    /// <summary>Starts a line at these points.</summary>
    public void Start(params ReadOnlySpan<(double X, double Y)> points)
    {
        Open.Clear();
        Open.AddRange(points);
        Y = points[^1].Y;
    }

    /// <summary>The line so far and on to these points, in the direction of flow.</summary>
    public IReadOnlyList<(double X, double Y)> To(params ReadOnlySpan<(double X, double Y)> points)
    {
        var all = new List<(double X, double Y)>(Open);
        all.AddRange(points);
        if (isUpward) all.Reverse();
        return all;
    }
}
