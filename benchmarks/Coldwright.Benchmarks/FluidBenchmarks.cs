using System.Diagnostics;
using System.Globalization;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Benchmarks;

/// <summary>
/// The property engine's rows. Five components: nitrogen, methane, ethane, propane, isobutane. "State" is density and
/// properties with the phase known; flashes carry their stability certificate: the call a user gets. Each call takes
/// another state out of a list, so that nothing is learnt by heart.
/// </summary>
internal static class FluidBenchmarks
{
    private static readonly string[] Five = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] Charge = [0.30, 0.25, 0.18, 0.15, 0.12];

    /// <summary>All rows.</summary>
    public static IEnumerable<Row> Rows()
    {
        yield return State("reference/state/1", ReferenceModel.Create(["nitrogen"]), [1]);
        yield return State("reference/state/5", ReferenceModel.Create(Five), Charge);
        yield return PressureEnthalpy("reference/ph-flash/1", ReferenceModel.Create(["nitrogen"]), [1]);
        yield return TemperaturePressure("reference/pT-flash/5/cold", ReferenceModel.Create(Five), warm: false);
        yield return TemperaturePressure("reference/pT-flash/5/warm", ReferenceModel.Create(Five), warm: true);
        yield return PressureEnthalpy("reference/ph-flash/5/cold", ReferenceModel.Create(Five), Charge);
        yield return TemperaturePressure("cubic/pT-flash/5/cold", CubicModel.Create(Five), warm: false);
        yield return TemperaturePressure("cubic/pT-flash/5/warm", CubicModel.Create(Five), warm: true);
        yield return new Row("process/first-state", FirstState);
    }

    // gas at 20 temperatures from 280 K to 318 K and 2 bar
    private static Row State(string name, HelmholtzModel model, double[] z)
    {
        var e = model.CreateEvaluation();
        int i = 0;
        return Row.Of(name, () =>
        {
            i = (i + 1) % 20;
            e.SetIsotherm(280 + 2 * i, z);
            double rho = DensityRoots.Find(e, 2e5, Branch.Vapour);
            PhaseProperties.Caloric(model, e, rho);
            PhaseProperties.Second(model, e, rho);
        });
    }

    // two-phase states at 40 temperatures from 130 K to 247 K and 18 bar, 3 K apart
    private static Row TemperaturePressure(string name, HelmholtzModel model, bool warm)
    {
        var flash = new Flash(model);
        int i = 0;
        return Row.Of(name, () =>
        {
            i = (i + 1) % 40;
            if (!flash.TrySolve(130 + 3 * i, 18e5, Charge, warm)) throw new InvalidOperationException($"no answer at {130 + 3 * i} K");
            flash.Enthalpy();
        });
    }

    private static Row PressureEnthalpy(string name, HelmholtzModel model, double[] z)
    {
        var flash = new Flash(model);
        var h = Enumerable.Range(0, 10).Select(i => flash.TemperaturePressure(130 + 12 * i, 18e5, z).MolarEnthalpy).ToArray();
        int k = 0;
        return Row.Of(name, () =>
        {
            // 36 K from the one before, beyond what a neighbour's phases are used for: a cold start
            k = (k + 3) % h.Length;
            if (!flash.TrySolvePressureEnthalpy(18e5, h[k], z)) throw new InvalidOperationException($"no answer at {h[k]} J/mol");
        });
    }

    // a fresh process, from its start to the answer of one reference state; 31 processes
    private static Measurement FirstState()
    {
        var times = new List<double>();
        // started by "dotnet X.dll" or by the program's own launcher
        bool hosted = Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet";
        string[] arguments = hosted ? [Environment.GetCommandLineArgs()[0], "first-state"] : ["first-state"];
        for (int i = 0; i < 31; i++)
        {
            var clock = Stopwatch.StartNew();
            using var process = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, arguments) { RedirectStandardOutput = true })!;
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            times.Add(clock.Elapsed.TotalMicroseconds);
        }
        times.Sort();
        return new Measurement("process/first-state", times[15], 0);
    }

    /// <summary>What the fresh process does: one state of the five-component mixture.</summary>
    public static void PrintFirstState()
    {
        var state = new Flash(ReferenceModel.Create(Five)).TemperaturePressure(200, 18e5, Charge);
        Console.WriteLine(state.MolarEnthalpy.ToString(CultureInfo.InvariantCulture));
    }
}
