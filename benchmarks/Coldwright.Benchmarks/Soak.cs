using System.Diagnostics;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Numerics;

namespace Coldwright.Benchmarks;

/// <summary>Random states through a model; every answer is checked independently.</summary>
public static class Soak
{
    /// <summary>What a run found.</summary>
    public sealed record Tally
    {
        public int States, Apart, Outside, OnePhase, TwoPhase, ThreePhase, Caloric;
        public long RejectedRoots;
        public List<string> Faults { get; } = [];
        public double Seconds;
    }

    /// <summary>Runs states <paramref name="from"/> to <paramref name="from"/>+<paramref name="count"/>-1 of a seed.</summary>
    public static Tally Run(string modelName, int count, int seed = 1, int from = 0, int caloricEvery = 10, Action<int>? progress = null)
    {
        var tally = new Tally();
        var clock = Stopwatch.StartNew();
        for (int i = from; i < from + count; i++)
        {
            progress?.Invoke(i);
            var state = RandomState.Draw(seed, i);
            bool apart = state.FarBelowTriplePoint;
            if (apart) tally.Apart++;
            tally.States++;
            string? fault;
            try
            {
                fault = One(modelName, state, tally, i % caloricEvery == 0);
            }
            catch (SolveException e)
            {
                fault = e.Message;
            }
            if (fault is null) continue;
            if (apart) tally.Outside++;
            tally.Faults.Add($"{modelName} {i}{(apart ? " (apart)" : "")}: {fault} | {state}");
        }
        tally.Seconds = clock.Elapsed.TotalSeconds;
        return tally;
    }

    private static string? One(string modelName, RandomState r, Tally tally, bool caloric)
    {
        HelmholtzModel model = modelName == "reference" ? ReferenceModel.Create(r.Names) : CubicModel.Create(r.Names);
        var flash = new Flash(model);
        var s = flash.TemperaturePressure(r.TemperatureK, r.PressurePa, r.Z);
        tally.RejectedRoots += flash.RejectedRoots;
        switch (s.Phases.Count)
        {
            case 1: tally.OnePhase++; break;
            case 2: tally.TwoPhase++; break;
            default: tally.ThreePhase++; break;
        }
        var check = new IndependentCheck(model, 5);
        if (check.Fault(s, r.Z) is { } fault) return fault;
        if (!caloric) return null;
        tally.Caloric++;
        foreach (bool enthalpy in new[] { true, false })
        {
            double target = enthalpy ? s.MolarEnthalpy : s.MolarEntropy;
            var back = enthalpy ? flash.PressureEnthalpy(r.PressurePa, target, r.Z) : flash.PressureEntropy(r.PressurePa, target, r.Z);
            double scale = model.GasConstant * (enthalpy ? 300 : 1), found = enthalpy ? back.MolarEnthalpy : back.MolarEntropy;
            string name = enthalpy ? "(p,h)" : "(p,s)";
            if (!(Math.Abs(found - target) < 1e-8 * scale)) return $"{name} closes to {found - target:0.0e+0} only";
            if (!(Math.Abs(back.TemperatureK - s.TemperatureK) < 1e-6 * s.TemperatureK)) return $"{name} returns {back.TemperatureK} K for {s.TemperatureK} K";
            if (check.Fault(back, r.Z) is { } why) return $"{name} answer: {why}";
        }
        return null;
    }
}
