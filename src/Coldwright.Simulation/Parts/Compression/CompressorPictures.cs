using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts.Compression;

/// <summary>The compressor's point within its limits: flow, power and temperature against pressure ratio at its suction state.</summary>
internal static class CompressorPictures
{
    private const int Steps = 14;
    private const double LowestRatio = 1.6, Beyond = 1.15;

    public static IEnumerable<PartPicture> All(PartContext c, CompressorPart part, Func<CompressorDuty, CompressorPerformance> run, CompressorPerformance at, CompressorDuty duty)
    {
        double here = duty.DischargePressurePa / duty.SuctionPressurePa;
        var curve = Curve(run, duty, here, at);
        if (curve.Count < 2) yield break;
        var limits = Limits(at, duty, curve, part).Where(u => u.X < curve[^1].Ratio).ToArray();
        var x = new PictureAxis("pressure ratio, discharge over suction", "1");
        LinePicture Picture(string id, string title, string reading, PictureAxis y, PictureLine line, double value, params PictureLine[] more) => new(id, title, reading)
        {
            X = x, Y = y, Lines = [line, .. more], Marks = [new("this cooler", PictureRole.Plain, here, value)], Uprights = limits, FromZero = y.Unit != "K",
        };
        yield return Picture("flow", "How much it moves", "The line is the flow at the suction state of this cooler while the discharge pressure changes, with the band of the model around it; the dot is this cooler. It falls with the pressure ratio because gas left in the clearance expands again and more leaks back. The dotted upright lines are the pressure ratios at which a limit of the machine is met.",
            new("flow by mass", "kg/s"), new("flow", "flow", PictureRole.HighSide, [.. curve.Select(p => (p.Ratio, p.At.MassFlow))], false, at.FlowUncertainty), at.MassFlow);
        yield return Picture("power", "What it takes", "Electrical power at the same suction state, with its band, and below it the power that an ideal compressor without any loss would take for the same flow. The distance between the two is lost in heating, ports, leakage, friction and motor.",
            new("power", "W"), new("electrical", "electrical power", PictureRole.Loss, [.. curve.Select(p => (p.Ratio, p.At.ElectricalPowerW))], false, at.PowerUncertainty), at.ElectricalPowerW,
            new PictureLine("ideal", "ideal compression", PictureRole.Cooling, [.. curve.Select(p => (p.Ratio, p.At.ElectricalPowerW * p.At.OverallIsentropicEfficiency))], true));
        var temperatures = new List<PictureLine> { new("shell", "shell", PictureRole.LowSide, [.. curve.Select(p => (p.Ratio, p.At.ShellTemperatureK))]) };
        double most = part.MaximumDischargeTemperatureK;
        temperatures.Add(new("limit", "allowed at the discharge", PictureRole.Leak, [(curve[0].Ratio, most), (curve[^1].Ratio, most)], true));
        yield return Picture("temperature", "How hot it gets", "Temperatures of the gas at the discharge port and of the shell, against the highest allowed at the discharge. Oil breaks down and motors age above it.",
            new("temperature", "K"), new("discharge", "discharge port", PictureRole.HighSide, [.. curve.Select(p => (p.Ratio, p.At.Discharge.TemperatureK))]), at.Discharge.TemperatureK, [.. temperatures]);
    }

    // where the machine has no answer any more the curve ends
    private static List<(double Ratio, CompressorPerformance At)> Curve(Func<CompressorDuty, CompressorPerformance> run, CompressorDuty duty, double here, CompressorPerformance at)
    {
        double top = Math.Max(1.5 * here, Beyond * 10);
        var curve = new List<(double, CompressorPerformance)>();
        bool passed = false;
        for (int i = 0; i <= Steps; i++)
        {
            double ratio = LowestRatio + (top - LowestRatio) * i / Steps;
            if (!passed && ratio >= here)
            {
                curve.Add((here, at));
                passed = true;
            }
            if (Math.Abs(ratio - here) < 1e-3 * here) continue;
            try
            {
                curve.Add((ratio, run(duty with { DischargePressurePa = ratio * duty.SuctionPressurePa })));
            }
            catch (SolveException) when (ratio > here)
            {
                break;
            }
        }
        return curve;
    }

    private static IEnumerable<PictureUpright> Limits(CompressorPerformance at, CompressorDuty duty, List<(double Ratio, CompressorPerformance At)> curve, CompressorPart part)
    {
        foreach (var limit in at.Limits.Select(CompressorRater.Si))
            if (limit.What == "pressure ratio") yield return new("highest pressure ratio", PictureRole.Leak, limit.Limit);
            else if (limit.What == "discharge pressure") yield return new("allowed pressure", PictureRole.Leak, limit.Limit / duty.SuctionPressurePa);
        if (Crossing(curve, p => p.Discharge.TemperatureK, part.MaximumDischargeTemperatureK) is { } ratio) yield return new("allowed discharge temperature", PictureRole.Leak, ratio);
    }

    private static double? Crossing(List<(double Ratio, CompressorPerformance At)> curve, Func<CompressorPerformance, double> value, double limit)
    {
        for (int i = 1; i < curve.Count; i++)
        {
            double a = value(curve[i - 1].At), b = value(curve[i].At);
            if (a <= limit && b > limit) return curve[i - 1].Ratio + (limit - a) / (b - a) * (curve[i].Ratio - curve[i - 1].Ratio);
        }
        return null;
    }
}
