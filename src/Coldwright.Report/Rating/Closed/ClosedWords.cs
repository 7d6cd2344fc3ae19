using Coldwright.Machine.Description;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>What a closed loop adds to a rating, in words and figures, the same on the page and in the terminal.</summary>
internal sealed class ClosedWords
{
    /// <summary>Name of the pressure of the loop that stands still.</summary>
    public const string AtRest = "At rest";

    private readonly OperationDescription _operation;
    private readonly LoopState _loop;
    private readonly ClosedLoopResult _closed;
    private readonly Readout _readout;
    private readonly SensitivityWords _units;

    public ClosedWords(RatingReport report, ClosedLoopResult closed, Readout readout)
    {
        (_operation, _loop, _closed, _readout) = (report.Machine.Operation, report.Main.Loop, closed, readout);
        _units = new(readout, report.Machine.Room.PressurePa);
    }

    /// <summary>What was held, and what followed.</summary>
    public string Held
    {
        get
        {
            var pressures = _closed.Held switch
            {
                HeldPressure.Neither => "Nothing is held: both pressures, the flow and the mixture that circulates follow from the hardware and the charge",
                HeldPressure.High => $"The high pressure is held at {_readout.PressureFull(_loop.HighPressurePa)}; the low one follows from the hardware",
                HeldPressure.Low => $"The low pressure is held at {_readout.PressureFull(_loop.LowPressurePa)}; the high one follows from the hardware",
                _ => $"Both pressures are held, at {_readout.PressureFull(_loop.HighPressurePa)} and {_readout.PressureFull(_loop.LowPressurePa)}",
            };
            string[] answers = [.. Answers];
            return answers.Length == 0 ? $"{pressures}." : $"{pressures}. That asks for {string.Join(" and ", answers)}.";
        }
    }

    /// <summary>Charge and throttle where they are answers.</summary>
    private IEnumerable<string> Answers
    {
        get
        {
            if (_closed.ChargeIsAnswer) yield return $"a charge of {Grams(_closed.ChargeKg)}";
            if (_closed.ThrottleLengthM is { } length) yield return $"a capillary of {_readout.Figures(length, 3)} m";
            if (_closed.ThrottleOpening is { } opening) yield return $"a valve open {_readout.Figures(opening, 3)} times as far as described";
        }
    }

    /// <summary>The two pressures and the pressure at rest, each with its band and the file's reading beside it.</summary>
    public IEnumerable<(string Name, string Value, string Beside)> Pressures
    {
        get
        {
            yield return ("High pressure", WithBand(_readout.PressureFull(_loop.HighPressurePa), "high_pressure_Pa"), Beside(_loop.HighPressurePa, _operation.HighPressurePa, _closed.Held is HeldPressure.High or HeldPressure.Both));
            yield return ("Low pressure", WithBand(_readout.PressureFull(_loop.LowPressurePa), "low_pressure_Pa"), Beside(_loop.LowPressurePa, _operation.LowPressurePa, _closed.Held is HeldPressure.Low or HeldPressure.Both));
            var start = _closed.StartUp;
            var liquid = start.StandstillLiquidShare > 0.005 ? $", {_readout.Percent(start.StandstillLiquidShare)} of it liquid" : "";
            yield return (AtRest, _readout.PressureFull(start.StandstillPressurePa) + liquid, Beside(start.StandstillPressurePa, start.ReadStandstillPa, false));
        }
    }

    /// <summary>Flow and discharge temperature with their bands.</summary>
    public IEnumerable<(string Name, string Value)> Flow
    {
        get
        {
            yield return ("Flow", WithBand($"{_readout.Figures(_loop.MassFlow * 1e3, 3)} g/s", "mass_flow_kg_s"));
            yield return ("Discharge", WithBand(_readout.TemperatureFull(_loop.DischargeTemperatureK), "discharge_temperature_K"));
            yield return ("Mixture into the recuperator", _readout.TemperatureFull(_closed.RecuperatorInletK));
            yield return ("Throttle", _closed.ThrottleChoked ? "choked: what lies behind it does not change its flow" : "not choked: its flow hangs on the pressure behind it too");
            if (_closed.PrecoolerEvaporatingK is { } evaporating)
                yield return ("Precooler", $"evaporates at {_readout.TemperatureFull(evaporating)}" + (_closed.PrecoolerRunShare is < 0.995 and { } share ? $" and runs {_readout.Percent(share)} of the time" : ""));
            yield return ("Coil", $"the load is {_readout.Difference(_closed.CoilDifferenceK)} warmer than the mixture leaving it");
        }
    }

    /// <summary>Charged and circulating mole fraction of every substance.</summary>
    public IEnumerable<(string Substance, double Charged, double Circulating)> Mixture =>
        _closed.Charged.Names.Select((n, i) => (n, _closed.Charged.MoleFractions[i], _loop.Composition.MoleFractions[i]));

    /// <summary>Places by what they hold, the fullest first.</summary>
    public IReadOnlyList<LoopContent> Contents => [.. _closed.Contents.OrderByDescending(c => c.Kg)];

    /// <summary>Where the charge is, in one sentence.</summary>
    public string Ledger => $"{Grams(_closed.ChargeKg)}, {_readout.Percent(_closed.LiquidShare)} of it liquid: {string.Join("; ", Contents.Select(c => $"{c.Place} {_readout.Figures(c.Kg * 1e3, 3)} g{Liquid(c)}"))}";

    /// <summary>The buffer at work; null without one.</summary>
    public string? Buffer => _closed.Buffer is not { } b ? null
        : $"stands at {_readout.PressureFull(b.PressurePa)}; " + (b.Opening > 0.0005
            ? $"its valve is {_readout.Percent(b.Opening)} open and lets {_readout.Percent(b.BypassShare)} of the compressor's flow past"
            : "its valve is shut");

    /// <summary>At rest and in the first minutes.</summary>
    public string Start => _readout.Say(_closed.StartUp.Sentence);

    /// <summary>An amount by the scale.</summary>
    public string Grams(double kg) => _readout.Units == UnitSystem.Us && kg >= 0.02 ? $"{_readout.Figures(kg * 1e3, 3)} g ({_readout.Figures(kg / OunceKg, 3)} oz)" : $"{_readout.Figures(kg * 1e3, 3)} g";

    /// <summary>The band of a headline figure; empty without sensitivities, and where it is too narrow to be seen beside the value.</summary>
    public string Band(string figure) =>
        _closed.Sensitivity?.Figures.FirstOrDefault(f => f.Id == figure) is { } f && f.Deviation > NarrowShare * Math.Abs(f.Value) ? _units.Deviation(f) : "";

    private const double NarrowShare = 5e-4;

    // NIST Special Publication 811 (2008), Appendix B.8
    private const double OunceKg = 0.028349523125;

    private string Liquid(LoopContent c) => c.LiquidShare > 0.005 ? $" ({_readout.Percent(c.LiquidShare)} liquid)" : "";

    private string WithBand(string value, string figure) => Band(figure) is { Length: > 0 } band ? $"{value} {band}" : value;

    // What a builder can check on the gauge.
    private string Beside(double foundPa, double? readPa, bool held)
    {
        if (held) return "held";
        if (readPa is not { } read) return "";
        var off = foundPa - read;
        if (Math.Abs(off) < 0.005 * read) return $"as the file's gauge: {_readout.Pressure(read)}";
        return $"{_readout.PressureDifference(Math.Abs(off))} {(off > 0 ? "above" : "below")} the file's gauge ({_readout.Pressure(read)})";
    }
}
