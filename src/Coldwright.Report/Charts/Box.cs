namespace Coldwright.Report.Charts;

/// <summary>An upright rectangle, px, y downwards.</summary>
internal readonly record struct Box(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;
    public double Bottom => Y + Height;

    public Box Grown(double by) => new(X - by, Y - by, Width + 2 * by, Height + 2 * by);

    public bool Contains(Box other) => other.X >= X && other.Y >= Y && other.Right <= Right && other.Bottom <= Bottom;

    public bool Overlaps(Box other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;

    /// <summary>The distance from a point to the rectangle, 0 inside.</summary>
    public double DistanceTo(double x, double y)
    {
        var dx = Math.Max(Math.Max(X - x, x - Right), 0);
        var dy = Math.Max(Math.Max(Y - y, y - Bottom), 0);
        return Math.Sqrt(dx * dx + dy * dy);
    }

    /// <summary>Length of the part of a segment inside the rectangle (Liang and Barsky's clipping).</summary>
    public double LengthInside(Segment s)
    {
        double from = 0, to = 1, dx = s.X2 - s.X1, dy = s.Y2 - s.Y1;
        if (!Clip(-dx, s.X1 - X, ref from, ref to) || !Clip(dx, Right - s.X1, ref from, ref to)
            || !Clip(-dy, s.Y1 - Y, ref from, ref to) || !Clip(dy, Bottom - s.Y1, ref from, ref to)) return 0;
        return (to - from) * Math.Sqrt(dx * dx + dy * dy);
    }

    private static bool Clip(double direction, double room, ref double from, ref double to)
    {
        if (direction == 0) return room >= 0;
        var at = room / direction;
        if (direction < 0) from = Math.Max(from, at);
        else to = Math.Min(to, at);
        return from < to;
    }
}

/// <summary>A straight stroke that labels keep clear of, px.</summary>
internal readonly record struct Segment(double X1, double Y1, double X2, double Y2)
{
    /// <summary>True when the two cross inside both of them.</summary>
    public bool Crosses(Segment other) =>
        Side(other.X1, other.Y1) * Side(other.X2, other.Y2) < 0 && other.Side(X1, Y1) * other.Side(X2, Y2) < 0;

    // on which side of the line through this segment a point lies
    private double Side(double x, double y) => (X2 - X1) * (y - Y1) - (Y2 - Y1) * (x - X1);
}
