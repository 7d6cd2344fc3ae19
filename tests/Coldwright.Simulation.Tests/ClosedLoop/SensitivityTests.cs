using Coldwright.Machine.Description;
using Coldwright.Simulation.ClosedLoop;
using Coldwright.Simulation.Rating;
using Xunit;

namespace Coldwright.Simulation.Tests.ClosedLoop;

/// <summary>Implicit sensitivities against the differences of two closed loops.</summary>
public sealed class SensitivityTests
{
    private static readonly Lazy<SensitivityResult> Found = new(() => Workshop.Rate(Workshop.Closed, sensitivity: true).Closed!.Sensitivity!);

    public static TheoryData<string, double> Inputs => new()
    {
        { "charge.mass", 0.02 }, { "recuperator.length", 0.02 }, { "throttle.capillary.length", 0.05 }, { "room.temperature", 0.003 }, { "cold-box.wall", 0.05 }, { "warm-exchanger.conductance", 0.2 },
    };

    [Theory]
    [MemberData(nameof(Inputs))]
    public void Slopes_agree_with_differences(string id, double share)
    {
        int figure = 0;
        foreach (var f in Found.Value.Figures)
        {
            if (f.Id is "net_cooling_W" or "low_pressure_Pa" or "power_W") Compare(id, share, figure, f);
            figure++;
        }
    }

    private static readonly Dictionary<string, (SensitivityFigures Up, SensitivityFigures Down)> Solved = [];

    private sealed record SensitivityFigures(double Net, double Low, double Power);

    private static void Compare(string id, double share, int figure, HeadlineFigure f)
    {
        var input = Found.Value.Inputs.Single(i => i.Id == id);
        double h = share * input.Value;
        if (!Solved.TryGetValue(id, out var both)) Solved[id] = both = (Figures(id, h), Figures(id, -h));
        double Of(SensitivityFigures s) => f.Id switch { "net_cooling_W" => s.Net, "low_pressure_Pa" => s.Low, _ => s.Power };
        double difference = (Of(both.Up) - Of(both.Down)) / (2 * h), slope = input.Slopes[figure], step = share * input.Value;
        // a tenth of the change, or what the throttle's own numerics leave in the figure
        double noise = f.Id switch { "net_cooling_W" => 0.12, "low_pressure_Pa" => 400, _ => 0.5 };
        Assert.True(Math.Abs(difference - slope) * step <= 0.1 * Math.Abs(difference * step) + noise, $"{id}: {f.Id} changes by {slope * step:G4} by the slope and by {difference * step:G4} by two solves");
    }

    private static SensitivityFigures Figures(string id, double d)
    {
        MachineDescription m = id switch
        {
            "charge.mass" => Workshop.Machine with { Charge = Workshop.Machine.Charge with { MassKg = Workshop.Machine.Charge.MassKg + d } },
            "recuperator.length" => Workshop.With<RecuperatorPart>(r => r with { LengthM = r.LengthM + d }),
            "throttle.capillary.length" => Workshop.With<ThrottlePart>(t => t with { Capillary = t.Capillary! with { LengthM = t.Capillary.LengthM + d } }),
            "room.temperature" => Workshop.Machine with { Room = Workshop.Machine.Room with { TemperatureK = Workshop.Machine.Room.TemperatureK + d } },
            "cold-box.wall" => Workshop.With<ColdBoxPart>(b => b with { WallM = b.WallM + d }),
            _ => Workshop.With<WarmExchangerPart>(w => w with { ConductanceWPerK = w.ConductanceWPerK + d }),
        };
        var solver = Workshop.Close(m, seed: Workshop.Closed);
        var p = solver.Operating.Pass;
        return new(p.NetCoolingW, p.State.SuctionPa, Workshop.Rate(solver).Power.TotalW);
    }

    [Fact]
    public void Every_headline_figure_has_a_band()
    {
        Assert.All(Found.Value.Figures, f => Assert.True(f.Deviation > 0, f.Id));
        Assert.True(Found.Value.Inputs.Count > 25);
    }
}
