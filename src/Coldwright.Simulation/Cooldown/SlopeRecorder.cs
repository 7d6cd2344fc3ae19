using Coldwright.Numerics.Integration;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Works out <see cref="CooldownSlopes"/> while a run with sensitivities goes on: at every asked time the machine is evaluated once, and twice for every parameter with state and parameter moved together to either side.</summary>
internal sealed class SlopeRecorder
{
    // how far the most sensitive unknown is moved to either side, as a share of its size: tables pass from node to node with steps of some 1e-4 K, which less would blow up
    private const double Reach = 1e-3, LeastSize = 0.1;
    private static readonly int Quantities = Enum.GetValues<CooldownQuantity>().Length;

    private readonly Plant _plant;
    private readonly double[] _timesS, _state, _slope, _moved, _work;
    private readonly List<double> _kept = [];
    private readonly List<double[]> _values = [];
    private readonly List<double[][]> _slopes = [];

    /// <param name="plant">The machine.</param>
    /// <param name="timesS">Times asked for, s.</param>
    public SlopeRecorder(Plant plant, IEnumerable<double> timesS)
    {
        int n = plant.Layout.Count;
        (_plant, _timesS, _state, _slope, _moved, _work) = (plant, [.. timesS.Distinct().Order()], new double[n], new double[n], new double[n], new double[n]);
    }

    /// <summary>What was found.</summary>
    public CooldownSlopes Slopes => new([.. _kept], [.. _values], [.. _slopes]);

    /// <summary>Takes the asked times that lie within a step.</summary>
    public void Keep(AcceptedStep step, PlantEquations f, double[] factors)
    {
        foreach (double time in _timesS)
        {
            if (time > step.End || time < step.Start || (_kept.Count > 0 && time <= _kept[^1])) continue;
            step.Evaluate(time, _state);
            double[] p = [.. factors];
            f.NowS = time;
            if (!f.Evaluate(_state, p, _work, slopes: false)) continue;
            double[] at = Of(f);
            var by = new double[step.ParameterCount][];
            for (int k = 0; k < by.Length; k++)
            {
                step.EvaluateSensitivity(time, k, _slope);
                double most = 1;
                for (int i = 0; i < _plant.Layout.Cooled; i++) most = Math.Max(most, Math.Abs(_slope[i]) / Math.Max(LeastSize, Math.Abs(_state[i])));
                by[k] = Mean(Moved(f, p, k, Reach / most, at), Moved(f, p, k, -Reach / most, at)) ?? new double[Quantities];
            }
            _kept.Add(time);
            _values.Add(at);
            _slopes.Add(by);
        }
    }

    // of the two sides, as far as they have an answer
    private static double[]? Mean(double[]? up, double[]? down) => up is null ? down : down is null ? up : [.. up.Zip(down, (a, b) => 0.5 * (a + b))];

    private double[]? Moved(PlantEquations f, double[] p, int k, double step, double[] at)
    {
        for (int i = 0; i < _moved.Length; i++) _moved[i] = _state[i] + step * _slope[i];
        double before = p[k];
        p[k] = before + step;
        bool ok = f.Evaluate(_moved, p, _work, slopes: false);
        p[k] = before;
        return ok ? [.. Of(f).Select((v, i) => (v - at[i]) / step)] : null;
    }

    /// <summary>The quantities at the state last evaluated.</summary>
    public static double[] Of(PlantEquations f)
    {
        var v = new double[Quantities];
        var at = f.At;
        double room = f.Plant.Hardware.RoomK, load = at.LoadK;
        void Set(CooldownQuantity q, double value) => v[(int)q] = value;
        Set(CooldownQuantity.LoadK, load);
        Set(CooldownQuantity.LeakW, at.LeakW);
        if (!f.Running)
        {
            foreach (var q in (CooldownQuantity[])[CooldownQuantity.ThrottleInletK, CooldownQuantity.CoilOutletK]) Set(q, load);
            foreach (var q in (CooldownQuantity[])[CooldownQuantity.PrecooledK, CooldownQuantity.ReturnK, CooldownQuantity.SuctionK, CooldownQuantity.DischargeK]) Set(q, room);
            return v;
        }
        var low = f.Streams.Low;
        Set(CooldownQuantity.ThrottleInletK, at.ThrottleK);
        Set(CooldownQuantity.CoilOutletK, low.Temperature(at.CoilOutEnthalpy, at.CoilOutPa, out _));
        Set(CooldownQuantity.PrecooledK, at.RecuperatorInletK);
        Set(CooldownQuantity.ReturnK, low.Temperature(at.ReturnGas, at.SuctionPa, out _));
        Set(CooldownQuantity.SuctionK, at.SuctionK);
        Set(CooldownQuantity.DischargeK, at.DischargeK);
        Set(CooldownQuantity.HighPressurePa, at.HighPa);
        Set(CooldownQuantity.LowPressurePa, at.SuctionPa);
        Set(CooldownQuantity.MassFlow, at.Flow * low.MolarMass);
        Set(CooldownQuantity.CompressorW, at.CompressorW);
        Set(CooldownQuantity.PowerW, at.PowerW);
        Set(CooldownQuantity.CoolingW, at.CoolingW);
        return v;
    }
}
