using Coldwright.Blind;

namespace Coldwright.Benchmarks.Oracle;

/// <summary>A fault as the oracle thinks of it: the sizes the generator draws, on a scale on which its effect is nearly straight.</summary>
/// <param name="Id">Cause id.</param>
/// <param name="From">One end of the sizes drawn.</param>
/// <param name="To">The other.</param>
/// <param name="Share">Of the odds of its id: a sensor may be wrong to either side.</param>
internal sealed record OracleFault(string Id, double From, double To, double Share)
{
    private const double LoadKg = 1.52;

    /// <summary>All of them.</summary>
    public static IReadOnlyList<OracleFault> All { get; } =
    [
        .. CaseMaker.Faults.SelectMany(f => f.Id is "sensor-offset" or "cold-junction" ? new[] { new OracleFault(f.Id, f.From, f.To, 0.5), new OracleFault(f.Id, -f.From, -f.To, 0.5) } : [new OracleFault(f.Id, f.From, f.To, 1)]),
    ];

    /// <summary>True for what only the sensors show.</summary>
    public bool IsOfSensors => Id is "sensor-offset" or "cold-junction";
    /// <summary>True for what only the batch shows.</summary>
    public bool IsOfBatch => Id is "discharge-too-warm" or "line-loss" or "valve-leak" or "flask-warm" or "feed-impure";
    /// <summary>Size in the middle.</summary>
    public double Middle => 0.5 * (From + To);
    /// <summary>The weaker end, on the scale.</summary>
    public double Near => Math.Abs(On(From)) < Math.Abs(On(To)) ? From : To;
    /// <summary>The stronger end.</summary>
    public double Far => Near == From ? To : From;

    /// <summary>A size on the scale; nothing is 0.</summary>
    public double On(double size) => Id switch
    {
        "leak" => Math.Log(size),
        "exchanger" or "coil" or "compressor-flow" or "capillary-blocked" or "precooler-weak" => -Math.Log(size),
        "extra-metal" => Math.Log(1 + size / LoadKg),
        "freeze-plug" => -Math.Log(1 - size),
        "line-loss" or "flask-warm" => size - 1,
        _ => size,
    };

    /// <summary>Weights of the effects of the weaker and the stronger end at a size: a parabola through nothing and both.</summary>
    public (double Near, double Far) Weights(double size)
    {
        double f = On(size), a = On(Near), b = On(Far);
        return Math.Abs(b - a) < 1e-9 ? (0, f / b) : (f * (b - f) / (a * (b - a)), f * (f - a) / (b * (b - a)));
    }
}
