namespace Coldwright.Blind.SecondHand;

/// <summary>What was charged, substance by substance, and what of it stands in the buffer.</summary>
internal sealed class SecondCharge
{
    public static readonly string[] Names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] _listed = [0.27, 0.38, 0.20, 0.09, 0.06];
    private readonly SoaveMixture _mixture = new(Names);
    private readonly double[] _charged, _buffer = new double[Names.Length];

    public SecondCharge(Truth truth)
    {
        double moles = CoolerSizes.ChargeKg / _listed.Select((x, i) => x * _mixture.Mass[i]).Sum();
        _charged = [.. _listed.Select((x, i) => x * moles * truth.Charge[i])];
        _charged[0] *= 1 - truth.Of("light-gas-lost", 0);
        // what is held up is dissolved where nothing flows
        _charged[^1] *= 1 - truth.Of("heavy-held-up", 0);
        Moles = _charged.Sum();
        Table = new SoaveTable(_mixture, [.. _charged.Select(x => x / Moles)]);
    }

    public SoaveTable Table { get; private set; }
    public double Moles { get; }
    public double BufferMoles => _buffer.Sum();
    public double LoopMoles => Moles - BufferMoles;

    /// <summary>Fills the buffer from the whole charge.</summary>
    public void FillBuffer(double moles)
    {
        for (int i = 0; i < _buffer.Length; i++) _buffer[i] = moles * Table.Z[i];
    }

    /// <summary>Gas out of the buffer, and in from the high side, mol.</summary>
    public void Exchange(double outMoles, double inMoles)
    {
        double all = BufferMoles;
        for (int i = 0; i < _buffer.Length; i++) _buffer[i] = Math.Max(1e-6, _buffer[i] * (1 - Math.Min(0.5, outMoles / all)) + inMoles * Table.Z[i]);
    }

    /// <summary>Brings what circulates in line with the charge less the buffer; nothing happens while both agree.</summary>
    /// <param name="held">What the loop would hold with the present composition, mol of each.</param>
    public void Recompose(double[] held)
    {
        double total = held.Sum(), loop = LoopMoles, worst = 0;
        double[] z = [.. Table.Z];
        for (int i = 0; i < z.Length; i++)
        {
            double off = Math.Log(held[i] / total * loop / Math.Max(_charged[i] - _buffer[i], 1e-4 * loop));
            worst = Math.Max(worst, Math.Abs(off));
            z[i] *= Math.Exp(-Math.Clamp(0.7 * off, -0.2, 0.2));
        }
        if (worst < 0.025) return;
        double sum = z.Sum();
        Table = new SoaveTable(_mixture, [.. z.Select(v => v / sum)]);
    }
}
