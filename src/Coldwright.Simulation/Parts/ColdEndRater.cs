using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Description;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Parts;

/// <summary>Rates the coil in its vessel: heat, condensing rate, the coil's own difference, how all that changes with the level.</summary>
internal static class ColdEndRater
{
    private const double HalfFull = 0.5, MarginK = 6;

    public static PartRating Rate(PartContext c, Part part)
    {
        var (layout, inlet) = (c.Layout, c.At("throttle outlet"));
        var vessel = Vessel(layout.Vessel!);
        var (coil, said) = CoilShape.Of(layout.Coil, vessel);
        double feedK = Math.Max(layout.FeedPrecooled && layout.Precooler is { } p ? p.OutletTemperatureK : c.RoomK, c.Point.LoadTemperatureK + 1);
        var gas = ReferenceModel.Create([layout.Feed!.Gas]);
        var product = VesselProduct.Create(new Flash(gas), new TransportModel(gas), [1.0], layout.Feed.PressurePa, inlet.TemperatureK - MarginK, feedK, c.Cancel);
        double warmest = (product.BubbleK ?? c.Point.LoadTemperatureK) + MarginK;
        if (product.BubbleK is { } bubble && inlet.TemperatureK > bubble)
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, inlet.TemperatureK - bubble,
                $"the mixture comes to the coil at {SpokenAmount.Temperature(inlet.TemperatureK, "0.#")}, and {layout.Feed.Gas} at {SpokenAmount.Pressure(layout.Feed.PressurePa, "0.##")} condenses at {SpokenAmount.Temperature(bubble, "0.#")}: nothing condenses with a load as warm as this"));
        var table = StreamTable.Create(c.Flash, c.Transport, c.Z, [0.8 * inlet.PressurePa, inlet.PressurePa], inlet.TemperatureK - MarginK, warmest, cancel: c.Cancel);
        var input = new ColdVesselInput
        {
            Coil = coil, Vessel = vessel, Product = product, Mixture = new StreamInlet(table, c.Point.MolarFlow, inlet.MolarEnthalpy, inlet.PressurePa), LevelM = HalfFull * vessel.HeightM, FeedK = feedK,
            LiquidK = product.IsDense ? c.Point.LoadTemperatureK : null,
        };
        var r = ColdVesselModel.Solve(input, c.Cancel);
        double rating = c.Point.MolarFlow * (c.At("coil outlet").MolarEnthalpy - inlet.MolarEnthalpy);
        return new PartRating
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Method = "boiling mixture in the coil, condensing and subcooled content around it",
            FluidModel = c.Loop.Model,
            Point = c.Point,
            Verdict = Verdict(layout.Coil, r, rating),
            Sections =
            [
                c.Inlet([.. PartContext.Arriving("mixture", "Mixture into the coil", inlet), new("vessel_pressure_Pa", "In the vessel", layout.Feed.PressurePa, "Pa", null, layout.Feed.Gas),
                    new("feed_temperature_K", "Feed into the vessel", feedK, "K"), new("level_m", "Liquid level", input.LevelM, "m", null, "taken as half the vessel's height")]),
                Answer(layout.Coil, r, rating), Shape(coil, vessel, product, input),
            ],
            Balances = [("energy of mixture, feed and liquid", r.EnergyError)],
            Pictures = [.. ColdEndPictures.All(c, input, r)],
            Sources = ["docs/theory/coil-and-vessel.md", .. Correlations.Lines(FilmCondensation.NusseltCorrelation, RowCorrection.Correlation, FreeConvection.HorizontalCylinderCorrelation, Boiling.GungorWintertonCorrelation, MixtureCorrection.SilverBellGhalyCorrelation)],
            Warnings = c.Told([.. said, .. r.Warnings]),
        };
    }

    /// <summary>The vessel that the file describes.</summary>
    public static VesselGeometry Vessel(VesselPart v)
    {
        var vessel = new VesselGeometry { OutsideDiameterM = v.Tube.OutsideDiameterM, WallM = v.Tube.WallM, LengthM = v.LengthM, Caps = v.Caps == CapShape.Domed ? CapForm.Ellipsoidal : CapForm.Flat };
        return v.WallMaterial is { } material ? vessel with { Material = material } : vessel;
    }

    private static PartSection Answer(CoilPart coil, ColdVesselResult r, double rating)
    {
        var band = r.Band;
        var figures = new List<PartFigure>
        {
            PartFigure.PlusMinus("heat_W", "Heat into the mixture", r.HeatW, "W", band?.HeatW),
            PartFigure.PlusMinus("condensed_kg_s", "Condenses", r.CondensedKgPerS, "kg/s", band?.CondensedKgPerS),
            PartFigure.PlusMinus("conductance_W_K", "Conductance UA", r.ConductanceWPerK, "W/K", band?.ConductanceWPerK),
            PartFigure.PlusMinus("outlet_temperature_K", "Mixture leaves at", r.OutletK, "K", band?.OutletK),
            new("outlet_difference_K", "Content warmer than the mixture leaving", r.OutletDifferenceK, "K", null, "the coil's own difference") { IsDifference = true },
            new("mean_difference_K", "Mean difference", r.MeanDifferenceK, "K") { IsDifference = true },
        };
        if (coil.GivenDifferenceK is { } given) figures.Add(new("given_difference_K", "Difference given in the file", given, "K") { IsDifference = true });
        figures.Add(new("rating_heat_W", "Heat in the rating of the whole cooler", rating, "W", null, "with the given difference"));
        figures.Add(new("condensing_W", "Through the coil above the level", r.CondensingW, "W"));
        figures.Add(new("liquid_W", "Through the coil in the liquid", r.LiquidW, "W"));
        if (r.SaturationK is { } saturation) figures.Add(new("saturation_K", "Content condenses at", saturation, "K"));
        figures.Add(PartFigure.PlusMinus("liquid_temperature_K", "Liquid at", r.LiquidK, "K", r.Steady ? band?.LiquidK : null, r.Steady ? "the steady one" : "given"));
        figures.Add(PartFigure.PlusMinus("pressure_drop_Pa", "Pressure lost by the mixture", r.PressureDropPa, "Pa", band?.PressureDropPa) with { IsDifference = true });
        figures.Add(new("outlet_vapour_fraction", "Mixture out, vapour (mol/mol)", r.OutletVapourFraction, "1"));
        return new("figures", "The coil at work", figures, []);
    }

    private static PartSection Shape(ColdCoilGeometry coil, VesselGeometry vessel, VesselProduct product, ColdVesselInput input)
    {
        var figures = new List<PartFigure>
        {
            new("turns", "Turns", coil.Turns, "1"), new("pitch_m", "From turn to turn", coil.PitchM, "m"), new("coil_height_m", "Height of the coil", coil.HeightM, "m"), new("outside_area_m2", "Outside of the coil", coil.OutsideAreaM2, "m2"),
            new("vessel_height_m", "Inside height of the vessel", vessel.HeightM, "m"), new("vessel_volume_m3", "Inside volume, coil taken off", vessel.VolumeBelow(vessel.HeightM, coil), "m3"),
        };
        figures.Add(new("content_kg", "Content at that level", VesselContent.AtLevel(vessel, coil, product, input.LevelM, product.BubbleK ?? input.LiquidK).MassKg, "kg"));
        return new("shape", "Coil and vessel", figures, []);
    }

    private static string Verdict(CoilPart coil, ColdVesselResult r, double rating)
    {
        string heat = FormattableString.Invariant($"Half full, the coil takes up {100 * r.HeatW / rating:0} % of the heat that the rating of the whole cooler gives it.");
        return coil.GivenDifferenceK is not { } given ? heat : heat + (r.OutletDifferenceK <= given ? " Its own difference is no larger than the one given in the file." : " Its own difference is larger than the one given in the file: the rating of the whole cooler is too good.");
    }
}
