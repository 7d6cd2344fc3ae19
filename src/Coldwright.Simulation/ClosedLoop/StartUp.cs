using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>The loop at rest and in its first minutes: does the motor start, how high does the high side go while all is warm, what would hold it down.</summary>
internal static class StartUp
{
    private const double WarmLoadDropK = 3;

    public static StartUpResult Of(Hardware h, HelmholtzModel model, LoopTarget target, double chargeMol, double molarMass, LoopAccuracy accuracy, CancellationToken cancel)
    {
        var (pressure, liquid) = Standstill.Of(h, model, chargeMol);
        var motor = h.Compressor.Machine.Traits.Kind == CompressorKind.Rotary ? StartingMotor.RunCapacitor : StartingMotor.ResistanceStart;
        var start = StartingCheck.Judge(h.Compressor.Machine, new StartingConditions(pressure, pressure, motor));
        double? allowed = Allowed(h), needed = null, firstCharge = null;
        // nothing is cold yet, neither load nor precooler
        var warm = h with { ChargeMol = chargeMol, Precooler = null, Layout = h.Layout with { Precooler = null } };
        var free = target with { Held = HeldPressure.Neither };
        var first = Warm(warm, model, free, accuracy, cancel);
        if (allowed is { } most && first is not null)
        {
            needed = 0;
            if (first.DischargePa > most * 1.0001)
            {
                // what the warm loop holds at the allowed pressure without a buffer; the rest must find a place, or come later
                var held = new LoopTarget(HeldPressure.High, HeldAnswer.Charge, most - h.Layout.Aftercooler.PressureDropPa, target.LowPa, target.AftercoolerDropPa);
                if (Warm(warm with { Buffer = null }, model, held, accuracy, cancel) is { } limited)
                {
                    double loop = limited.Moles.Sum(), density = new Flash(model).TemperaturePressure(h.RoomK, 0.95 * most, limited.Tables.Z).MolarDensity;
                    needed = Math.Max(0, chargeMol - loop) / density;
                    if (loop < chargeMol) firstCharge = loop * molarMass;
                }
                else needed = null;
            }
        }
        return new StartUpResult
        {
            StandstillPressurePa = pressure,
            StandstillLiquidShare = liquid,
            ReadStandstillPa = h.Machine.Operation.StandstillPressurePa,
            Motor = start.Verdict switch { StartingVerdict.Starts => "starts", StartingVerdict.Doubtful => "doubtful", _ => "does not start" },
            HighestStandstillPa = start.HighestStandstillPressurePa,
            FirstHighPa = first?.DischargePa,
            FirstLowPa = first?.State.SuctionPa,
            FirstDischargeK = first?.Compressor.Discharge.TemperatureK,
            AllowedHighPa = allowed,
            BufferNeededM3 = needed,
            FirstChargeKg = firstCharge,
            Sentence = Sentence(pressure, start, first, allowed, needed, firstCharge, h),
        };
    }

    private static LoopPass? Warm(Hardware h, HelmholtzModel model, LoopTarget target, LoopAccuracy accuracy, CancellationToken cancel)
    {
        try
        {
            var evaluator = new LoopEvaluator(h, model, accuracy, cancel);
            var closer = new LoopCloser(evaluator, target);
            return closer.Close(WarmStart.Guess(h, model, target, cancel), h.RoomK - WarmLoadDropK, accuracy.Rough, null).Pass;
        }
        catch (SolveException)
        {
            return null;
        }
    }

    // the lowest pressure that a part of the high side states
    private static double? Allowed(Hardware h)
    {
        var stated = new Part?[] { h.Layout.Compressor, h.Layout.Aftercooler, h.Layout.WarmExchanger, h.Layout.Precooler, h.Layout.Recuperator }.Select(p => p?.MaximumPressurePa).OfType<double>()
            .Concat(h.Machine.PartsOf<ReliefPart>().Where(r => h.Machine.Lines.Any(l => l.To == r.Name && h.Layout.LoopPath.Any(s => s.Part.Name == Machine.Insulation.ColdBoxContents.PartName(l.From)))).Select(r => r.SetPressurePa));
        return stated.DefaultIfEmpty(double.NaN).Min() is var least && double.IsNaN(least) ? null : least;
    }

    private static Spoken Sentence(double pressure, StartingResult start, LoopPass? first, double? allowed, double? needed, double? firstCharge, Hardware h)
    {
        string motor = start.Verdict switch
        {
            StartingVerdict.Starts => "the motor runs up against that",
            StartingVerdict.Doubtful => "whether the motor runs up against that is doubtful",
            _ => "the motor does not run up against that",
        };
        var rest = Spoken.Of($"At rest and warm both sides stand at {Pressure(pressure, "0.#")}; {motor}.");
        if (first is null) return rest + " The first minutes were not found.";
        var high = rest + Spoken.Of($" While all is warm the high side runs at {Pressure(first.DischargePa, "0.#")}");
        if (allowed is not { } most) return high + "; no part states what is allowed.";
        var limit = Spoken.Of($"{Pressure(most, "0.#")} allowed");
        if (needed is null) return Spoken.Of($"{high}, {limit}.");
        if (needed == 0) return Spoken.Of($"{high}, within the {limit}.");
        string have = h.Buffer is { } b ? FormattableString.Invariant($" in place of the {1e3 * b.VolumeM3:0.#} L there are") : "";
        return Spoken.Of($"{high}, above the {limit}: a buffer of {1e3 * needed.Value:0.#} L{have} would hold it, or only {1e3 * firstCharge ?? 0:0} g let in at first and the rest once it is cold.");
    }
}
