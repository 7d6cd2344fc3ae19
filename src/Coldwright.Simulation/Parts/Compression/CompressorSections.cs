using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Parts.Compression;

/// <summary>What else there is to say about a compressor: losses, nameplate, starting, oil.</summary>
internal static class CompressorSections
{
    public static IEnumerable<PartSection> All(PartContext c, CompressorPart part, DescribedCompressor described, CompressorPerformance at, CompressorDuty duty)
    {
        if (at.Power is { } p)
            yield return new("power_split", "Where the electrical power goes",
                new PartFigure("isentropic_W", "Ideal compression", p.IsentropicW, "W"), new("suction_heating_W", "Gas drawn in warmer", p.SuctionHeatingW, "W"),
                new("throttling_W", "Ports and valves", p.ThrottlingW, "W"), new("leakage_W", "Leakage inside", p.LeakageW, "W"),
                new("friction_W", "Friction", p.FrictionW, "W"), new("motor_W", "Motor", p.MotorW, "W"));
        if (at.Volumetric is { } v)
            yield return new("volumetric_factors", "What takes from the swept volume",
                new PartFigure("suction_heating", "Heating in the shell", v.SuctionHeating, "1"), new("suction_throttling", "Suction port", v.SuctionThrottling, "1"),
                new("leak_heating", "Leaked gas mixed in", v.LeakHeating, "1"), new("clearance", "Clearance", v.Clearance, "1"), new("leakage", "Leakage", v.Leakage, "1"));
        if (described.Estimate is { } estimate && part.Nameplate is { } plate) yield return Nameplate(plate, estimate, described);
        yield return c.Machine.Operation.StandstillPressurePa is { } standstill ? Starting(described, standstill)
            : new("starting", "Starting", [], ["whether the motor starts was not looked at: add 'standstill-pressure' to operation (standstill-pressure: 15 barg), read when everything is warm"]);
        if (part.Oil is { } oil) yield return OilSection.Of(c, part, oil, at, duty);
    }

    private static PartSection Nameplate(NameplateDescription plate, DisplacementEstimate e, DescribedCompressor described)
    {
        var figures = new List<PartFigure>
        {
            new("displacement_m3", "Displacement by the nameplate", e.DisplacementM3, "m3", new(e.LowM3, e.HighM3), "per revolution"),
            new("rated_capacity_W", "Rated cooling, given back", e.CoolingCapacityW, "W"),
            new("rated_power_W", "Power at the rating, usual losses", e.Performance.ElectricalPowerW, "W"),
        };
        if (described.DisplacementGiven) figures.Insert(1, new("given_displacement_m3", "Displacement given in the file", described.Machine.DisplacementM3, "m3", null, "used here"));
        if (plate.PowerW is { } power) figures.Add(new("nameplate_power_W", "Power on the nameplate", power, "W"));
        if (described.LossScale is { } scale) figures.Add(new("loss_scale", "Friction and motor losses over the usual ones", scale, "1", null, "fitted to that power, used here"));
        return new("nameplate", "What the nameplate says", figures, [.. e.Assumptions.SkipLast(1)]);
    }

    private static PartSection Starting(DescribedCompressor described, double standstillPa)
    {
        // the usual motors: a run capacitor on rotary machines, a resistance start on small reciprocating ones (our assumption)
        var motor = described.Machine.Traits.Kind == CompressorKind.Rotary ? StartingMotor.RunCapacitor : StartingMotor.ResistanceStart;
        var s = StartingCheck.Judge(described.Machine, new StartingConditions(standstillPa, standstillPa, motor));
        return new("starting", "Starting against the standstill pressure",
        [
            PartFigure.Word("verdict", "Does it start", s.Verdict switch { StartingVerdict.Starts => "yes", StartingVerdict.Doubtful => "doubtful", _ => "no" }),
            new("standstill_pressure_Pa", "Standstill pressure, both sides", standstillPa, "Pa"),
            new("highest_standstill_pressure_Pa", "It just runs up from", s.HighestStandstillPressurePa, "Pa", new(s.HighestStandstillPressurePa * (1 - StartingCheck.Band), s.HighestStandstillPressurePa * (1 + StartingCheck.Band)), "estimate"),
            new("highest_difference_Pa", "It just starts against a difference of", s.HighestDifferencePa, "Pa", new(s.HighestDifferencePa * (1 - StartingCheck.Band), s.HighestDifferencePa * (1 + StartingCheck.Band)), "estimate") { IsDifference = true },
            new("breakaway_torque_Nm", "Torque for the first turn", s.BreakawayTorqueNm, "N m"),
            new("locked_rotor_torque_Nm", "The motor has at rest", s.LockedRotorTorqueNm, "N m"),
            new("pull_up_torque_Nm", "Torque to run up", s.PullUpTorqueNm, "N m"),
            new("breakdown_torque_Nm", "The motor has at most", s.BreakdownTorqueNm, "N m"),
        ], s.Reasons);
    }
}
