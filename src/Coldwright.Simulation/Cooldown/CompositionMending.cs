namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// How much of what the composition is off by is mended at the end of a piece. Where what circulates and what is held up answer to each other strongly, mending most of it
/// overshoots and the two swing for ever: then the share is that which would have ended the swing (relaxation after Aitken, Proc. R. Soc. Edinburgh 46 (1926) 289, in the
/// form for vectors of Irons and Tuck, Int. J. Numer. Meth. Eng. 1 (1969) 275).
/// </summary>
internal sealed class CompositionMending
{
    private const double Usual = 0.65, Least = 0.03, Grow = 1.3;
    private double[]? _last;

    /// <summary>Share to mend now, 0 to 1.</summary>
    public double Share { get; private set; } = Usual;

    /// <summary>Takes what is off at the end of a piece; true when it swings, which only a piece that settles can tell.</summary>
    /// <param name="off">By substance, ln.</param>
    /// <param name="settles">True where the piece was long enough for the heats to answer; what a short one is off by is the cooldown's own change.</param>
    public bool Take(double[] off, bool settles)
    {
        bool swings = false;
        if (_last is { } last)
        {
            double dot = 0, square = 0, along = 0;
            for (int i = 0; i < off.Length; i++)
            {
                double change = off[i] - last[i];
                dot += off[i] * last[i];
                square += change * change;
                along += last[i] * change;
            }
            swings = settles && dot < 0;
            Share = !settles ? Usual : swings && square > 0 ? Math.Clamp(-Share * along / square, Least, Usual) : Math.Min(Usual, Grow * Share);
        }
        _last = off;
        return swings;
    }
}
