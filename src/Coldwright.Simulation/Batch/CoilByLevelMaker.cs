using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;
using Coldwright.Quantities;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Batch;

/// <summary>Asks the model of coil and vessel for the coil's conductance at several levels, with the mixture as it leaves the throttle in the rating.</summary>
internal static class CoilByLevelMaker
{
    private const double HalfFull = 0.5, MarginK = 6, BelowCritical = 0.85;
    private static readonly double[] _levels = [0, 0.15, 0.3, 0.5, 0.7, 0.85, 1];

    /// <summary>The coil at every level; null where the file does not give its size or the model has no answer, which is said.</summary>
    public static CoilByLevel? Of(LoopLayout layout, ModelRating rating, VesselGeometry vessel, MonotoneCubic net, MonotoneCubic gross, double feedK, List<Spoken> said, CancellationToken cancel)
    {
        const string silent = "the cold end counts as equally good at every level";
        if (layout.Coil.Tube is null || layout.Coil.LengthM is null || layout.Feed is not { } feed) return null;
        if (rating.Loop.Points.FirstOrDefault(p => p.Name == "throttle outlet") is not { } inlet) return null;
        try
        {
            var (coil, shape) = CoilShape.Of(layout.Coil, vessel);
            said.AddRange(Spoken.All(shape));
            var gas = ReferenceModel.Create([feed.Gas]);
            double pressure = Math.Min(feed.PressurePa, BelowCritical * gas.Substances[0].CriticalPressurePa);
            var product = VesselProduct.Create(new Flash(gas), new TransportModel(gas), [1.0], pressure, inlet.TemperatureK - MarginK, feedK, cancel);
            var circulating = rating.Loop.Composition;
            HelmholtzModel model = rating.Model == "cubic" ? CubicModel.Create(circulating.Names) : ReferenceModel.Create(circulating.Names);
            var table = StreamTable.Create(new Flash(model), new TransportModel(model), [.. circulating.MoleFractions], [0.8 * inlet.PressurePa, inlet.PressurePa],
                inlet.TemperatureK - MarginK, product.BubbleK!.Value + MarginK, cancel: cancel);
            var mixture = new StreamInlet(table, rating.Loop.MolarFlow, inlet.MolarEnthalpy, inlet.PressurePa);
            double all = vessel.VolumeBelow(vessel.HeightM, coil);
            double At(double levelM) => ColdVesselModel.Solve(new ColdVesselInput
            {
                Coil = coil, Vessel = vessel, Product = product, Mixture = mixture, LevelM = levelM, FeedK = feedK, LiquidK = product.BubbleK, Options = new ColdVesselOptions { Band = false },
            }, cancel).ConductanceWPerK;
            double[] found = [.. _levels.Select(v => At(vessel.LevelOf(v * all, coil)))];
            // a wide bore of little film can make a covered turn as good as a bare one; the last digits of a march are no rise
            for (int i = 1; i < found.Length; i++) found[i] = Math.Min(found[i], found[i - 1]);
            return new CoilByLevel(net, gross, _levels, found, Math.Clamp(At(HalfFull * vessel.HeightM), found[^1], found[0]));
        }
        catch (SolveException e)
        {
            said.Add($"{silent}: how much the coil passes at each level could not be worked out ({e.Report.Advice})");
            return null;
        }
    }
}
