namespace Coldwright.Numerics.Scalars;

/// <summary>
/// The arithmetic a formula needs, so that one text of it serves plain numbers and numbers that carry
/// derivatives (<see cref="Real"/>, <see cref="Dual"/>, <see cref="HyperDual"/>).
/// </summary>
/// <typeparam name="T">The implementing type.</typeparam>
public interface IScalar<T> where T : struct, IScalar<T>
{
    /// <summary>The value without its derivatives.</summary>
    double Value { get; }
    /// <summary>A constant: all derivatives zero.</summary>
    static abstract T From(double value);
    /// <summary>Sum.</summary>
    static abstract T operator +(T a, T b);
    /// <summary>Difference.</summary>
    static abstract T operator -(T a, T b);
    /// <summary>Negative.</summary>
    static abstract T operator -(T a);
    /// <summary>Product.</summary>
    static abstract T operator *(T a, T b);
    /// <summary>Quotient.</summary>
    static abstract T operator /(T a, T b);
    /// <summary>Sum with a constant.</summary>
    static abstract T operator +(T a, double b);
    /// <summary>Multiple.</summary>
    static abstract T operator *(double a, T b);
    /// <summary>Exponential.</summary>
    static abstract T Exp(T a);
    /// <summary>Natural logarithm; argument positive.</summary>
    static abstract T Log(T a);
    /// <summary>Constant power; base positive unless the exponent is a whole number.</summary>
    static abstract T Pow(T a, double exponent);
}

/// <summary>A plain number.</summary>
public readonly record struct Real(double Value) : IScalar<Real>
{
    /// <inheritdoc/>
    public static Real From(double value) => new(value);
    /// <inheritdoc/>
    public static Real operator +(Real a, Real b) => new(a.Value + b.Value);
    /// <inheritdoc/>
    public static Real operator -(Real a, Real b) => new(a.Value - b.Value);
    /// <inheritdoc/>
    public static Real operator -(Real a) => new(-a.Value);
    /// <inheritdoc/>
    public static Real operator *(Real a, Real b) => new(a.Value * b.Value);
    /// <inheritdoc/>
    public static Real operator /(Real a, Real b) => new(a.Value / b.Value);
    /// <inheritdoc/>
    public static Real operator +(Real a, double b) => new(a.Value + b);
    /// <inheritdoc/>
    public static Real operator *(double a, Real b) => new(a * b.Value);
    /// <inheritdoc/>
    public static Real Exp(Real a) => new(Math.Exp(a.Value));
    /// <inheritdoc/>
    public static Real Log(Real a) => new(Math.Log(a.Value));
    /// <inheritdoc/>
    public static Real Pow(Real a, double exponent) => new(Math.Pow(a.Value, exponent));
}

/// <summary>A value and one directional derivative.</summary>
/// <param name="Value">Value.</param>
/// <param name="Slope">Derivative along the seeded direction.</param>
public readonly record struct Dual(double Value, double Slope) : IScalar<Dual>
{
    /// <inheritdoc/>
    public static Dual From(double value) => new(value, 0);
    /// <inheritdoc/>
    public static Dual operator +(Dual a, Dual b) => new(a.Value + b.Value, a.Slope + b.Slope);
    /// <inheritdoc/>
    public static Dual operator -(Dual a, Dual b) => new(a.Value - b.Value, a.Slope - b.Slope);
    /// <inheritdoc/>
    public static Dual operator -(Dual a) => new(-a.Value, -a.Slope);
    /// <inheritdoc/>
    public static Dual operator *(Dual a, Dual b) => new(a.Value * b.Value, a.Slope * b.Value + a.Value * b.Slope);
    /// <inheritdoc/>
    public static Dual operator /(Dual a, Dual b) => new(a.Value / b.Value, (a.Slope - a.Value / b.Value * b.Slope) / b.Value);
    /// <inheritdoc/>
    public static Dual operator +(Dual a, double b) => new(a.Value + b, a.Slope);
    /// <inheritdoc/>
    public static Dual operator *(double a, Dual b) => new(a * b.Value, a * b.Slope);
    /// <inheritdoc/>
    public static Dual Exp(Dual a) { var e = Math.Exp(a.Value); return new(e, e * a.Slope); }
    /// <inheritdoc/>
    public static Dual Log(Dual a) => new(Math.Log(a.Value), a.Slope / a.Value);
    /// <inheritdoc/>
    public static Dual Pow(Dual a, double exponent) =>
        exponent == 0 ? From(1) : new(Math.Pow(a.Value, exponent), exponent * Math.Pow(a.Value, exponent - 1) * a.Slope);
}

/// <summary>A value, two directional first derivatives and their mixed second derivative, exact to rounding.</summary>
/// <param name="Value">Value.</param>
/// <param name="First">Derivative along the first seeded direction.</param>
/// <param name="Second">Derivative along the second seeded direction.</param>
/// <param name="Mixed">Second derivative along both.</param>
public readonly record struct HyperDual(double Value, double First, double Second, double Mixed) : IScalar<HyperDual>
{
    /// <inheritdoc/>
    public static HyperDual From(double value) => new(value, 0, 0, 0);
    /// <inheritdoc/>
    public static HyperDual operator +(HyperDual a, HyperDual b) => new(a.Value + b.Value, a.First + b.First, a.Second + b.Second, a.Mixed + b.Mixed);
    /// <inheritdoc/>
    public static HyperDual operator -(HyperDual a, HyperDual b) => new(a.Value - b.Value, a.First - b.First, a.Second - b.Second, a.Mixed - b.Mixed);
    /// <inheritdoc/>
    public static HyperDual operator -(HyperDual a) => new(-a.Value, -a.First, -a.Second, -a.Mixed);
    /// <inheritdoc/>
    public static HyperDual operator *(HyperDual a, HyperDual b) => new(
        a.Value * b.Value,
        a.First * b.Value + a.Value * b.First,
        a.Second * b.Value + a.Value * b.Second,
        a.Mixed * b.Value + a.First * b.Second + a.Second * b.First + a.Value * b.Mixed);
    /// <inheritdoc/>
    public static HyperDual operator /(HyperDual a, HyperDual b) => a * Chain(b, 1 / b.Value, -1 / (b.Value * b.Value), 2 / (b.Value * b.Value * b.Value));
    /// <inheritdoc/>
    public static HyperDual operator +(HyperDual a, double b) => a with { Value = a.Value + b };
    /// <inheritdoc/>
    public static HyperDual operator *(double a, HyperDual b) => new(a * b.Value, a * b.First, a * b.Second, a * b.Mixed);
    /// <inheritdoc/>
    public static HyperDual Exp(HyperDual a) { var e = Math.Exp(a.Value); return Chain(a, e, e, e); }
    /// <inheritdoc/>
    public static HyperDual Log(HyperDual a) => Chain(a, Math.Log(a.Value), 1 / a.Value, -1 / (a.Value * a.Value));
    /// <inheritdoc/>
    public static HyperDual Pow(HyperDual a, double n) =>
        n == 0 ? From(1) : n == 1 ? a
        : Chain(a, Math.Pow(a.Value, n), n * Math.Pow(a.Value, n - 1), n * (n - 1) * Math.Pow(a.Value, n - 2));

    private static HyperDual Chain(HyperDual a, double f, double f1, double f2) =>
        new(f, f1 * a.First, f1 * a.Second, f1 * a.Mixed + f2 * a.First * a.Second);
}
