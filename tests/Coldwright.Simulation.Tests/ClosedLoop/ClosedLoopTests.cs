using Coldwright.Machine.Description;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Simulation.Tests.ClosedLoop;

/// <summary>Balances of the closed loop, and its answers from different starts and with different pressures held.</summary>
public sealed class ClosedLoopTests
{
    [Fact]
    public void All_balances_of_the_workshop_close()
    {
        var r = Workshop.Rate(Workshop.Closed);
        Assert.True(r.Closed!.ChargeError < 1e-8, $"charge {r.Closed.ChargeError:E1}");
        Assert.True(r.Closed.LoopError < 1e-8, $"loop {r.Closed.LoopError:E1}");
        Assert.True(Math.Abs(r.Balance.Energy) < 1e-8, $"energy {r.Balance.Energy:E1}");
        Assert.True(Math.Abs(r.Balance.Exergy) < 1e-8, $"exergy {r.Balance.Exergy:E1}");
        Assert.True(Math.Abs(r.Balance.Mass) < 1e-12);
        // places sum to the charge
        Assert.Equal(Workshop.Machine.Charge.MassKg!.Value, r.Closed.Contents.Sum(c => c.Kg), 1e-8);
    }

    [Fact]
    public void It_liquefies_and_its_no_load_temperature_lies_below_the_condensing_one()
    {
        var r = Workshop.Rate(Workshop.Closed);
        Assert.True(r.Liquid!.CollectedLPerH > 0.05);
        Assert.True(r.NoLoadTemperatureK < r.Liquid.CondensingTemperatureK);
        Assert.InRange(Workshop.Closed.NoLoad!.Pass.NetCoolingW, -0.02, 0.02);
    }

    // what circulates is lighter than what was charged: the heavy gases stand as liquid in the exchanger
    [Fact]
    public void The_heavy_substances_are_held_up()
    {
        var p = Workshop.Closed.Operating.Pass;
        var charged = Workshop.Machine.Charge.Mixture.MoleFractions;
        Assert.True(p.Tables.Z[0] > charged[0] + 0.03);
        Assert.True(p.Tables.Z[^1] < 0.8 * charged[^1]);
        Assert.True(p.LiquidMoles.Sum() > 0.2 * p.Moles.Sum());
    }

    // the exchanger's own mean densities, kept for another purpose, must hold the same mass
    [Fact]
    public void Hold_up_agrees_with_the_exchanger()
    {
        var p = Workshop.Closed.Operating.Pass;
        Assert.Equal(p.Recuperator.Hot.ContentKg, p.Contents[0].Kg, 0.03 * p.Contents[0].Kg);
        Assert.Equal(p.Recuperator.Cold.ContentKg, p.Contents[1].Kg, 0.03 * p.Contents[1].Kg);
    }

    [Fact]
    public void A_start_from_another_machine_gives_the_same_answer()
    {
        var other = Workshop.Close(Workshop.With<RecuperatorPart>(r => r with { LengthM = 0.92 * r.LengthM }));
        var again = Workshop.Close(Workshop.Machine, seed: other);
        Assert.Equal(Workshop.Closed.NoLoad!.Pass.LoadK, again.NoLoad!.Pass.LoadK, 0.02);
        LoopPass a = Workshop.Closed.Operating.Pass, b = again.Operating.Pass;
        Assert.Equal(a.NetCoolingW, b.NetCoolingW, 5e-3 * a.NetCoolingW);
        Assert.Equal(a.AftercooledPa, b.AftercooledPa, 1e-3 * a.AftercooledPa);
        Assert.Equal(a.State.SuctionPa, b.State.SuctionPa, 1e-3 * a.State.SuctionPa);
        for (int i = 0; i < a.Tables.Z.Length; i++) Assert.Equal(a.Tables.Z[i], b.Tables.Z[i], 5e-4);
    }

    // the second model's no-load point is found beside its curve: what is done first must not show
    [Fact]
    public void Two_closings_of_the_reference_model_agree_to_the_last_bit()
    {
        ClosedSolver Reference() => ClosedRating.Close(Workshop.Machine, Workshop.Layout(Workshop.Machine), Fluids.EquationsOfState.MultiFluid.ReferenceModel.Create(Workshop.Machine.Charge.Mixture.Names),
            HeldPressure.Neither, new RatingOptions(), TestContext.Current.CancellationToken, null, Workshop.Closed);
        ClosedSolver a = Reference(), b = Reference();
        Assert.Equal(a.NoLoad!.Pass.LoadK, b.NoLoad!.Pass.LoadK);
        Assert.Equal(a.Operating.Pass.State.X, b.Operating.Pass.State.X);
        Assert.Equal(a.Curve.Select(c => c.Pass.NetCoolingW), b.Curve.Select(c => c.Pass.NetCoolingW));
        Assert.InRange(Math.Abs(a.NoLoad.Pass.NetCoolingW), 0, 1e-3);
    }

    // a charge found for a pressure gives that pressure back
    [Fact]
    public void A_held_low_pressure_gives_a_charge_that_gives_the_pressure_back()
    {
        var p = Workshop.Closed.Operating.Pass;
        var held = Workshop.Machine with { Operation = Workshop.Machine.Operation with { LowPressurePa = 1.02 * p.State.SuctionPa, SolveFor = HeldAnswer.Throttle } };
        var solver = Workshop.Close(held, HeldPressure.Low);
        var at = solver.Operating.Pass;
        Assert.Equal(1.02 * p.State.SuctionPa, at.State.SuctionPa, 1e-6 * p.State.SuctionPa);
        double length = Workshop.Rate(solver).Closed!.ThrottleLengthM!.Value;
        Assert.NotEqual(length, Workshop.Machine.PartsOf<ThrottlePart>().Single().Capillary!.LengthM, 1e-3);
        var back = Workshop.Close(Workshop.With<ThrottlePart>(t => t with { Capillary = t.Capillary! with { LengthM = length } }));
        Assert.Equal(at.State.SuctionPa, back.Operating.Pass.State.SuctionPa, 2e-3 * at.State.SuctionPa);
        Assert.Equal(at.NetCoolingW, back.Operating.Pass.NetCoolingW, 0.02 * at.NetCoolingW);
    }

    [Fact]
    public void A_charge_that_does_not_fit_is_refused_with_the_reason()
    {
        var e = Assert.Throws<Numerics.SolveException>(() => Workshop.Close(Workshop.Machine with { Charge = Workshop.Machine.Charge with { MassKg = 6 } }));
        Assert.Contains("charge", e.Message, StringComparison.Ordinal);
    }
}
