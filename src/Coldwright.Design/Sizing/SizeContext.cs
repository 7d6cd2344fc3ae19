using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Materials.Tubes;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Design.Sizing;

/// <summary>What every sizing starts from: the machine, its shop, and the operating point when it is asked for.</summary>
internal sealed class SizeContext
{
    private readonly Lazy<(MachineDescription Machine, LoopLayout Layout, ModelRating Loop)> _operating;

    public SizeContext(MachineDescription machine, LoopLayout layout, ShopDescription? shop, RatingOptions options, Action<string>? observer, CancellationToken cancel)
    {
        (Machine, Layout, Shop, Observer, Cancel) = (machine, layout, shop ?? new ShopDescription { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() }, observer, cancel);
        Options = options with { Model = options.Model == RatingModel.Cubic ? RatingModel.Cubic : RatingModel.Reference, Hold = HeldPressure.Both, CurveStepK = 12 };
        var names = machine.Charge.Mixture.Names;
        Model = Options.Model == RatingModel.Cubic ? CubicModel.Create(names) : ReferenceModel.Create(names);
        _operating = new(() =>
        {
            observer?.Invoke("finding the operating point");
            var (loop, warnings) = OperatingLoop.Find(machine, layout, Shop, Model, Options, cancel);
            Said.AddRange(warnings);
            var (filled, plain, _) = StandIns.Fill(machine, layout, Model, cancel);
            return (filled, plain, loop);
        });
    }

    public MachineDescription Machine { get; }
    public LoopLayout Layout { get; }
    public ShopDescription Shop { get; }
    public RatingOptions Options { get; }
    public HelmholtzModel Model { get; }
    public Action<string>? Observer { get; }
    public CancellationToken Cancel { get; }
    public List<Spoken> Said { get; } = [];
    public double RoomK => Machine.Room.TemperatureK;
    public double RoomPa => Machine.Room.PressurePa;
    public double[] Z => [.. Machine.Charge.Mixture.MoleFractions];

    /// <summary>The rating between the two pressures of the file.</summary>
    public ModelRating Loop => _operating.Value.Loop;
    /// <summary>The machine with plain figures where parts give none.</summary>
    public MachineDescription Plain => _operating.Value.Machine;
    public LoopLayout PlainLayout => _operating.Value.Layout;

    public LoopPoint At(string name) => Loop.Loop.Points.Single(p => p.Name == name);

    /// <summary>Price of a metre of tube; null when the shop file has none.</summary>
    public double? PerMetre(double outsideM, double wallM) => Shop.Tubes.FirstOrDefault(t => Math.Abs(t.Tube.OutsideDiameterM - outsideM) < 2e-5 && Math.Abs(t.Tube.WallM - wallM) < 2e-5)?.PricePerM;

    /// <summary>Price of a litre of insulation; null when the shop file has none.</summary>
    public double? PerLitre(string material) => Shop.InsulationPerM3.TryGetValue(material, out double price) ? 1e-3 * price : null;

    /// <summary>Stock tubes of refrigeration and water sizes between two outside diameters, m, thinnest first.</summary>
    public static IEnumerable<Tube> Stock(double fromM, double toM, params string[] series) =>
        TubeTable.Sizes.Where(s => s.OutsideDiameterM >= fromM - 1e-5 && s.OutsideDiameterM <= toM + 1e-5 && (series.Length == 0 || series.Contains(s.Series))).OrderBy(s => s.OutsideDiameterM).ThenBy(s => s.WallM).Select(s => new Tube(s.Text, s.OutsideDiameterM, s.WallM));

    public double AllowedPa(Tube t) => RoomPa + TubeRating.AllowableGaugePressurePa(t.OutsideDiameterM, t.WallM, RoomK);

    /// <summary>Those that fit first; among them the cheapest, where a price is missing the lightest.</summary>
    public static IReadOnlyList<SizeOption> Sorted(IEnumerable<SizeOption> options, string lightness)
    {
        var all = options.ToArray();
        bool priced = all.Where(o => o.Fits).All(o => o.Cost is not null);
        return [.. all.OrderBy(o => !o.Fits).ThenBy(o => priced && o.Fits ? o.Cost!.Value : o.Figures.FirstOrDefault(f => f.Id == lightness)?.Value ?? double.MaxValue)];
    }
}
