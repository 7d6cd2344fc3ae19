using Coldwright.Machine.Recuperation;
using Coldwright.Materials.Solids;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>A penetration of the cold box: conductance area over length, metal, and whether it ends at the recuperator's warm end.</summary>
internal readonly record struct PlantPenetration(string Name, double AreaOverLengthM, SolidMaterial Material, bool EndsWarm);

/// <summary>What of a machine does not change while it cools: masses with their heat, insulation, penetrations. Immutable.</summary>
internal sealed class Plant
{
    private readonly double[] _conductivity;
    private const double TableToK = 420;

    /// <param name="hardware">The machine.</param>
    /// <param name="cells">Cells of the recuperator.</param>
    /// <param name="insulationCells">About so many cells of the insulation.</param>
    /// <param name="loadW">Heat put into the load on purpose, W.</param>
    public Plant(Hardware hardware, int cells, int insulationCells, double loadW)
    {
        (Hardware, LoadW) = (hardware, loadW);
        var said = new List<string>();
        var metal = SolidLibrary.Default.Find(DistributedRecuperator.DefaultMetal);
        RecuperatorKg = metal.Density!.KgPerM3 * hardware.Recuperator.MetalAreaM2 * hardware.Recuperator.LengthM;
        Metal = HeatTable.Of(metal);
        CellCapacity = RecuperatorKg / cells * Metal.ReferenceCapacity;
        _conductivity = [.. Enumerable.Range(0, (int)TableToK + 1).Select(k => metal.Conductivity(Math.Max(4, k)).Value)];
        Bodies = StoredBody.AtLoad(hardware, said);
        if (Bodies.Count == 0) throw new Numerics.SolveException(new Numerics.SolveReport(Numerics.SolveStatus.Outside, 0, double.NaN, "nothing in the file has a mass at the cold end: describe the vessel, or the coil's tube and length"));
        Load = new HeatTable(k => Bodies.Sum(b => b.Capacity(k)));
        if (hardware.Enclosure(hardware.RoomK) is { } box)
        {
            Insulation = new InsulationCells(box, insulationCells);
            Penetrations = [.. box.Penetrations.Select(p => new PlantPenetration(p.Name, p.AreaM2 / p.LengthM, p.Material, Parts.BoxEnclosure.EndsWarm(p)))];
            if (!Insulation.Complete) said.Add("density or specific heat of an insulation layer is not known: its stored heat is left out");
        }
        Layout = new PlantLayout(cells, Insulation?.Count ?? 0, hardware.Machine.Charge.Mixture.MoleFractions.Count - 1);
        Said = said;
    }

    public Hardware Hardware { get; }
    public PlantLayout Layout { get; }
    public double LoadW { get; }
    public double RecuperatorKg { get; }
    /// <summary>Metal of the recuperator; a cell's heat times this is J.</summary>
    public HeatTable Metal { get; }
    public double CellCapacity { get; }
    public IReadOnlyList<StoredBody> Bodies { get; }
    public HeatTable Load { get; }
    public InsulationCells? Insulation { get; }
    public IReadOnlyList<PlantPenetration> Penetrations { get; } = [];
    public IReadOnlyList<string> Said { get; }

    /// <summary>Conductivity of the recuperator's metal, W/(m K), linear between kelvins.</summary>
    public double Conductivity(double k)
    {
        double held = Math.Clamp(k, 4, TableToK - 1e-6);
        int i = (int)held;
        return _conductivity[i] + (held - i) * (_conductivity[i + 1] - _conductivity[i]);
    }

    /// <summary>J per unit of heat of an unknown, with the factors on the masses.</summary>
    public double CapacityOf(int index, ReadOnlySpan<double> factors)
    {
        var l = Layout;
        if (index < l.Cells) return CellCapacity * factors[PlantParameters.RecuperatorMetal];
        if (index == l.Load) return Load.ReferenceCapacity * factors[PlantParameters.LoadMass];
        return Insulation!.ReferenceCapacity(index - l.FirstInsulation) * factors[PlantParameters.InsulationHeat];
    }

    /// <summary>Heat in everything that is cooled, J, up to a constant.</summary>
    public (double RecuperatorJ, double LoadJ, double InsulationJ) HeatJ(ReadOnlySpan<double> state, ReadOnlySpan<double> factors)
    {
        double metal = 0, insulation = 0;
        for (int i = 0; i < Layout.Cells; i++) metal += state[i] * CapacityOf(i, factors);
        for (int i = 0; i < Layout.Insulation; i++) insulation += state[Layout.FirstInsulation + i] * CapacityOf(Layout.FirstInsulation + i, factors);
        return (metal, state[Layout.Load] * CapacityOf(Layout.Load, factors), insulation);
    }
}
