using Coldwright.Fluids.States;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Rating;

/// <summary>
/// Exergy account with the room as environment: electrical input + exergy of the feed gas = exergy of the product (or of
/// the cooling delivered) + losses by name. Every loss is what enters a part less what leaves it; nothing is a remainder, so
/// the account closing is a check.
/// </summary>
internal static class ExergyBuilder
{
    public sealed record Streams(double Flow, FluidState Suction, FluidState Discharge, FluidState Aftercooled, FluidState BeforePrecooler,
        FluidState RecuperatorInlet, FluidState ThrottleInlet, FluidState ThrottleOutlet, FluidState CoilOutlet, FluidState LowOutlet, FluidState Returned);

    public static ExergyAccount Build(Streams m, LoopSolution s, PowerSplit power, RoomDescription room, double loadK,
        double feedMol, ProductSolver? product, FluidState? arriving, (double Enthalpy, double Entropy, double Density) leaving, FluidState? letDown, double precoolDuty)
    {
        double t0 = room.TemperatureK, n = m.Flow;
        double B(FluidState x) => x.MolarEnthalpy - t0 * x.MolarEntropy;
        double carnot = t0 / loadK - 1, gross = s.GrossCoolingW, leakW = s.ColdEndLeakW;
        var losses = new List<(string, double)>
        {
            ("compressor", power.MainW - n * (B(m.Discharge) - B(m.Suction))),
            ("aftercooler", n * (B(m.Discharge) - B(m.Aftercooled))),
            ("recuperator", n * (B(m.RecuperatorInlet) - B(m.ThrottleInlet) + B(m.CoilOutlet) - B(m.LowOutlet))),
            ("throttle", n * (B(m.ThrottleInlet) - B(m.ThrottleOutlet))),
            ("coil", n * (B(m.ThrottleOutlet) - B(m.CoilOutlet)) - gross * carnot),
            ("heat leak", leakW * carnot),
            ("fans", power.FansW),
        };
        double warmGain = n * (B(m.LowOutlet) - B(m.Returned));
        if (s.WarmEndLeakW != 0) losses.Add(("tubes at the warm end", warmGain));
        if (s.Warm is not null) losses.Add(("warm exchanger", n * (B(m.Aftercooled) - B(m.BeforePrecooler) + B(m.Returned) - B(m.Suction))));
        double feedExergy = 0, productExergy;
        double feedPrecool = 0;
        if (product is not null)
        {
            double Bp(double h, double sMolar) => h - product.Environment.MolarEnthalpy - t0 * (sMolar - product.Environment.MolarEntropy);
            double supply = Bp(product.Supply.MolarEnthalpy, product.Supply.MolarEntropy), compressed = Bp(product.Compressed.MolarEnthalpy, product.Compressed.MolarEntropy);
            double arrives = Bp(arriving!.MolarEnthalpy, arriving.MolarEntropy), leaves = Bp(leaving.Enthalpy, leaving.Entropy);
            double inFlask = 0, vapour = 0;
            foreach (var p in letDown!.Phases)
            {
                double b = p.Fraction * Bp(p.MolarEnthalpy, p.MolarEntropy);
                if (p.Kind == PhaseKind.Vapour) vapour += b; else inFlask += b;
            }
            feedExergy = feedMol * supply;
            productExergy = feedMol * inFlask;
            feedPrecool = feedMol * (arrives - compressed);
            if (power.FeedW > 0 || supply != compressed) losses.Add(("feed compressor", power.FeedW - feedMol * (compressed - supply)));
            // without product the net cooling is that of the no-load temperature: zero to the root finder's tolerance
            losses.Add((feedMol > 0 ? "cooling and condensing the feed" : "cooling left unused", (gross - leakW) * carnot - feedMol * (leaves - arrives)));
            losses.Add(("let-down valve", feedMol * (leaves - inFlask - vapour)));
            losses.Add(("flash vapour", feedMol * vapour));
        }
        else productExergy = (gross - leakW) * carnot;
        double mixturePrecool = n * (B(m.RecuperatorInlet) - B(m.BeforePrecooler));
        if (precoolDuty > 0 || power.PrecoolW > 0) losses.Add(("precooler", power.PrecoolW - mixturePrecool - feedPrecool));
        else if (mixturePrecool != 0) losses.Add(("precooler", -mixturePrecool));
        return new ExergyAccount(power.TotalW, feedExergy, productExergy, losses.OrderByDescending(l => l.Item2).ToArray());
    }
}
