using Coldwright.Machine.Description;
using Coldwright.Safety.Air;
using Xunit;
using static Coldwright.Safety.Tests.Workbench;

namespace Coldwright.Safety.Tests.Air;

/// <summary>Oxygen in the room.</summary>
public sealed class RoomTests
{
    private const double Hour = 3600;

    /// <summary>University of Nottingham's formula with 0.682 m3 of gas per litre: 10 L of nitrogen in 36 m3 leave 16.98 %.</summary>
    [Fact]
    public void Ten_litres_in_a_small_room() => Assert.Equal(16.98, 100 * RoomOxygen.AfterSuddenRelease(36, 6.82, 0.2095), 0.005);

    /// <summary>Fermilab manual 4240, air blown in: 36 m3, 5 m3/h escaping, 20 m3/h of air: 18.897 % after an hour, 16.8 % in the end.</summary>
    [Fact]
    public void Continuous_escape_with_ventilation()
    {
        Assert.Equal(0.18897, RoomOxygen.WithAirBlownIn(36, 20 / Hour, 5 / Hour, Hour), 5e-6);
        Assert.Equal(0.168, RoomOxygen.WithAirBlownIn(36, 20 / Hour, 5 / Hour, double.PositiveInfinity), 1e-12);
    }

    /// <summary>Each form solves its balance: V dC/dt = inflow - outflow, by small steps.</summary>
    [Fact]
    public void The_forms_solve_their_balances()
    {
        const double v = 36, q = 20 / Hour, r = 5 / Hour, dt = 0.5;
        double blown = 0.21, drawn = 0.21, none = 0.21;
        for (double t = 0; t < Hour; t += dt)
        {
            blown += dt / v * (q * 0.21 - (q + r) * blown);
            drawn += dt / v * ((q - r) * 0.21 - q * drawn);
            none -= dt / v * r * none;
        }
        Assert.Equal(blown, RoomOxygen.WithAirBlownIn(v, q, r, Hour), 1e-5);
        Assert.Equal(drawn, RoomOxygen.WithExhaust(v, q, r, Hour), 1e-5);
        Assert.Equal(none, RoomOxygen.WithExhaust(v, 0, r, Hour), 1e-5);
        Assert.Equal(none, RoomOxygen.WithExhaust(v, r, r, Hour), 1e-5);
        Assert.Equal(0.21 - (0.21 - none) * Math.Exp(-q * Hour / v), RoomOxygen.AfterRelease(v, q, none, Hour), 1e-5);
        Assert.Equal(none, RoomOxygen.AfterRelease(v, 0, none, Hour), 1e-5);
        Assert.Equal(0, RoomOxygen.AfterSuddenRelease(v, 2 * v));
    }

    /// <summary>Fermilab manual 4240: fatality factor 0 at 18 %, 1 at 8.8 %.</summary>
    [Fact]
    public void Fatality_factor()
    {
        Assert.Equal(0, RoomOxygen.FatalityFactor(0.18));
        Assert.Equal(1, RoomOxygen.FatalityFactor(0.08));
        Assert.Equal(1, RoomOxygen.FatalityFactor(0.0881), 0.4);
        Assert.Equal(Math.Pow(10, 6.5 - 76 * 0.12), RoomOxygen.FatalityFactor(0.12), 1e-12);
    }

    /// <summary>OSHA: deficient below 19.5 %; evacuation at 18 %; common practice: fainting below 12 %.</summary>
    [Theory]
    [InlineData(19.6, null)]
    [InlineData(19.4, Grade.Serious)]
    [InlineData(17.9, Grade.Stop)]
    [InlineData(5, Grade.Stop)]
    public void Grades(double percent, Grade? grade) => Assert.Equal(grade, OxygenLevel.GradeOf(percent));

    [Fact]
    public void The_words_get_graver()
    {
        Assert.Equal(4, new[] { 5, 11, 15, 19 }.Select(p => OxygenLevel.Effect(p)).Distinct().Count());
        Assert.Contains("die", OxygenLevel.Effect(11), StringComparison.Ordinal);
    }

    /// <summary>By hand: 81 m3, half an air change an hour, 4 m3/h of nitrogen for eight hours.</summary>
    [Fact]
    public void Gas_let_out_while_running()
    {
        var machine = Sound with { Room = Sound.Room with { AirChangesPerHour = 0.5 } };
        var flow = 4 / Hour * 101325 * 0.039948 / (8.314462618 * 295);
        var finding = Assert.Single(Cautions.For(machine, Inputs with { VentedProductKgPerS = flow }), f => f.Id == "oxygen-poor-while-running");
        Assert.Equal(20.95 / 44.5 * (40.5 + 4 * Math.Exp(-44.5 * 8 / 81)), finding.Value!.Value, 1e-6);
        var aired = machine with { Room = machine.Room with { AirChangesPerHour = 5 } };
        Assert.DoesNotContain(Cautions.For(aired, Inputs with { VentedProductKgPerS = flow }), f => f.Id == "oxygen-poor-while-running");
    }

    /// <summary>By hand: 6 kg of a charge of 0.0290 kg/mol make 5 m3 of gas.</summary>
    [Fact]
    public void A_charge_let_out_into_a_cupboard()
    {
        var cupboard = Sound with { Charge = Sound.Charge with { MassKg = 6, Mixture = new(["nitrogen"], [1]) }, Room = Sound.Room with { FloorAreaM2 = 10 } };
        var gas = 6 / 0.0280134 * 8.314462618 * 295 / 101325;
        var finding = Assert.Single(Cautions.For(cupboard, Inputs), f => f.Id == "oxygen-poor-charge");
        Assert.Equal(20.95 * (1 - gas / 27), finding.Value!.Value, 1e-6);
    }
}
