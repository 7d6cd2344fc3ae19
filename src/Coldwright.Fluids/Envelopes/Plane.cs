namespace Coldwright.Fluids.Envelopes;

/// <summary>A place in the window: temperature and logarithm of the pressure, each 0 to 1 over the window.</summary>
internal readonly record struct Place(double X, double Y)
{
    public static Place operator +(Place a, Place b) => new(a.X + b.X, a.Y + b.Y);
    public static Place operator -(Place a, Place b) => new(a.X - b.X, a.Y - b.Y);
    public static Place operator *(double f, Place a) => new(f * a.X, f * a.Y);

    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>The same length, a quarter turn to the left.</summary>
    public Place Turned => new(-Y, X);

    public double Dot(Place other) => X * other.X + Y * other.Y;

    public double DistanceTo(Place other) => (this - other).Length;

    /// <summary>Distance to a straight stretch.</summary>
    public double DistanceTo(Place a, Place b)
    {
        var d = b - a;
        double t = Math.Clamp((this - a).Dot(d) / Math.Max(d.Dot(d), 1e-300), 0, 1);
        return DistanceTo(a + t * d);
    }
}

/// <summary>The window's scale: equal lengths in it look equal in the picture.</summary>
internal sealed class Plane(EnvelopeWindow window)
{
    private readonly double _coldest = window.ColdestK!.Value, _spanT = window.WarmestK!.Value - window.ColdestK.Value;
    private readonly double _low = Math.Log(window.LowestPa), _span = Math.Log(window.HighestPa / window.LowestPa);

    public double TemperatureK(Place at) => _coldest + _spanT * at.X;

    public double PressurePa(Place at) => Math.Exp(_low + _span * at.Y);

    public Place At(double temperatureK, double pressurePa) => new((temperatureK - _coldest) / _spanT, (Math.Log(pressurePa) - _low) / _span);

    public BoundaryPoint Point(Place at) => new(TemperatureK(at), PressurePa(at));

    public static bool Holds(Place at, double margin = 0) => at.X >= -margin && at.X <= 1 + margin && at.Y >= -margin && at.Y <= 1 + margin;
}
