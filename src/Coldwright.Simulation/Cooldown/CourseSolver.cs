using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>Follows a cooldown with factors on the parts, then a warm-up from where it stood: what a fit of a log asks for again and again.</summary>
internal sealed class CourseSolver(Plant plant, LoopMapMaker maker, CourseOptions options, CancellationToken cancel)
{
    private readonly List<(double TimeS, PlantPoint At, double CoilK, double ReturnK, double MassFlow)> _kept = [];

    /// <summary>The course; a run that a part's model ends early throws <see cref="SolveException"/>.</summary>
    public Course Solve()
    {
        var cooldown = new CooldownOptions { Cells = options.Cells, InsulationCells = options.InsulationCells, Tolerance = options.Tolerance, LoadW = options.LoadW, Reach = options.Reach, Plateau = false, Halving = false, Sensitivity = options.SlopeTimesS.Count > 0 };
        cooldown.Check();
        double[] factors = options.FactorArray();
        var run = new CooldownRun(plant, maker, cooldown, factors, Keep, cancel) { SlopesAt = cooldown.Sensitivity ? new SlopeRecorder(plant, options.SlopeTimesS) : null };
        run.Start(null);
        if (options.LateBelowK is { } late)
        {
            run.To(options.ShutOffS, late, null);
            CourseOptions.Times(factors, options.LateFactors);
        }
        run.To(options.ShutOffS, null, null);
        if (run.Stopped is { } no) throw new SolveException(no.Telling($"followed to {run.TimeS / 60:0.#} min, with the load at {SpokenAmount.Temperature(run.LoadK, "0.#")}: {no.Told}"));
        double stopK = run.LoadK, room = plant.Hardware.RoomK;
        var terms = StopFinder.Terms(run.Equations, run.Point(run.State));
        Func<double, double>? rest = null;
        if (options.WarmUpS > 0)
        {
            run.ShutOff();
            run.To(options.ShutOffS + options.WarmUpS, null, null);
            rest = RestPressure.Of(plant.Hardware, maker.Model, run.Charged, run.TotalMol, Math.Min(stopK, run.LoadK) - 1, room, cancel);
        }
        double[] Of(Func<PlantPoint, double> value) => [.. _kept.Select(k => value(k.At))];
        double[] While(Func<(double TimeS, PlantPoint At, double CoilK, double ReturnK, double MassFlow), double> runs, Func<PlantPoint, double> stands) => [.. _kept.Select(k => k.At.Flow > 0 ? runs(k) : stands(k.At))];
        return new Course
        {
            TimeS = [.. _kept.Select(k => k.TimeS)],
            LoadK = Of(p => p.LoadK),
            ThrottleInletK = While(k => k.At.ThrottleK, p => p.LoadK),
            CoilOutletK = While(k => k.CoilK, p => p.LoadK),
            PrecooledK = While(k => k.At.RecuperatorInletK, _ => room),
            ReturnK = While(k => k.ReturnK, _ => room),
            DischargeK = While(k => k.At.DischargeK, _ => room),
            HighPressurePa = While(k => k.At.HighPa, p => rest?.Invoke(p.LoadK) ?? 0),
            LowPressurePa = While(k => k.At.SuctionPa, p => rest?.Invoke(p.LoadK) ?? 0),
            MassFlow = While(k => k.MassFlow, _ => 0),
            CompressorW = Of(p => p.CompressorW),
            PowerW = Of(p => p.PowerW),
            LeakW = Of(p => p.LeakW),
            CoolingW = Of(p => p.CoolingW),
            StoredW = [.. _kept.Select(k => (k.At.RecuperatorStoredW, k.At.LoadStoredW, k.At.InsulationStoredW))],
            AtStop = terms,
            StandstillPa = Standstill.Of(plant.Hardware, maker.Model, run.TotalMol).PressurePa,
            StopK = stopK,
            Slopes = run.SlopesAt?.Slopes,
        };
    }

    private void Keep(RunSample sample)
    {
        if (_kept.Count > 0 && sample.TimeS <= _kept[^1].TimeS) return;
        var at = sample.Run.Point(sample.State);
        double coil = at.LoadK, back = plant.Hardware.RoomK, flow = 0;
        if (at.Flow > 0)
        {
            var low = sample.Run.Equations.Streams.Low;
            (coil, back, flow) = (low.Temperature(at.CoilOutEnthalpy, at.CoilOutPa, out _), low.Temperature(at.ReturnGas, at.SuctionPa, out _), at.Flow * low.MolarMass);
        }
        _kept.Add((sample.TimeS, at, coil, back, flow));
    }
}
