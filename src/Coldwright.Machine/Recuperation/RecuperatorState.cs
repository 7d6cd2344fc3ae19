namespace Coldwright.Machine.Recuperation;

/// <summary>Unknowns of a solve: enthalpies and pressures at the ends of all cells, wall temperatures in the middle.</summary>
internal sealed class RecuperatorState
{
    public readonly int Cells;
    public readonly double[] HotH, ColdH, HotP, ColdP, Wall;
    /// <summary>Conductances of both sides per length, W/(m K): boiling asks for the last heat flux.</summary>
    public readonly double[] HotG, ColdG;
    /// <summary>Their slopes with the stream's enthalpy, W mol/(m K J), and the enthalpies (J/mol) they were found at; not a number where not yet found.</summary>
    public readonly double[] HotD, ColdD, HotAt, ColdAt;

    public RecuperatorState(int cells)
    {
        Cells = cells;
        (HotH, ColdH, HotP, ColdP, Wall) = (new double[cells + 1], new double[cells + 1], new double[cells + 1], new double[cells + 1], new double[cells]);
        (HotG, ColdG, HotD, ColdD, HotAt, ColdAt) = (new double[cells], new double[cells], new double[cells], new double[cells], new double[cells], new double[cells]);
        Array.Fill(HotAt, double.NaN);
        Array.Fill(ColdAt, double.NaN);
    }

    public RecuperatorState Copy()
    {
        var copy = new RecuperatorState(Cells);
        copy.CopyFrom(this);
        return copy;
    }

    public void CopyFrom(RecuperatorState other)
    {
        other.HotH.CopyTo(HotH, 0);
        other.ColdH.CopyTo(ColdH, 0);
        other.HotP.CopyTo(HotP, 0);
        other.ColdP.CopyTo(ColdP, 0);
        other.Wall.CopyTo(Wall, 0);
        other.HotG.CopyTo(HotG, 0);
        other.ColdG.CopyTo(ColdG, 0);
        other.HotD.CopyTo(HotD, 0);
        other.ColdD.CopyTo(ColdD, 0);
        other.HotAt.CopyTo(HotAt, 0);
        other.ColdAt.CopyTo(ColdAt, 0);
    }

    /// <summary>The same profile on another grid of the same length.</summary>
    public RecuperatorState On(int cells)
    {
        if (cells == Cells) return Copy();
        var to = new RecuperatorState(cells);
        for (int i = 0; i <= cells; i++)
        {
            double x = (double)i / cells * Cells;
            int a = Math.Min((int)x, Cells - 1);
            double w = x - a;
            to.HotH[i] = (1 - w) * HotH[a] + w * HotH[a + 1];
            to.ColdH[i] = (1 - w) * ColdH[a] + w * ColdH[a + 1];
            to.HotP[i] = (1 - w) * HotP[a] + w * HotP[a + 1];
            to.ColdP[i] = (1 - w) * ColdP[a] + w * ColdP[a + 1];
        }
        for (int i = 0; i < cells; i++)
        {
            double x = Math.Clamp((i + 0.5) / cells * Cells - 0.5, 0, Cells - 1);
            int a = Math.Min((int)x, Cells - 2);
            double w = x - a;
            to.Wall[i] = (1 - w) * Wall[a] + w * Wall[a + 1];
            to.HotG[i] = (1 - w) * HotG[a] + w * HotG[a + 1];
            to.ColdG[i] = (1 - w) * ColdG[a] + w * ColdG[a + 1];
            to.HotD[i] = (1 - w) * HotD[a] + w * HotD[a + 1];
            to.ColdD[i] = (1 - w) * ColdD[a] + w * ColdD[a + 1];
            to.HotAt[i] = (1 - w) * HotAt[a] + w * HotAt[a + 1];
            to.ColdAt[i] = (1 - w) * ColdAt[a] + w * ColdAt[a + 1];
        }
        return to;
    }
}
