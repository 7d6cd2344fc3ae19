namespace Coldwright.Runs.Sensors;

/// <summary>
/// Reference functions of types K and T: E (mV) = sum c_i t^i, t in °C, other junction at 0 °C, and approximate inverses t = sum d_i E^i.
/// Burns, Scroger, Strouse, Croarkin, Guthrie, NIST Monograph 175 (1993); NIST Standard Reference Database 60, ITS-90.
/// </summary>
internal static class ThermocoupleCoefficients
{
    /// <summary>Type K, -270..0 °C.</summary>
    public static double[] ColdK { get; } =
    [
        0, 0.394501280250e-1, 0.236223735980e-4, -0.328589067840e-6, -0.499048287770e-8, -0.675090591730e-10, -0.574103274280e-12,
        -0.310888728940e-14, -0.104516093650e-16, -0.198892668780e-19, -0.163226974860e-22,
    ];

    /// <summary>Type K, 0..1372 °C, without the exponential term.</summary>
    public static double[] WarmK { get; } =
    [
        -0.176004136860e-1, 0.389212049750e-1, 0.185587700320e-4, -0.994575928740e-7, 0.318409457190e-9, -0.560728448890e-12,
        0.560750590590e-15, -0.320207200030e-18, 0.971511471520e-22, -0.121047212750e-25,
    ];

    /// <summary>The term of type K above 0 °C, a0 exp(a1 (t - a2)^2), mV: the magnetic ordering of the nickel.</summary>
    public static (double A0, double A1, double A2) OrderingK => (0.118597600000, -0.118343200000e-3, 126.9686);

    /// <summary>Type T, -270..0 °C.</summary>
    public static double[] ColdT { get; } =
    [
        0, 0.387481063640e-1, 0.441944343470e-4, 0.118443231050e-6, 0.200329735540e-7, 0.901380195590e-9, 0.226511565930e-10,
        0.360711542050e-12, 0.384939398830e-14, 0.282135219250e-16, 0.142515947790e-18, 0.487686622860e-21, 0.107955392700e-23,
        0.139450270620e-26, 0.797951539270e-30,
    ];

    /// <summary>Type T, 0..400 °C.</summary>
    public static double[] WarmT { get; } =
    [
        0, 0.387481063640e-1, 0.332922278800e-4, 0.206182434040e-6, -0.218822568460e-8, 0.109968809280e-10, -0.308157587720e-13,
        0.454791352900e-16, -0.275129016730e-19,
    ];

    /// <summary>Approximate inverse of type K, -200..0 °C; off by -0.02 to 0.04 °C.</summary>
    public static double[] InverseK { get; } =
        [0, 2.5173462e1, -1.1662878, -1.0833638, -8.9773540e-1, -3.7342377e-1, -8.6632643e-2, -1.0450598e-2, -5.1920577e-4];

    /// <summary>Approximate inverse of type T, -200..0 °C; off by -0.02 to 0.04 °C.</summary>
    public static double[] InverseT { get; } =
        [0, 2.5949192e1, -2.1316967e-1, 7.9018692e-1, 4.2527777e-1, 1.3304473e-1, 2.0241446e-2, 1.2668171e-3];
}
