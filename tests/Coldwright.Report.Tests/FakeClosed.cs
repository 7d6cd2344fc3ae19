using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Tests;

/// <summary>Invented closed loops with the shape of real ones.</summary>
internal static class FakeClosed
{
    private static readonly string[] WithLiquid = ["no_load_temperature_K", "net_cooling_W", "collected_L_h", "power_W", "energy_kWh_L", "high_pressure_Pa", "low_pressure_Pa", "mass_flow_kg_s", "discharge_temperature_K"];

    public static ClosedLoopResult Loop { get; } = new()
    {
        Held = HeldPressure.Neither,
        Charged = new Composition(["nitrogen", "methane", "ethane", "propane", "isobutane"], [0.27, 0.30, 0.19, 0.13, 0.11]),
        ChargeKg = 0.32, ChargeIsAnswer = false, ChargeError = 4e-11, LoopError = 2e-11,
        Contents = [new("recuperator, high side", 0.0843, 0.665, 0.0592), new("recuperator, low side", 0.1284, 0.803, 0.1081), new("coil", 0.0043, 0.835, 0.0039), new("lines, shell and warm parts", 0.0272, 0.118, 0.0036), new("buffer", 0.0758, 0, 0)],
        LiquidShare = 0.492, ThrottleChoked = false, PrecoolerEvaporatingK = 225.9, PrecoolerRunShare = 0.71, RecuperatorInletK = 226.1,
        Buffer = new(7.37e5, 0.12, 0.05), CoilDifferenceK = 0.31,
        StartUp = new()
        {
            StandstillPressurePa = 17.8e5, StandstillLiquidShare = 0.02, ReadStandstillPa = 16e5, Motor = "doubtful", HighestStandstillPa = 24.5e5, FirstHighPa = 27.9e5, FirstLowPa = 2.84e5, FirstDischargeK = 423.3,
            AllowedHighPa = 25e5, BufferNeededM3 = 0.0121, FirstChargeKg = 0.241,
            Sentence = Spoken.Of($"At rest and warm both sides stand at {SpokenAmount.Pressure(17.8e5)}; whether the motor runs up against that is doubtful. While all is warm the high side runs at {SpokenAmount.Pressure(27.9e5)}, above the {SpokenAmount.Pressure(25e5, "0.#")} allowed: a buffer of 12.1 L in place of the 10 L there are would hold it, or only 241 g let in at first and the rest once it is cold."),
        },
        Sensitivity = Sensitivity(WithLiquid),
    };

    public static ClosedLoopResult Held { get; } = Loop with
    {
        Held = HeldPressure.Both, ChargeIsAnswer = true, ThrottleLengthM = 1.83, ThrottleOpening = null, Buffer = null, PrecoolerEvaporatingK = null, PrecoolerRunShare = null, Sensitivity = null, ThrottleChoked = true,
        StartUp = Loop.StartUp with { FirstHighPa = null, FirstLowPa = null, FirstDischargeK = null, AllowedHighPa = null, BufferNeededM3 = null, FirstChargeKg = null, ReadStandstillPa = null, Motor = "does not start", Sentence = Spoken.Of($"At rest and warm both sides stand at {SpokenAmount.Pressure(17.8e5)}; the motor does not run up against that. The first minutes were not found.") },
    };

    public static ClosedLoopResult WithoutProduct { get; } = Loop with { Held = HeldPressure.Low, ThrottleOpening = 1.12, Sensitivity = Sensitivity(["no_load_temperature_K", "power_W"]) };

    private static (string Id, string Name, string Unit, double Value, double Step, bool Doubt, double Strength)[] Inputs =>
    [
        ("compressor.displacement", "displacement of the compressor", "m3", 1.08e-5, 1.08e-6, false, 0.9), ("recuperator.length", "length of the recuperator", "m", 16, 1.6, false, 1),
        ("recuperator.low-tube", "bore of the recuperator's low-pressure tube", "m", 0.0173, 1e-3, false, -1.2), ("throttle.valve.opening", "opening of the valve", "1", 0.4, 0.04, false, 0.3),
        ("room.temperature", "temperature of the room", "K", 295, 5, false, -0.7), ("aftercooler.approach", "approach of the aftercooler", "K", 6, 2, false, -0.08), ("warm-exchanger.conductance", "conductance of the warm exchanger", "W/K", 30, 3, false, 0.001),
        ("buffer.opening-pressure", "opening pressure of the buffer's valve", "Pa", 20e5, 1e5, false, 0.31), ("buffer.volume", "volume of the buffer", "m3", 0.01, 1e-3, false, 0.02), ("cold-box.wall", "thickness of the insulation", "m", 0.18, 0.02, false, 0.42),
        ("charge.mass", "charge, its mixture unchanged", "kg", 0.32, 0.016, false, 0.07), ("charge.isobutane", "isobutane in the charge", "kg", 0.041, 0.0064, false, -0.05), ("precooler.loop.condenser-conductance", "conductance of the precooler's condenser", "W/K", 65, 6.5, false, 0),
        ("doubt.boiling-film", "film of the boiling mixture in the recuperator", "", 1, 0.32, true, 2.5), ("doubt.leak", "heat leak of the cold box", "", 1, 0.13, true, -0.8),
        ("doubt.hold-up", "liquid held up, over what the void correlation says", "", 1, 0.2, true, -0.4), ("doubt.low-friction", "friction of the low side", "", 1, 0.3, true, -0.0001),
    ];

    // What a step of strength 1 changes of each figure.
    private static double Effect(string figure) => figure switch
    {
        "no_load_temperature_K" => -2.9, "net_cooling_W" => 4, "collected_L_h" => 0.039, "power_W" => 5, "energy_kWh_L" => -1.2, "high_pressure_Pa" => 2e3, "low_pressure_Pa" => 9e3, "mass_flow_kg_s" => 3e-5, _ => 0.4,
    };

    private static double Value(string figure) => figure switch
    {
        "no_load_temperature_K" => 97.26, "net_cooling_W" => 12.3, "collected_L_h" => 0.0931, "power_W" => 1215.7, "energy_kWh_L" => 6.3, "high_pressure_Pa" => 19e5, "low_pressure_Pa" => 2.5e5, "mass_flow_kg_s" => 0.00238, _ => 371.9,
    };

    private static string Unit(string figure) => figure[(figure.LastIndexOf('_') + 1)..] switch { "h" => "L/h", "L" => "kWh/L", "s" => "kg/s", var unit => unit };

    private static SensitivityResult Sensitivity(string[] figures) => new()
    {
        Figures = [.. figures.Select(f => new HeadlineFigure(f, f switch { "no_load_temperature_K" => "No-load temperature", "collected_L_h" => "Liquid collected", _ => $"The {f.Split('_')[0]} figure" }, Unit(f), Value(f), Math.Abs(2.6 * Effect(f))))],
        // Power has no slope by the friction of the low side: that must not come out as a number.
        Inputs = [.. Inputs.Select(i => new InputSensitivity(i.Id, i.Name, i.Unit, i.Value, i.Step, i.Doubt, [.. figures.Select(f => f == "power_W" && i.Id == "doubt.low-friction" ? double.NaN : i.Strength * Effect(f) / i.Step)]))],
    };
}
