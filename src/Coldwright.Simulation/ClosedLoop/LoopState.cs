namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// The unknowns of the closed loop, scaled to order one: the high side (ln of the discharge pressure in Pa, or with a buffer its measure,
/// <see cref="Machine.Charge.BufferInLoop"/>), ln of suction and coil inlet pressure (Pa), enthalpies of suction, throttle inlet and
/// recuperator's low outlet (kJ/mol), and ln of each substance's fraction over the first one's.
/// </summary>
internal sealed class LoopState
{
    public const int High = 0, LnSuction = 1, Suction = 2, Throttle = 3, LnCoil = 4, LowOutlet = 5, FirstFraction = 6;
    public const double EnthalpyScale = 1000;

    public double[] X { get; }

    public LoopState(double[] x) => X = x;

    public static LoopState Of(double high, double suctionPa, double suctionEnthalpy, double throttleEnthalpy, double coilPa, double lowOutletEnthalpy, ReadOnlySpan<double> z)
    {
        var x = new double[FirstFraction + z.Length - 1];
        (x[High], x[LnSuction], x[LnCoil]) = (high, Math.Log(suctionPa), Math.Log(coilPa));
        (x[Suction], x[Throttle], x[LowOutlet]) = (suctionEnthalpy / EnthalpyScale, throttleEnthalpy / EnthalpyScale, lowOutletEnthalpy / EnthalpyScale);
        for (int i = 1; i < z.Length; i++) x[FirstFraction + i - 1] = Math.Log(z[i] / z[0]);
        return new LoopState(x);
    }

    public int Count => X.Length;
    public double SuctionPa => Math.Exp(X[LnSuction]);
    public double CoilPa => Math.Exp(X[LnCoil]);
    public double SuctionEnthalpy => X[Suction] * EnthalpyScale;
    public double ThrottleEnthalpy => X[Throttle] * EnthalpyScale;
    public double LowOutletEnthalpy => X[LowOutlet] * EnthalpyScale;

    /// <summary>Mole fractions.</summary>
    public double[] Z()
    {
        var z = new double[Count - FirstFraction + 1];
        double sum = z[0] = 1;
        for (int i = 1; i < z.Length; i++) sum += z[i] = Math.Exp(X[FirstFraction + i - 1]);
        for (int i = 0; i < z.Length; i++) z[i] /= sum;
        return z;
    }

    public LoopState Moved(double[] step, double share)
    {
        var x = (double[])X.Clone();
        for (int i = 0; i < x.Length; i++) x[i] += share * step[i];
        return new LoopState(x);
    }
}
