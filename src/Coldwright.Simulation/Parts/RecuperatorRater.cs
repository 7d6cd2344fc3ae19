using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Description;
using Coldwright.Machine.Flow;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Recuperation;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>Rates the recuperator along its length: duty, pinch, pressure drops, what it would take to meet the given conductance.</summary>
internal static class RecuperatorRater
{
    public static PartRating Rate(PartContext c, RecuperatorPart part)
    {
        LoopPoints at = new(c.At("into the recuperator"), c.At("coil outlet"), c.At("throttle inlet"), c.At("out of the recuperator"));
        var leak = part.InsulationConductanceWPerMK is { } conductance ? new RoomLeak(conductance, c.RoomK) : null;
        var exchanger = new DistributedRecuperator(Geometry(part), null, leak);
        double n = c.Point.MolarFlow;
        var r = RecuperatorStudy.Solve(exchanger, c.Flash, c.Transport,
            StreamCondition.AtEnthalpy(c.Z, n, at.HotIn.PressurePa, at.HotIn.MolarEnthalpy), StreamCondition.AtEnthalpy(c.Z, n, at.ColdIn.PressurePa, at.ColdIn.MolarEnthalpy), c.Cancel);
        return new PartRating
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Method = $"local heat transfer, friction and conduction along {exchanger.Geometry.Title}",
            FluidModel = c.Loop.Model,
            Point = c.Point,
            Verdict = Verdict(c, r),
            Sections = [c.Inlet([.. PartContext.Arriving("high", "High-pressure stream in", at.HotIn), .. PartContext.Arriving("low", "Low-pressure stream in", at.ColdIn)]), Answer(c, part, r), Streams(c, part, r, at)],
            Balances = [("energy of both streams and the leak, to the duty", r.EnergyError), ("grid: duty still missing, to the duty", (r.GridErrorW ?? 0) / r.DutyW)],
            Pictures = [.. RecuperatorPictures.All(r)],
            Sources = ["docs/theory/recuperator.md and docs/theory/heat-transfer-and-friction.md", .. Correlations.Lines(SinglePhase.NusseltCorrelation, Condensation.ShahCorrelation, Boiling.GungorWintertonCorrelation,
                MixtureCorrection.SilverBellGhalyCorrelation, Friction.ChurchillCorrelation, TwoPhaseGradient.MuellerSteinhagenHeckCorrelation)],
            Warnings = c.Told([.. r.Warnings, .. leak is not null ? Array.Empty<string>() : [$"no heat from the room along the length was counted: add 'insulation-conductance' to {part.Name} (insulation-conductance: 0.02 W/(m K)) to count it here"]]),
        };
    }

    /// <summary>Conductance (W/K) of the tubes at a loop's inlets.</summary>
    public static double Conductance(MachineDescription machine, RecuperatorPart part, Rating.ModelRating loop, HelmholtzModel model, CancellationToken cancel)
    {
        double[] z = [.. machine.Charge.Mixture.MoleFractions];
        StreamCondition Stream(string name)
        {
            var p = loop.Loop.Points.Single(p => p.Name == name);
            return StreamCondition.AtEnthalpy(z, loop.Loop.MolarFlow, p.PressurePa, p.MolarEnthalpy);
        }

        var exchanger = new DistributedRecuperator(Geometry(part), null, null, new RecuperatorOptions { Band = false, GridError = false });
        return RecuperatorStudy.Solve(exchanger, new Flash(model), new TransportModel(model), Stream("into the recuperator"), Stream("coil outlet"), cancel).ConductanceWPerK;
    }

    private sealed record LoopPoints(Rating.LoopPoint HotIn, Rating.LoopPoint ColdIn, Rating.LoopPoint HotOut, Rating.LoopPoint ColdOut);

    /// <summary>Shape of the exchanger that the file describes.</summary>
    public static RecuperatorGeometry Geometry(RecuperatorPart p)
    {
        var (high, low, length) = (p.HighTube!, p.LowTube!, p.LengthM!.Value);
        double roughness = p.RoughnessM ?? RecuperatorGeometry.DrawnTubeRoughnessM;
        if (p.Arrangement == RecuperatorArrangement.SideBySide)
            return new SideBySideGeometry(high.OutsideDiameterM, high.WallM, low.OutsideDiameterM, low.WallM, p.BondWidthM!.Value, p.BondThicknessM, length, p.CoilDiameterM, SideBySideGeometry.SoftSolderConductivity, roughness);
        bool inner = p.HighSide == HighSide.Inner;
        var (inside, outside) = inner ? (high, low) : (low, high);
        return new TubeInTubeGeometry(inside.OutsideDiameterM, inside.WallM, p.Tubes, outside.OutsideDiameterM, outside.WallM, length, p.CoilDiameterM, inner, roughness);
    }

    private static PartSection Answer(PartContext c, RecuperatorPart part, RecuperatorResult r)
    {
        var figures = new List<PartFigure>
        {
            PartFigure.PlusMinus("duty_W", "Heat exchanged", r.DutyW, "W", r.Band?.DutyW),
            new("effectiveness", "Of the most that is possible here", r.Effectiveness, "1", null, "1 where the streams would touch"),
            new("pinch_K", "Streams closest", r.Pinch.DifferenceK, "K", null, "the pinch") { IsDifference = true },
            new("pinch_position_m", "Pinch from the warm end", r.Pinch.PositionM, "m"),
            new("conductance_W_K", "Conductance UA", r.ConductanceWPerK, "W/K"),
            new("rating_duty_W", "Heat in the rating of the whole cooler", c.Loop.Loop.RecuperatorDutyW, "W", null, "with the given conductance"),
        };
        if (part.GivenConductanceWPerK is { } given) figures.Add(new("given_conductance_W_K", "Conductance given in the file", given, "W/K"));
        figures.Add(new("transfer_units", "Transfer units", r.TransferUnits, "1"));
        figures.Add(new("axial_conduction_W", "Most heat along the metal", r.LargestAxialConductionW, "W"));
        figures.Add(new("leak_W", "Heat from the room along it", r.LeakW, "W"));
        return new("figures", "The exchanger at work", figures, []);
    }

    private static PartSection Streams(PartContext c, RecuperatorPart part, RecuperatorResult r, LoopPoints at) => new("streams", "Both streams",
        PartFigure.PlusMinus("high_outlet_K", "High-pressure stream out", r.Hot.OutletK, "K", r.Band?.HotOutletK, r.Hot.OutletPhases.Replace("+", " + ").Replace('_', ' ')),
        new("rating_high_outlet_K", "The same in the rating of the whole cooler", at.HotOut.TemperatureK, "K"),
        PartFigure.PlusMinus("low_outlet_K", "Low-pressure stream out", r.Cold.OutletK, "K", r.Band?.ColdOutletK, r.Cold.OutletPhases.Replace("+", " + ").Replace('_', ' ')),
        new("rating_low_outlet_K", "The same in the rating of the whole cooler", at.ColdOut.TemperatureK, "K"),
        new("warm_end_difference_K", "Streams apart at the warm end", at.HotIn.TemperatureK - r.Cold.OutletK, "K") { IsDifference = true },
        PartFigure.PlusMinus("high_drop_Pa", "Pressure lost, high side", r.Hot.PressureDropPa, "Pa", r.Band?.HotDropPa) with { IsDifference = true },
        PartFigure.PlusMinus("low_drop_Pa", "Pressure lost, low side", r.Cold.PressureDropPa, "Pa", r.Band?.ColdDropPa) with { IsDifference = true },
        new("given_low_drop_Pa", "Low side, given in the file", part.LowSidePressureDropPa, "Pa") { IsDifference = true },
        new("high_content_kg", "Held in the high side", r.Hot.ContentKg, "kg"),
        new("low_content_kg", "Held in the low side", r.Cold.ContentKg, "kg"));

    private static string Verdict(PartContext c, RecuperatorResult r)
    {
        double off = r.DutyW / c.Loop.Loop.RecuperatorDutyW - 1, doubt = (r.Band?.DutyW ?? 0) / r.DutyW;
        string duty = Math.Abs(off) <= Math.Max(2 * doubt, 0.002) ? "It exchanges as much heat as the rating of the whole cooler takes it to do, within the band."
            : FormattableString.Invariant($"It exchanges {100 * Math.Abs(off):0.0} % {(off > 0 ? "more" : "less")} heat than the rating of the whole cooler takes it to do.");
        double share = r.Pinch.PositionM / r.Profile[^1].PositionM;
        string place = share < 0.03 ? "at the warm end" : share > 0.97 ? "at the cold end" : FormattableString.Invariant($"inside, {100 * share:0} % of the way to the cold end");
        return FormattableString.Invariant($"{duty} The streams come closest {place}; {100 * r.Effectiveness:0.0} % of what is possible with these inlets is exchanged.");
    }
}
