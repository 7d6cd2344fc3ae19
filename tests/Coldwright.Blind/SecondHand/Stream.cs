namespace Coldwright.Blind.SecondHand;

/// <summary>A stream at one pressure: enthalpy, temperature, vapour share and the film in its passage.</summary>
internal sealed class Stream
{
    private const double FilmKept = 0.03;
    private readonly double[] _h = new double[SoaveTable.Nodes], _vapour = new double[SoaveTable.Nodes], _film = new double[SoaveTable.Nodes];
    private SoaveTable? _filmsOf;
    private double _filmPa, _filmFlow;

    /// <summary>Takes a table's isobar.</summary>
    public void Take(SoaveTable table, double pa)
    {
        (Table, Pa) = (table, pa);
        table.Isobar(pa, _h, _vapour);
    }

    public SoaveTable Table { get; private set; } = null!;
    public double Pa { get; private set; }

    /// <summary>Works the films out anew where flow, pressure or composition moved.</summary>
    /// <param name="flow">mol/s.</param>
    /// <param name="hydraulicM">Hydraulic diameter, m.</param>
    /// <param name="areaM2">Cross-section, m2.</param>
    public void Films(double flow, double hydraulicM, double areaM2)
    {
        if (ReferenceEquals(_filmsOf, Table) && Math.Abs(flow / _filmFlow - 1) < FilmKept && Math.Abs(Pa / _filmPa - 1) < FilmKept) return;
        (_filmsOf, _filmFlow, _filmPa) = (Table, flow, Pa);
        double flux = flow * Table.MolarMass / areaM2;
        for (int i = 0; i < _film.Length; i++)
        {
            double k = SoaveTable.ColdK + SoaveTable.StepK * i;
            _film[i] = TubeFilm.Of(flux, hydraulicM, _vapour[i], k, Pa, Slope(i), Table.MolarMass);
        }
    }

    private double Slope(int i) => i == 0 ? (_h[1] - _h[0]) / SoaveTable.StepK : i == _h.Length - 1 ? (_h[i] - _h[i - 1]) / SoaveTable.StepK : (_h[i + 1] - _h[i - 1]) / (2 * SoaveTable.StepK);

    /// <summary>W/(m2 K).</summary>
    public double Film(double k) => Read(_film, k);
    /// <summary>J/mol.</summary>
    public double Enthalpy(double k) => Read(_h, k);
    /// <summary>0 (liquid) to 1.</summary>
    public double Vapour(double k) => Read(_vapour, k);

    /// <summary>K.</summary>
    public double Temperature(double h)
    {
        int a = 0, b = _h.Length - 1;
        while (b - a > 1)
        {
            int m = (a + b) / 2;
            if (_h[m] < h) a = m; else b = m;
        }
        return SoaveTable.ColdK + SoaveTable.StepK * (a + (h - _h[a]) / (_h[b] - _h[a]));
    }

    /// <summary>J/(mol K) between two temperatures, or along the curve where they meet.</summary>
    public double Capacity(double a, double b) => Math.Abs(a - b) > 0.2 ? (Enthalpy(a) - Enthalpy(b)) / (a - b) : (Enthalpy(a + 1) - Enthalpy(a - 1)) / 2;

    private static double Read(double[] a, double k)
    {
        double t = Math.Clamp((k - SoaveTable.ColdK) / SoaveTable.StepK, -5, SoaveTable.Nodes + 20);
        int i = Math.Clamp((int)t, 0, SoaveTable.Nodes - 2);
        return a[i] + (t - i) * (a[i + 1] - a[i]);
    }
}
