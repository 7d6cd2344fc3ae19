using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Parts.Compression;

/// <summary>Rates the loop's compressor: flow, power, temperatures, limits, nameplate, starting, oil.</summary>
internal static class CompressorRater
{
    public static PartRating Rate(PartContext c, CompressorPart part)
    {
        var described = DescribedCompressor.Of(part, c.Cancel);
        var inlet = c.At("compressor suction");
        var duty = new CompressorDuty
        {
            SuctionTemperatureK = inlet.TemperatureK, SuctionPressurePa = inlet.PressurePa, DischargePressurePa = c.At("compressor discharge").PressurePa, RoomTemperatureK = c.RoomK,
        };
        var run = Runner(c, described);
        var at = run(duty);
        var sections = new List<PartSection> { c.Inlet(PartContext.Arriving("suction", "At the suction port", inlet)), Answer(c, at, described, duty) };
        sections.AddRange(CompressorSections.All(c, part, described, at, duty));
        return new PartRating
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Method = described.Map is null ? "lumped loss model of a hermetic compressor on the real gas" : "rating sheet translated to this gas",
            FluidModel = c.Loop.Model,
            Point = c.Point,
            Verdict = Verdict(c, at),
            Sections = sections,
            Limits = [.. at.Limits.Select(Si)],
            Balances = [("energy of the compressor", at.EnergyBalanceError)],
            Pictures = [.. CompressorPictures.All(c, part, run, at, duty)],
            Sources = ["docs/theory/compressor.md", .. described.Assumptions],
            Warnings = c.Told([.. described.Warnings, .. at.Warnings]),
        };
    }

    private static Func<CompressorDuty, CompressorPerformance> Runner(PartContext c, DescribedCompressor described)
    {
        if (described.Map is { } map)
        {
            var mapped = new MappedCompressor(map, described.Machine, c.Model, c.Z);
            return duty => mapped.Run(duty, c.Cancel);
        }
        var hermetic = new HermeticCompressor(described.Machine, c.Model, c.Z);
        return duty => hermetic.Run(duty, c.Cancel);
    }

    private static PartSection Answer(PartContext c, CompressorPerformance at, DescribedCompressor described, CompressorDuty duty)
    {
        double flow = at.FlowUncertainty, power = at.PowerUncertainty;
        var figures = new List<PartFigure>
        {
            PartFigure.PlusMinus("delivered_mass_flow_kg_s", "Delivered", at.MassFlow, "kg/s", flow * at.MassFlow),
            new("flow_over_rating", "Over the flow of the cooler's rating", at.MolarFlow / c.Point.MolarFlow, "1", null, "1 when both describe the same machine"),
            PartFigure.PlusMinus("electrical_power_W", "Electrical power", at.ElectricalPowerW, "W", power * at.ElectricalPowerW),
            new("discharge_temperature_K", "Discharge port", at.Discharge.TemperatureK, "K"),
            new("pressure_ratio", "Pressure ratio", duty.DischargePressurePa / duty.SuctionPressurePa, "1"),
            new("overall_isentropic_efficiency", "Isentropic over electrical power", at.OverallIsentropicEfficiency, "1"),
            PartFigure.PlusMinus("delivered_molar_flow_mol_s", "Delivered, moles", at.MolarFlow, "mol/s", flow * at.MolarFlow),
            new("valve_temperature_K", "Behind the discharge valve", at.ValveTemperatureK, "K"),
            new("shell_temperature_K", "Shell", at.ShellTemperatureK, "K"),
            new("shell_heat_W", "Heat from the shell to the room", at.ShellHeatW, "W"),
        };
        if (at.VolumetricEfficiency is { } volumetric && (described.DisplacementGiven || described.Estimate is not null))
            figures.Add(PartFigure.PlusMinus("volumetric_efficiency", "Volumetric efficiency", volumetric, "1", flow * volumetric));
        if (at.MotorEfficiency is { } motor) figures.Add(new("motor_efficiency", "Motor efficiency", motor, "1"));
        if (at.ShaftSpeedRevPerS is { } speed) figures.Add(new("shaft_speed_rev_s", "Shaft speed", speed, "rev/s"));
        return new PartSection("figures", "The compressor at work", figures, []);
    }

    private static string Verdict(PartContext c, CompressorPerformance at)
    {
        var broken = at.Limits.Where(l => l.Exceeded).Select(l => l.Name).ToArray();
        var nearest = at.Limits.Where(l => l.Limit > 0).MaxBy(l => l.Value / l.Limit);
        double off = at.MolarFlow / c.Point.MolarFlow - 1;
        string flow = Math.Abs(off) <= 2 * at.FlowUncertainty
            ? "Its flow agrees with the rating of the whole cooler within the band of the model."
            : FormattableString.Invariant($"Its flow is {100 * Math.Abs(off):0} % {(off > 0 ? "more" : "less")} than the rating of the whole cooler takes: displacement, efficiencies or nameplate do not describe the same machine.");
        return broken.Length > 0 ? $"Beyond its limits: {string.Join(", ", broken)}. {flow}" : nearest is null ? $"No limit is known. {flow}" : $"Within all its limits; nearest is the {nearest.Name}. {flow}";
    }

    /// <summary>A limit with the units that a person reads turned back into SI.</summary>
    internal static PartLimit Si(LimitFinding l) => l.Unit switch
    {
        "C" => new(l.Name, l.Value + 273.15, l.Limit + 273.15, "K", l.Reason),
        "bar absolute" => new(l.Name, l.Value * 1e5, l.Limit * 1e5, "Pa", l.Reason),
        "" => new(l.Name, l.Value, l.Limit, "1", l.Reason),
        _ => new(l.Name, l.Value, l.Limit, l.Unit, l.Reason),
    };
}
