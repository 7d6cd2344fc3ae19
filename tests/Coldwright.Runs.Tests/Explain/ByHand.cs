using Coldwright.Blind;
using Coldwright.Machine.Files;
using Coldwright.Numerics;
using Coldwright.Runs.Explain;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>Figures that can be worked out by hand.</summary>
public class ByHand
{
    /// <summary>A lumped body warms as T_room - T = (T_room - T_0) exp(-G t/C): the time to warm by d kelvin is C/G ln(D/(D - d)), and the time constant C/G comes back from any of them, exactly.</summary>
    [Fact]
    public void WarmUpOfALumpedBody()
    {
        const double room = 293, cold = 110, timeConstant = 7200, stop = 3600;
        double[] t = [.. Enumerable.Range(0, 4000).Select(i => 5.0 * i)];
        double[] k = [.. t.Select(x => x < stop ? cold + (room - cold) * Math.Max(0, 1 - x / 3000) : room - (room - cold) * Math.Exp(-(x - stop) / timeConstant))];
        var trace = new Trace { Lines = new Dictionary<Observable, TraceLine> { [Observable.Load] = new(t, k) }, EndS = stop, StopS = stop, LastS = t[^1], RoomK = room };
        foreach (double d in FeatureReader.Warmings)
            Assert.Equal(Math.Log(timeConstant), FeatureReader.Value(trace, new Feature(FeatureKind.LnWarmUp, Observable.Load, d))!.Value, 0.002);
    }

    /// <summary>A watt boils off 0.538 L of nitrogen a day: latent heat 199 kJ/kg, liquid 807 kg/m3 at 1.013 bar (Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361).</summary>
    [Fact]
    public void BoilOffByWeighing()
    {
        var folder = MachineFolderReader.ReadTexts(BlindMachine.Yaml.Replace("gas: argon", "gas: nitrogen", StringComparison.Ordinal));
        var model = BatchModel.Of(folder.Machine!, folder.Layout!)!;
        double litresPerDay = 86400 / model.LatentJPerKg / 806.6 * 1000;
        Assert.Equal(0.538, litresPerDay, 0.003);
    }

    /// <summary>Gas taken from a receiver at 150 bar: by the ideal gas 50 L and 50 bar would be 2.87 kg of nitrogen at 20 °C; the real gas (Z near 1.0 there) within 3 %.</summary>
    [Fact]
    public void MassFromAReceiversPressureDrop()
    {
        const string yaml = """
            name: receiver
            start: 2026-05-02 08:00
            room: {temperature: 20 °C, pressure: 1000 mbara}
            channels:
              bottle: {at: bottle, sensor: pressure-gauge, class: 0.5, span: 250 bar}
            readings:
              - {time: "08:05", values: {bottle: 150 bara}}
              - {time: "09:05", values: {bottle: 100 bara}}
            """;
        var record = Make.Record(yaml, "");
        var feed = new Machine.Description.FeedPart { Name = "bottle", Gas = "nitrogen", PressurePa = 18e5, Receiver = new() { VolumeM3 = 0.05, PressurePa = 150e5 } };
        double ideal = 0.05 * 50e5 * 0.0280134 / (8.314462618 * 293.15);
        Assert.InRange(BatchObserver.FromReceiver(record, feed, 600, 4200)!.Value / ideal, 0.9, 1.03);
    }

    /// <summary>
    /// Argon at 18 bar from 293 K to liquid at 1 atm, by hand: 161.1 kJ/kg of vaporisation and 1395 kg/m3 at 87.3 K (Tegeler, Span and Wagner, J. Phys. Chem. Ref. Data 28 (1999) 779), gas at 5/2 R; liquid 1.2 kJ/(kg K),
    /// and 4 % less for the gas under pressure, from memory. A hundred watts at the condensing temperature then leave 0.9 L/h after the flash, within a tenth.
    /// </summary>
    [Fact]
    public void LitresPerHourOfAHundredWatts()
    {
        var folder = MachineFolderReader.ReadTexts(BlindMachine.Yaml);
        var model = BatchModel.Of(folder.Machine!, folder.Layout!)!;
        double arrivesK = folder.Layout!.FeedPrecooled ? folder.Layout.Precooler!.OutletTemperatureK : 293.15, condensingK = model.CondensingK;
        double warm = 161.1 + 0.5203 * (arrivesK - 87.3) * 0.96, liquid = 1.2 * (condensingK - 87.3), flash = liquid / 161.1;
        double byHand = 0.1 * 3600 / (warm - liquid) / 1.395 * (1 - flash);
        double[] load = [293, condensingK + 1, condensingK - 1, condensingK - 10];
        double[] same = [0, 0, 0, 0];
        var course = new Simulation.Cooldown.Course
        {
            TimeS = [0, 100, 200, 300], LoadK = load, ThrottleInletK = load, CoilOutletK = load, PrecooledK = load, ReturnK = load, DischargeK = load, HighPressurePa = same, LowPressurePa = same, MassFlow = same, CompressorW = same, PowerW = same,
            LeakW = same, CoolingW = same, StoredW = [.. load.Select(_ => (40.0, 50.0, 10.0))], AtStop = [], StandstillPa = 1e5, StopK = load[^1],
        };
        Assert.Equal(1, model.LitresPerHour(course) / byHand, 0.1);
    }

    /// <summary>A feed compressor that has faded is a cause only where the file describes one, and then what is fed falls with its flow.</summary>
    [Fact]
    public void AFadedFeedCompressorFeedsLess()
    {
        string pumped = BlindMachine.Yaml.Replace("    pressure: 17 barg\n", "    pressure: 17 barg\n    supply-pressure: 6 barg\n    compressor-efficiency: 0.5\n    compressor: {type: reciprocating, displacement: 1.2 cm3, speed: 1450 rpm}\n", StringComparison.Ordinal);
        var folder = MachineFolderReader.ReadTexts(pumped);
        Assert.True(folder.IsGood, string.Join('\n', folder.Problems));
        var model = BatchModel.Of(folder.Machine!, folder.Layout!)!;
        Assert.True(model.HasFeedCompressor);
        double[] t = [0, 1000, 20000], k = [293, 105, 100], flat = [0, 0, 0];
        var course = new Simulation.Cooldown.Course
        {
            TimeS = t, LoadK = k, ThrottleInletK = k, CoilOutletK = k, PrecooledK = k, ReturnK = k, DischargeK = k, HighPressurePa = flat, LowPressurePa = flat, MassFlow = flat, CompressorW = flat, PowerW = flat, LeakW = flat, CoolingW = flat,
            StoredW = [.. k.Select(_ => (200.0, 100.0, 0.0))], AtStop = [], StandstillPa = 1e5, StopK = 100,
        };
        var seen = new Trace { Lines = new Dictionary<Observable, TraceLine> { [Observable.Load] = new(t, k) }, EndS = 18000, LastS = 20000, RoomK = 293, Batch = new BatchTrace { FeedS = 600 } };
        double sound = model.Predict(course, seen, new BatchOddity()).FedKg!.Value, half = model.Predict(course, seen, new BatchOddity(FeedFaded: 0.5)).FedKg!.Value;
        Assert.Equal(0.5, half / sound, 0.01);
        // swept 1.2 cm3 at 24.2 /s of argon at 7 bar and 293 K (11.5 kg/m3 as a perfect gas) for ten minutes is 200 g; clearance, leak and a warm shell take a part of it
        Assert.InRange(sound, 0.4 * 0.2, 0.2);
    }

    [Fact]
    public void ARecordWithoutTheVesselsTemperatureIsRefusedInWords()
    {
        var folder = MachineFolderReader.ReadTexts(BlindMachine.Yaml);
        var record = Make.Record(Make.OneChannel.Replace("at: coil", "at: room", StringComparison.Ordinal), Make.Log([("2026-03-14 09:00:00", 20), ("2026-03-14 09:00:10", 19), ("2026-03-14 09:00:20", 18), ("2026-03-14 09:00:30", 18)]));
        var e = Assert.Throws<SolveException>(() => Explainer.Explain(record with { Machine = folder.Machine }, folder.Layout!, cancel: TestContext.Current.CancellationToken));
        Assert.Contains("temperature of the vessel", e.Report.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void ATooShortRecordIsRefusedInWords()
    {
        var folder = MachineFolderReader.ReadTexts(BlindMachine.Yaml);
        var record = Make.Record(Make.OneChannel.Replace("at: coil", "at: vessel", StringComparison.Ordinal), Make.Log(Enumerable.Range(0, 30).Select(i => (FormattableString.Invariant($"2026-03-14 09:00:{i:00}"), 20.0 - i))));
        var e = Assert.Throws<SolveException>(() => Explainer.Explain(record with { Machine = folder.Machine }, folder.Layout!, cancel: TestContext.Current.CancellationToken));
        Assert.Contains("15 min are the least", e.Report.Advice, StringComparison.Ordinal);
    }
}
