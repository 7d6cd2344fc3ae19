using Coldwright.Machine.Description;
using Coldwright.Machine.Precooling;
using Coldwright.Machine.Throttling;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts.Compression;

namespace Coldwright.Simulation.Parts;

/// <summary>Rates the precooling loop on the mixture's load: where its evaporating temperature floats to, what it gives and takes.</summary>
internal static class PrecoolerRater
{
    public static PartRating Rate(PartContext c, PrecoolerPart part)
    {
        var described = part.Loop!;
        var compressor = DescribedCompressor.Of(described, c.Cancel);
        var machine = Machine(part, described, compressor);
        var loop = PrecoolerLoop.Create(machine, described.Refrigerant, c.Cancel);
        var inlet = c.Loop.Loop.Points.FirstOrDefault(p => p.Name == "before the precooler") ?? c.At("after the aftercooler");
        var load = MixtureLoad.Create(c.Flash, c.Z, inlet.PressurePa, inlet.TemperatureK, c.Point.MolarFlow, null, c.Cancel);
        var r = loop.Solve(load, c.RoomK, true, c.Cancel);
        List<Spoken> warnings = [.. compressor.Warnings, .. r.Warnings];
        if (c.Layout.FeedPrecooled) warnings.Add("the feed gas that passes the precooler too is not counted here: its load is small beside the mixture's");
        if (described.CondenserAirFlowM3PerS is null) warnings.Add("the condenser's air is taken to stay at the temperature of the room: add 'condenser-air-flow' to its loop (condenser-air-flow: 550 m3/h)");
        return new PartRating
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Method = $"a vapour-compression loop on {described.Refrigerant} whose temperatures float with the load",
            FluidModel = c.Loop.Model,
            Point = c.Point,
            Verdict = Verdict(part, r),
            Sections = [c.Inlet([.. PartContext.Arriving("mixture", "Mixture into the precooler", inlet), new("room_temperature_K", "Room", c.RoomK, "K")]), Answer(c, part, r), Inside(r)],
            Limits = [.. r.Compressor.Limits.Select(CompressorRater.Si)],
            Balances = [("energy of the loop", r.EnergyBalanceError), ("flow of expansion device and compressor", r.ExpansionFlowError), ("energy of its compressor", r.Compressor.EnergyBalanceError)],
            Pictures = [.. PrecoolerPictures.All(c, loop, r)],
            Sources = ["docs/theory/precooler.md and docs/theory/compressor.md", .. compressor.Estimate?.Assumptions.SkipLast(1) ?? [], .. compressor.Assumptions],
            Warnings = c.Told(warnings),
        };
    }

    /// <summary>The loop that the file describes.</summary>
    public static PrecoolerMachine Machine(PrecoolerPart part, PrecoolerLoopDescription d, DescribedCompressor compressor)
    {
        var condenser = new AirCondenser { ConductanceWPerK = d.CondenserConductanceWPerK, AirFlowM3PerS = d.CondenserAirFlowM3PerS, FanPowerW = part.FanPowerW };
        ExpansionDevice expansion = d.Capillary is { } tube ? new CapillaryExpansion(ThrottleRater.Tube(tube))
            : d.Valve is { } valve ? new FixedValveExpansion(new ControlValve { Kv = valve.FlowCoefficientKv, Opening = valve.Opening })
            : new ThermostaticExpansion(d.SuperheatK!.Value);
        return new PrecoolerMachine
        {
            Compressor = compressor.Machine,
            Map = compressor.Map,
            Condenser = d.SubcoolingK is { } subcooling ? condenser with { SubcoolingK = subcooling } : condenser,
            Evaporator = new MixtureEvaporator { ConductanceWPerK = d.EvaporatorConductanceWPerK },
            Expansion = expansion,
            CutOutK = d.CutOutK,
        };
    }

    private static PartSection Answer(PartContext c, PrecoolerPart part, PrecoolerResult r) => new("figures", "The precooler at work",
        PartFigure.PlusMinus("mixture_outlet_K", "Mixture leaves at", r.MixtureOutletK, "K", r.Band?.MixtureOutletK, r.MixtureOutletPhases.Replace("+", " + ").Replace('_', ' ')),
        PartFigure.PlusMinus("cooling_W", "Cooling", r.CoolingW, "W", r.Band?.CoolingW),
        PartFigure.PlusMinus("compressor_power_W", "Its compressor takes", r.CompressorPowerW, "W", r.Band?.CompressorPowerW),
        PartFigure.PlusMinus("evaporating_K", "Evaporates at", r.EvaporatingK, "K", r.Band?.EvaporatingK, "dew point"),
        new("condensing_K", "Condenses at", r.CondensingK, "K", null, "dew point"),
        new("coefficient_of_performance", "Cooling over power", r.CoefficientOfPerformance, "1", null, "fan with it"),
        new("given_outlet_K", "Outlet given in the file", part.OutletTemperatureK, "K"),
        new("rating_cooling_W", "Cooling in the rating of the whole cooler", c.Loop.Loop.PrecoolingW, "W", null, "feed gas with it"),
        new("rating_power_W", "Power in the rating of the whole cooler", c.Loop.Power.PrecoolW, "W", null, "without the fan"),
        new("run_share", "Share of the time that it runs", r.RunShare, "1"),
        new("fan_power_W", "Fan", r.FanPowerW, "W"));

    private static PartSection Inside(PrecoolerResult r) => new("inside", "Inside the loop",
        new("evaporating_Pa", "Evaporating pressure", r.EvaporatingPa, "Pa"),
        new("condensing_Pa", "Condensing pressure", r.CondensingPa, "Pa"),
        new("mass_flow_kg_s", "Refrigerant flow while it runs", r.MassFlow, "kg/s"),
        new("superheat_K", "Superheat at the evaporator's outlet", r.SuperheatK, "K") { IsDifference = true },
        new("subcooling_K", "Subcooling before the expansion device", r.SubcoolingK, "K") { IsDifference = true },
        new("discharge_K", "Discharge port", r.DischargeK, "K"),
        new("condenser_heat_W", "Condenser to the room", r.CondenserHeatW, "W"),
        new("shell_heat_W", "Compressor's shell to the room", r.ShellHeatW, "W"),
        new("suction_line_heat_W", "Room into the suction line", r.SuctionLineHeatW, "W"));

    private static string Verdict(PrecoolerPart part, PrecoolerResult r)
    {
        double off = r.MixtureOutletK - part.OutletTemperatureK, doubt = 2 * (r.Band?.MixtureOutletK ?? 0);
        string reached = Math.Abs(off) <= doubt ? "It brings the mixture to the outlet temperature given in the file, within the band of the model."
            : off < 0 ? "It is stronger than the file says: the mixture leaves colder than the outlet temperature given there."
            : "It is weaker than the file says: the mixture leaves warmer than the outlet temperature given there, and the rating of the whole cooler is too good.";
        var broken = r.Compressor.Limits.Where(l => l.Exceeded).Select(l => l.Name).ToArray();
        if (broken.Length > 0) reached = $"Its compressor is beyond its limits: {string.Join(", ", broken)}. {reached}";
        return r.RunShare < 1 ? FormattableString.Invariant($"{reached} It cycles and runs {100 * r.RunShare:0} % of the time.") : reached;
    }
}
