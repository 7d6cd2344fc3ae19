using S = Coldwright.Blind.SecondHand.CoolerSizes;

namespace Coldwright.Blind.SecondHand;

/// <summary>
/// The box: foam in an inner and an outer layer of equal thickness, each one temperature, with the shape factors of Langmuir, Adams and Meikle (1913) between them. What is inside takes
/// its share: the vessel and the cold end most, the halves of the recuperator the rest (our assumption).
/// </summary>
internal sealed class FoamBox
{
    public const double LoadShare = 0.6, ColdHalfShare = 0.25, WarmHalfShare = 0.15;
    private const double Density = 35, Capacity = 1350, IceMelts = 334e3;
    private readonly double _inner, _middle, _outer, _innerM3, _outerM3, _leak, _heat, _wet;

    /// <summary>A dry and sound box, or a worse one.</summary>
    /// <param name="leak">Factor on everything that conducts.</param>
    /// <param name="heat">Factor on the foam's heat capacity.</param>
    /// <param name="wet">Water, volume share.</param>
    /// <param name="roomK">Room, K.</param>
    public FoamBox(double leak, double heat, double wet, double roomK)
    {
        (_leak, _heat, _wet, InnerK, OuterK) = (leak, heat, wet, roomK, roomK);
        double quarter = S.WallM / 4;
        (_inner, _middle, _outer) = (Shape(0, quarter), Shape(quarter, 2 * quarter), Shape(3 * quarter, quarter));
        (_innerM3, _outerM3) = (Volume(2 * quarter) - Volume(0), Volume(4 * quarter) - Volume(2 * quarter));
    }

    public double InnerK { get; private set; }
    public double OuterK { get; private set; }

    // between two boxes one around the other, m
    private static double Shape(double from, double thickness)
    {
        double[] l = [.. S.BoxM.Select(x => x + 2 * from)];
        double walls = 2 * (l[0] * l[1] + l[1] * l[2] + l[0] * l[2]) / thickness;
        return walls + 0.54 * 4 * l.Sum() + 0.15 * 8 * thickness;
    }

    private static double Volume(double out_) => S.BoxM.Aggregate(1.0, (v, x) => v * (x + 2 * out_));

    // polyurethane, some years old: 24 mW/(m K) at room temperature (handbooks, from memory); ISO 10456 for water, exp(6 psi)
    private double Conductivity(double k) => 0.024 * (0.4 + 0.6 * k / 293) * Math.Exp(6 * _wet) * _leak;

    /// <summary>Conductance from the inner layer to what is inside, W/K.</summary>
    public double InsideWPerK(double insideK) => _inner * Conductivity(0.5 * (insideK + InnerK));

    /// <summary>Wires, rods and tubes, W/K.</summary>
    public double WiresWPerK => S.WireWPerK * _leak;

    // the heat of freezing is spread over six kelvin below the ice point
    private double LayerJPerK(double m3, double k) => m3 * (Density * Capacity * _heat * (0.3 + 0.7 * k / 293) + _wet * 917 * (k < 273 ? 7.3 * k + (k > 267 ? IceMelts / 6 : 0) : 4190));

    /// <summary>A step, given the W that left the inner layer for what is inside; W that came in from the room.</summary>
    public double Step(double dt, double insideW, double roomK)
    {
        double between = _middle * Conductivity(0.5 * (InnerK + OuterK)) * (OuterK - InnerK), outside = _outer * Conductivity(0.5 * (roomK + OuterK)) * (roomK - OuterK);
        InnerK = Warmed(InnerK, _innerM3, dt * (between - insideW));
        OuterK = Warmed(OuterK, _outerM3, dt * (outside - between));
        return outside;
    }

    /// <summary>Heat capacity of the inner layer, J/K.</summary>
    public double InnerJPerK(double k) => LayerJPerK(_innerM3, k);

    /// <summary>Heat capacity of the outer layer, J/K.</summary>
    public double OuterJPerK(double k) => LayerJPerK(_outerM3, k);

    private double Warmed(double k, double m3, double j) => k + j / LayerJPerK(m3, k);

    /// <summary>Heat leak of the standing wall with everything inside at one temperature, W.</summary>
    public static double SettledW(double leak, double wet, double insideK, double roomK)
    {
        var box = new FoamBox(leak, 1, wet, roomK);
        double k = 0.5 * (insideK + roomK), r = 1 / box._inner + 1 / box._middle + 1 / box._outer;
        return (box.Conductivity(k) / r + box.WiresWPerK) * (roomK - insideK);
    }
}
