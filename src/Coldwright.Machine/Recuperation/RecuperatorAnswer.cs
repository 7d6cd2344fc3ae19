using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Streams;
using Coldwright.Numerics;

namespace Coldwright.Machine.Recuperation;

/// <summary>Makes the result of a solved state.</summary>
internal static class RecuperatorAnswer
{
    /// <summary>Heat from the warm stream into the wall, W.</summary>
    public static double Duty(RecuperatorEquations e, RecuperatorState s)
    {
        double sum = 0;
        for (int i = 0; i < e.Cells; i++) sum += e.Given(i, s);
        return sum;
    }

    public static RecuperatorResult Make(RecuperatorCase question, RecuperatorSolver solver, RecuperatorState s)
    {
        var e = solver.Equations;
        int n = e.Cells;
        double dx = question.Geometry.LengthM / n, duty = Duty(e, s), ua = 0, leak = 0, axial = 0;
        var stations = new RecuperatorStation[n];
        for (int i = 0; i < n; i++)
        {
            double u = 1 / (1 / e.HotG[i] + 1 / e.ColdG[i]), room = e.LeakInto(i, s);
            ua += u;
            leak += room;
            double upper = i > 0 ? e.Axial(i) * (s.Wall[i - 1] - s.Wall[i]) : 0, lower = i < n - 1 ? e.Axial(i + 1) * (s.Wall[i] - s.Wall[i + 1]) : 0;
            axial = Math.Max(axial, Math.Max(Math.Abs(upper), Math.Abs(lower)));
            stations[i] = new RecuperatorStation((i + 0.5) * dx, e.HotT(i), e.ColdT(i), s.Wall[i], e.HotPoint[i].Phases, e.ColdPoint[i].Phases, e.HotPoint[i].Quality, e.ColdPoint[i].Quality,
                e.HotLocal[i].Film, e.ColdLocal[i].Film, u / dx, e.Given(i, s) / dx, room / dx, 0.5 * (upper + lower),
                0.5 * (s.HotP[i] + s.HotP[i + 1]), 0.5 * (s.ColdP[i] + s.ColdP[i + 1]))
            {
                HotEnthalpy = 0.5 * (s.HotH[i] + s.HotH[i + 1]), ColdEnthalpy = 0.5 * (s.ColdH[i] + s.ColdH[i + 1]),
            };
        }
        double given = question.Hot.MolarFlow * (s.HotH[0] - s.HotH[n]), taken = question.Cold.MolarFlow * (s.ColdH[0] - s.ColdH[n]);
        double difference = question.Hot.TemperatureK - question.Cold.TemperatureK;
        double size = Math.Max(Math.Max(Math.Abs(given), Math.Abs(taken)), Math.Abs(leak));
        var warnings = Warnings(question, e);
        var pinch = Pinch(question, e, s, dx);
        if (pinch.DifferenceK < 0 == difference > 0 && Math.Abs(pinch.DifferenceK) > 1e-6)
            warnings.Add(FormattableString.Invariant($"the streams cross by {Math.Abs(pinch.DifferenceK):0.###} K at {pinch.PositionM:0.##} m: conduction along the metal or the leak drives heat backwards there, or the grid is too coarse"));
        return new RecuperatorResult
        {
            DutyW = duty,
            Largest = new Lazy<double>(() => CounterflowLimit.LargestDuty(question.Hot, question.Cold)),
            ConductanceWPerK = ua,
            Hot = Stream(question.Hot, s.HotH[0], s.HotH[n], s.HotP[n], Content(e.HotLocal, question.Geometry.Hot, dx)),
            Cold = Stream(question.Cold, s.ColdH[n], s.ColdH[0], s.ColdP[0], Content(e.ColdLocal, question.Geometry.Cold, dx)),
            Pinch = pinch,
            LeakW = leak,
            LargestAxialConductionW = axial,
            EnergyError = size > 0 ? (given + leak - taken) / size : 0,
            Profile = stations,
            Warnings = warnings,
            Report = new SolveReport(SolveStatus.Solved, solver.Iterations, RecuperatorSolver.Tolerance),
            State = s,
        };
    }

    private static RecuperatorStream Stream(StreamInlet inlet, double hIn, double hOut, double pOut, double content)
    {
        var outlet = inlet.Table.At(hOut, pOut);
        return new RecuperatorStream(inlet.TemperatureK, outlet.TemperatureK, hIn, hOut, inlet.PressurePa, pOut, outlet.Phases, content);
    }

    private static double Content(LocalAnswer[] local, FlowChannel channel, double dx)
    {
        double sum = 0;
        foreach (var l in local) sum += l.MeanDensity;
        return sum * channel.AreaM2 * dx;
    }

    // smallest in the direction from the warmer inlet to the colder one
    private static RecuperatorPinch Pinch(RecuperatorCase question, RecuperatorEquations e, RecuperatorState s, double dx)
    {
        double sign = question.HotIsWarmer ? 1 : -1, least = double.PositiveInfinity;
        var found = new RecuperatorPinch(0, 0, 0, 0);
        for (int i = 0; i < e.Cells; i++) At((i + 0.5) * dx, e.HotT(i), e.ColdT(i));
        foreach (int end in (int[])[0, e.Cells])
            At(end * dx, question.Hot.Table.Temperature(s.HotH[end], s.HotP[end], out _), question.Cold.Table.Temperature(s.ColdH[end], s.ColdP[end], out _));
        return found;

        void At(double x, double hot, double cold)
        {
            double d = sign * (hot - cold);
            if (d >= least) return;
            least = d;
            found = new RecuperatorPinch(hot - cold, x, hot, cold);
        }
    }

    private static List<string> Warnings(RecuperatorCase question, RecuperatorEquations e)
    {
        var warnings = new List<string>();
        foreach (var w in question.Hot.Table.Warnings.Concat(question.Cold.Table.Warnings)) if (!warnings.Contains(w)) warnings.Add(w);
        Ranges(warnings, "warm stream", e.HotPoint, question.Geometry.Hot, question.Hot, question.HotIsWarmer);
        Ranges(warnings, "cold stream", e.ColdPoint, question.Geometry.Cold, question.Cold, !question.HotIsWarmer);
        for (int i = 0; i < e.Cells; i++)
            if (question.Wall.Conductivity(Math.Max(1, 0.5 * (e.HotT(i) + e.ColdT(i)))).Warning is { } w) { warnings.Add(w); break; }
        if (question.Wall.Caveat is { } caveat) warnings.Add(caveat);
        if (e.HotPoint.Concat(e.ColdPoint).Any(p => p.Phases.Contains("second")))
            warnings.Add($"two liquids flow together: {LiquidMixing.CombineCorrelation.Name} ({LiquidMixing.CombineCorrelation.Source})");
        return warnings;
    }

    // each law once per stream, at the first place where it leaves its range
    private static void Ranges(List<string> warnings, string name, StreamPoint[] points, FlowChannel channel, StreamInlet inlet, bool condensing)
    {
        double g = inlet.MassFlow / channel.AreaM2;
        var said = new HashSet<string>();
        foreach (var p in points)
        {
            if (!LocalTransfer.TwoPhase(p)) continue;
            var flow = LocalTransfer.Asked(p, channel, g, inlet.Table.PseudoCriticalPressurePa);
            foreach (var w in condensing ? FlowRange.Condensing(flow) : FlowRange.Boiling(flow))
            {
                // the dry-out join stands in for the law at the vapour end
                string subject = w[..w.IndexOf(' ', w.IndexOf(':') + 2)];
                if (w.Contains("quality") || !said.Add(subject)) continue;
                warnings.Add($"{name}: {w}");
            }
        }
    }
}
