namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Takes over from one set of tables and maps to the next without a jump: what the new ones make of the balances at that moment is taken off them, and less and
/// less of it as time goes on. So the precooler's conductance goes from the old one to the new. Immutable.
/// </summary>
/// <param name="fromS">Moment, s.</param>
/// <param name="fadeS">Time in which it falls to 1/e, s.</param>
/// <param name="off">Balances by the new maps less those until then.</param>
/// <param name="precoolerRatio">Conductance of the precooler's evaporator until then over that of the new maps.</param>
/// <param name="precoolerFadeS">Time in which its logarithm falls to 1/e, s.</param>
internal sealed class LoopHandover(double fromS, double fadeS, double[] off, double precoolerRatio, double precoolerFadeS)
{
    /// <summary>Largest of the balances that the new maps see otherwise.</summary>
    public double Largest => off.Max(Math.Abs);

    /// <summary>Takes it off.</summary>
    public void Take(double timeS, Span<double> balances)
    {
        double share = Math.Exp(-(timeS - fromS) / fadeS);
        for (int i = 0; i < off.Length; i++) balances[i] -= share * off[i];
    }

    /// <summary>The same way over with other balances to take off.</summary>
    public LoopHandover With(double[] balances) => new(fromS, fadeS, balances, precoolerRatio, precoolerFadeS);

    /// <summary>Conductance of the precooler's evaporator over that of the new maps.</summary>
    public double Precooler(double timeS) => Math.Pow(precoolerRatio, Math.Exp(-(timeS - fromS) / precoolerFadeS));
}
