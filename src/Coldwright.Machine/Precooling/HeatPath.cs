namespace Coldwright.Machine.Precooling;

/// <summary>Temperature of a stream against its enthalpy as a chain of straight pieces, with the share of conductance of each.</summary>
internal sealed class HeatPath
{
    private const int Most = LoopRefrigerant.Pieces + 8;
    private readonly double[] _h = new double[Most], _t = new double[Most], _share = new double[Most];

    public int Count { get; private set; }
    public double H(int i) => _h[i];
    public double T(int i) => _t[i];
    /// <summary>Share of conductance between node i - 1 and node i.</summary>
    public double Share(int i) => _share[i];

    public void Start(double h, double t)
    {
        (_h[0], _t[0], _share[0]) = (h, t, 1);
        Count = 1;
    }

    /// <summary>Adds a node; one that does not lie beyond the last is left out.</summary>
    public void Add(double h, double t, double share)
    {
        if (!(h > _h[Count - 1])) return;
        (_h[Count], _t[Count], _share[Count]) = (h, t, share);
        Count++;
    }
}
