using Xunit;
using Coldwright.Machine.Description;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Tests.Parts;

/// <summary>Answers of single parts: the numbers that belong together, and other ways to describe a part.</summary>
public class PartAnswers
{
    private static MachineDescription Workshop => RatedParts.Workshop;

    [Fact]
    public void TheCompressorsPowerIsTheSumOfItsCauses()
    {
        var r = RatedParts.Of("compressor");
        double sum = r.Sections.Single(s => s.Id == "power_split").Figures.Sum(f => f.Value!.Value), power = r.Figure("figures", "electrical_power_W");
        Assert.Equal(power, sum, 1e-9 * power);
        double factors = r.Sections.Single(s => s.Id == "volumetric_factors").Figures.Aggregate(1.0, (p, f) => p * f.Value!.Value);
        Assert.Equal(r.Figure("figures", "volumetric_efficiency"), factors, 1e-9);
        Assert.Equal(2700, r.Figure("nameplate", "rated_capacity_W"), 1e-4);
        Assert.Contains(r.Sections, s => s.Id == "oil");
        Assert.Equal("yes", r.Find("starting", "verdict").Text);
        Assert.Contains(r.Limits, l => l is { What: "discharge line temperature", Unit: "K", Broken: false });
    }

    [Fact]
    public void ACompressorOfANameplateAloneIsRated()
    {
        var machine = Workshop.With<CompressorPart>(c => new CompressorPart
        {
            Name = c.Name, Type = c.Type, MaximumDischargeTemperatureK = c.MaximumDischargeTemperatureK, Nameplate = c.Nameplate! with { PowerW = null }, ShellCooling = c.ShellCooling,
        });
        var r = RatedParts.Rate(machine, "compressor");
        // the point's flow is the model's own at a suction a little colder or warmer
        Assert.InRange(r.Figure("figures", "flow_over_rating"), 0.9, 1.1);
        Assert.Contains(r.Warnings, w => w.ToString().Contains("came from its own model", StringComparison.Ordinal));
        Assert.DoesNotContain(r.Sections.Single(s => s.Id == "nameplate").Figures, f => f.Id is "given_displacement_m3" or "loss_scale");
    }

    [Fact]
    public void ARecuperatorOfTubesAloneIsRatedAtItsOwnConductance()
    {
        var machine = Workshop.With<RecuperatorPart>(r => new RecuperatorPart
        {
            Name = r.Name, HighTube = r.HighTube, LowTube = r.LowTube, LengthM = r.LengthM, Arrangement = r.Arrangement, CoilDiameterM = r.CoilDiameterM, LowSidePressureDropPa = r.LowSidePressureDropPa, InsulationConductanceWPerMK = 0.001,
        });
        var r = RatedParts.Rate(machine, "recuperator");
        Assert.InRange(r.Figure("figures", "duty_W") / r.Figure("figures", "rating_duty_W"), 0.97, 1.03);
        Assert.True(r.Figure("figures", "leak_W") > 0);
        Assert.DoesNotContain(r.Warnings, w => w.ToString().Contains("insulation-conductance", StringComparison.Ordinal));
        Assert.Contains(r.Warnings, w => w.ToString().Contains("came from its tubes", StringComparison.Ordinal));
    }

    [Fact]
    public void TheCapillarysLengthForTheRatingsFlowPassesIt()
    {
        var first = RatedParts.Of("throttle");
        double length = first.Figure("figures", "length_for_rating_flow_m");
        var r = RatedParts.Rate(Workshop.With<ThrottlePart>(t => t with { Capillary = t.Capillary! with { LengthM = length } }), "throttle");
        Assert.Equal(1, r.Figure("figures", "flow_over_rating"), 1e-3);
        Assert.Contains("suits within the band", r.Verdict, StringComparison.Ordinal);
    }

    [Fact]
    public void AValveIsRatedAndItsNeededCoefficientPassesTheFlow()
    {
        var machine = Workshop.With<ThrottlePart>(t => t with { Capillary = null, Valve = new ValveDescription { FlowCoefficientKv = 0.02, Opening = 0.5 } });
        var first = RatedParts.Rate(machine, "throttle");
        double kv = first.Figure("figures", "kv_for_rating_flow_m3_h");
        var r = RatedParts.Rate(machine.With<ThrottlePart>(t => t with { Valve = new ValveDescription { FlowCoefficientKv = kv } }), "throttle");
        Assert.Equal(1, r.Figure("figures", "flow_over_rating"), 1e-9);
        Assert.IsType<LinePicture>(Assert.Single(r.Pictures));
    }

    [Fact]
    public void ABoxOfLayersIsRatedAndWaterMakesItLeakMore()
    {
        MachineDescription Layered(double moisture) => Workshop.With<ColdBoxPart>(b => new ColdBoxPart
        {
            Name = b.Name, Inside = b.Inside, WallM = 0.16, Penetrations = b.Penetrations,
            Layers = [new LayerDescription { Material = "polyurethane-foam", ThicknessM = 0.1, MoistureShare = moisture, CellGas = "air" }, new LayerDescription { Material = "glass-wool", ThicknessM = 0.06 }],
        });
        var dry = RatedParts.Rate(Layered(0), "cold-box");
        var wet = RatedParts.Rate(Layered(0.05), "cold-box");
        Assert.True(wet.Figure("figures", "wall_W") > 1.03 * dry.Figure("figures", "wall_W"));
        Assert.Equal(dry.Figure("figures", "leak_W"), dry.Sections.Single(s => s.Id == "paths").Figures.Sum(f => f.Value!.Value), 1e-9);
        Assert.Contains(dry.Warnings, w => w.ToString().Contains("without the heat leak", StringComparison.Ordinal));
        Assert.Equal(4, dry.Sections.Single(s => s.Id == "layers").Figures.Count);
    }

    [Fact]
    public void TheVesselIsTheCoilsOtherName()
    {
        var (coil, vessel) = (RatedParts.Of("coil"), RatedParts.Of("vessel"));
        Assert.Equal(coil.Figure("figures", "heat_W"), vessel.Figure("figures", "heat_W"));
        Assert.Equal(coil.Figure("figures", "heat_W"), coil.Figure("figures", "condensing_W") + coil.Figure("figures", "liquid_W"), 1e-9);
        Assert.Equal("vessel", vessel.Kind);
    }

    [Fact]
    public void APrecoolerWithACapillaryIsRated()
    {
        var machine = Workshop.With<PrecoolerPart>(p => p with { Loop = p.Loop! with { SuperheatK = null, Capillary = new CapillaryDescription { BoreM = 0.8e-3, LengthM = 3 } } });
        var r = RatedParts.Rate(machine, "precooler");
        Assert.True(r.Figure("figures", "cooling_W") > 0);
        Assert.True(r.Figure("figures", "mixture_outlet_K") < r.Figure("inlet", "mixture_temperature_K"));
    }

    [Fact]
    public void TheBufferFillsAboveItsOpeningPressure()
    {
        var r = RatedParts.Of("buffer");
        Assert.Equal(0, r.Figure("figures", "valve_opening"));
        Assert.Equal(1, r.Figure("warm", "valve_opening"), 1e-9);
        Assert.True(r.Figure("warm", "content_kg") > r.Figure("figures", "content_kg"));
    }

    [Fact]
    public void TheCubicModelAnswersToo()
    {
        var r = RatedParts.Rate(Workshop, "throttle", Rating.RatingModel.Cubic);
        Assert.Equal("cubic", r.FluidModel);
        Assert.InRange(r.Figure("figures", "mass_flow_kg_s") / RatedParts.Of("throttle").Figure("figures", "mass_flow_kg_s"), 0.8, 1.25);
    }
}
