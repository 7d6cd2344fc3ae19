using Coldwright.Fluids.States;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Exergy account of a closed loop with the room as environment: every loss is what enters a part less what leaves it, so that the account closing is a check.</summary>
internal static class ClosedExergy
{
    public static ExergyAccount Build(Hardware h, LoopPass p, ClosedStates s, PowerSplit power, double mainW, double compressed, ProductMade made, ProductSolver? product, double precoolDuty)
    {
        double t0 = h.RoomK, n = p.Flow, bypass = compressed - n, carnot = t0 / p.LoadK - 1, gross = p.GrossCoolingW, leakW = p.ColdEndLeakW;
        double B(FluidState x) => x.MolarEnthalpy - t0 * x.MolarEntropy;
        double joined = bypass > 0 && s.Bypass is { } b ? n * B(s.AfterWarmExchanger) + bypass * B(b) : n * B(s.AfterWarmExchanger);
        var losses = new List<(string, double)>
        {
            ("compressor", mainW - compressed * (B(s.Discharge) - B(s.Suction))),
            ("aftercooler", compressed * (B(s.Discharge) - B(s.Aftercooled))),
            ("recuperator", n * (B(s.RecuperatorInlet) - B(s.ThrottleInlet) + B(s.CoilOutlet) - B(s.LowOutlet))),
            ("throttle", n * (B(s.ThrottleInlet) - B(s.ThrottleOutlet))),
            ("coil", n * (B(s.ThrottleOutlet) - B(s.CoilOutlet)) - gross * carnot),
            ("heat leak", leakW * carnot),
            ("fans", power.FansW),
            ("return line and suction", joined - compressed * B(s.Suction)),
        };
        if (p.WarmEndLeakW != 0) losses.Add(("tubes at the warm end", n * (B(s.LowOutlet) - B(s.Returned))));
        else losses.Add(("low side", n * (B(s.LowOutlet) - B(s.Returned))));
        losses.Add((h.Layout.WarmExchanger is null ? "return gas" : "warm exchanger", n * (B(s.Aftercooled) - B(s.BeforePrecooler) + B(s.Returned) - B(s.AfterWarmExchanger))));
        if (s.Bypass is { } past && bypass > 0) losses.Add(("buffer", bypass * (B(s.Aftercooled) - B(past))));
        double feedExergy = 0, productExergy, feedPrecool = 0;
        if (product is not null)
        {
            double Bp(double enthalpy, double entropy) => enthalpy - product.Environment.MolarEnthalpy - t0 * (entropy - product.Environment.MolarEntropy);
            double Of(FluidState x) => Bp(x.MolarEnthalpy, x.MolarEntropy);
            double supply = Of(product.Supply), ready = Of(product.Compressed), arrives = Of(made.Arriving!), leaves = Bp(made.Leaving.Enthalpy, made.Leaving.Entropy), inFlask = 0, vapour = 0;
            foreach (var phase in made.LetDown!.Phases)
            {
                double x = phase.Fraction * Bp(phase.MolarEnthalpy, phase.MolarEntropy);
                if (phase.Kind == PhaseKind.Vapour) vapour += x; else inFlask += x;
            }
            double f = made.FeedMol;
            feedExergy = f * supply;
            productExergy = f * inFlask;
            feedPrecool = f * (arrives - ready);
            if (power.FeedW > 0 || supply != ready) losses.Add(("feed compressor", power.FeedW - f * (ready - supply)));
            losses.Add((f > 0 ? "cooling and condensing the feed" : "cooling left unused", (gross - leakW) * carnot - f * (leaves - arrives)));
            losses.Add(("let-down valve", f * (leaves - inFlask - vapour)));
            losses.Add(("flash vapour", f * vapour));
        }
        else productExergy = (gross - leakW) * carnot;
        double mixturePrecool = n * (B(s.RecuperatorInlet) - B(s.BeforePrecooler));
        if (precoolDuty > 0 || power.PrecoolW > 0) losses.Add(("precooler", power.PrecoolW - mixturePrecool - feedPrecool));
        else if (mixturePrecool != 0) losses.Add(("precooler", -mixturePrecool));
        return new ExergyAccount(power.TotalW, feedExergy, productExergy, losses.Where(l => l.Item2 != 0).OrderByDescending(l => l.Item2).ToArray());
    }
}
