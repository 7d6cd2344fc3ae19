using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Cooldown;
using Xunit;

namespace Coldwright.Simulation.Tests.Cooldown;

/// <summary>
/// Forward derivatives of what sensors read, by every factor that has a name, against central differences of two whole runs: with the usual tables and first steps, what a
/// factor does to the circulating composition included, at moments early, half-way and next to the plateau.
/// </summary>
public sealed class DerivativeTests : IClassFixture<DerivativeTests.Machines>
{
    private const double Share = 0.06, Tolerance = 1e-5;

    // a tenth of the factor then moves a reading by 0.05 K, or by a thousandth of it; the returning gas is close to its dew point, where its temperature bends
    private static readonly (CooldownQuantity Quantity, double Floor)[] Read =
    [
        (CooldownQuantity.LoadK, 0.5), (CooldownQuantity.ThrottleInletK, 0.5), (CooldownQuantity.PrecooledK, 0.5), (CooldownQuantity.ReturnK, 1.5), (CooldownQuantity.SuctionK, 0.5),
        (CooldownQuantity.LowPressurePa, 3000), (CooldownQuantity.HighPressurePa, 20000), (CooldownQuantity.CompressorW, 3), (CooldownQuantity.MassFlow, 1e-5),
    ];

    private readonly Machines _machines;

    public DerivativeTests(Machines machines) => _machines = machines;

    public static TheoryData<string, string> All
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (string machine in (string[])["stops-pinch", "workshop"])
                foreach (string id in PlantParameters.Ids) data.Add(machine, id);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Derivatives_agree_with_differences_of_whole_runs(string machine, string id)
    {
        int factor = Array.IndexOf(PlantParameters.Ids, id);
        var cooler = _machines.Of(machine);
        var with = cooler.Forward;
        var (step, up, down) = cooler.Runs[factor];
        var wrong = new List<string>();
        for (int t = 0; t < cooler.TimesS.Length; t++)
            foreach (var (quantity, floor) in Read)
            {
                double difference = (up.Value(quantity, t) - down.Value(quantity, t)) / (2 * step), forward = with.By(factor, quantity, t);
                if (!(Math.Abs(difference - forward) < Share * Math.Abs(difference) + floor)) wrong.Add(FormattableString.Invariant($"{quantity} at {cooler.TimesS[t]} s: {forward:g4}, by differences {difference:g4}"));
            }
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    /// <summary>The machines, each followed with its derivatives once.</summary>
    public sealed class Machines
    {
        private readonly Dictionary<string, Cooler> _made = [];

        internal Cooler Of(string machine)
        {
            lock (_made) return _made.TryGetValue(machine, out var known) ? known : _made[machine] = machine == "workshop" ? new Cooler(machine, [1500, 5400, 8000, 13500]) : new Cooler(machine, [600, 2000, 3600]);
        }
    }

    internal sealed class Cooler
    {
        private readonly Plant _plant;
        private readonly LoopMapMaker _maker;

        public Cooler(string machine, double[] timesS)
        {
            var folder = Coolers.Folder(machine);
            var model = CubicModel.Create(folder.Machine!.Charge.Mixture.Names);
            var hardware = HardwareReader.Read(folder.Machine, folder.Layout!, model, default);
            (_plant, _maker, TimesS) = (new Plant(hardware, 24, 10, 0), new LoopMapMaker(hardware, model, StreamTableOptions.Default, default), timesS);
            Forward = Run(0, 1, true);
            // one after the other, always in the same order: runs take tables that those before them left, and next to boiling a difference of 2 % feels which
            Runs = [.. PlantParameters.Ids.Select((id, factor) =>
            {
                // the lightest gas sets composition, pressures and flow at once: a longer step keeps what tables differ by out of the difference
                double step = id == "light-gas" ? 0.04 : id == "charge" ? 0.015 : 0.02;
                return (step, Run(factor, 1 + step, false), Run(factor, 1 - step, false));
            })];
        }

        public double[] TimesS { get; }
        public CooldownSlopes Forward { get; }
        /// <summary>By factor: step, and the runs with the factor that much above and below 1.</summary>
        public (double Step, CooldownSlopes Up, CooldownSlopes Down)[] Runs { get; }

        private CooldownSlopes Run(int factor, double value, bool derivatives)
        {
            double[] f = PlantParameters.Nominal();
            f[factor] = value;
            var recorder = new SlopeRecorder(_plant, TimesS);
            var run = new CooldownRun(_plant, _maker, new CooldownOptions { Sensitivity = derivatives, Tolerance = Tolerance }, f, null, default) { SlopesAt = recorder };
            run.Start(null);
            run.To(TimesS[^1] + 60, null, null);
            Assert.Null(run.Stopped);
            return recorder.Slopes;
        }
    }
}
