using Coldwright.Materials.Solids;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Machine.Feed;

/// <summary>A mass of metal as a store of heat: heat above the coldest temperature against temperature, both ways.</summary>
public sealed class MetalStore
{
    private const double ColdestK = 40, WarmestK = 420;
    private const int Nodes = 96;

    private readonly MonotoneCubic _energy, _temperature;

    /// <param name="material">Name in the materials library.</param>
    /// <param name="massKg">kg, above 0.</param>
    public MetalStore(string material, double massKg)
    {
        MassKg = Compression.InputCheck.Within(massKg, 1e-6, 1e5, "kg", nameof(massKg));
        var solid = SolidLibrary.Default.Find(material);
        double[] t = new double[Nodes], e = new double[Nodes];
        for (int i = 0; i < Nodes; i++)
        {
            t[i] = ColdestK + (WarmestK - ColdestK) * i / (Nodes - 1);
            if (i == 0) continue;
            e[i] = e[i - 1] + massKg * solid.EnthalpyRise(t[i - 1], t[i]).Value;
        }
        (_energy, _temperature) = (new MonotoneCubic(t, e, new bool[Nodes]), new MonotoneCubic(e, t, new bool[Nodes]));
    }

    /// <summary>kg.</summary>
    public double MassKg { get; }

    /// <summary>Heat at a temperature (K), J.</summary>
    public double Energy(double temperatureK) => _energy.At(temperatureK);

    /// <summary>Temperature (K) at a heat (J).</summary>
    public double Temperature(double energy) => _temperature.At(energy);
}
