using Coldwright.Machine.Insulation;

namespace Coldwright.Machine.Tests.Insulation;

/// <summary>Evacuated spaces and what crosses a wall.</summary>
public sealed class EvacuatedLayerTests
{
    /// <summary>Gray parallel walls by hand: sigma (300^4 - 80^4)/(1/0.1 + 1/0.2 - 1) = 32.6 W/m2, and black ones 457 W/m2.</summary>
    [Fact]
    public void Gray_walls_by_hand()
    {
        var black = new EvacuatedLayer("gap", 0.02, 1, 1, CellGas.Vacuum);
        Assert.Equal(456.98, black.Potential(80, 300) / 0.02, 0.02);
        var gray = new EvacuatedLayer("gap", 0.02, 0.1, 0.2, CellGas.Vacuum);
        Assert.Equal(456.98 / 14, gray.Potential(80, 300) / 0.02, 0.002);
        // N shields of the walls' own emissivity divide by N + 1
        var shielded = new EvacuatedLayer("gap", 0.02, 0.1, 0.1, CellGas.Vacuum, 9, 0.1);
        Assert.Equal(10, new EvacuatedLayer("gap", 0.02, 0.1, 0.1, CellGas.Vacuum).Potential(80, 300) / shielded.Potential(80, 300), 1e-9);
        Assert.Equal(0, gray.Potential(200, 200));
    }

    /// <summary>30 shields of 0.04 and no gas: below the 0.04 mW/(m K) that handbooks give as the best of blankets, about 1 cm of stack (common practice).</summary>
    [Fact]
    public void A_blanket_is_better_than_any_other()
    {
        var blanket = new EvacuatedLayer("blanket", 0.01, 0.1, 0.1, CellGas.Nitrogen with { PressurePa = 1e-3 }, 30);
        var k = blanket.Potential(80, 300) / 220;
        Assert.InRange(k, 1e-6, 4e-5);
        var spoiled = blanket with { Residual = CellGas.Nitrogen with { PressurePa = 1 } };
        Assert.NotEmpty(blanket.Warnings(80, 300));
        Assert.True(spoiled.Potential(80, 300) > 5 * blanket.Potential(80, 300));
        Assert.Equal(new EvacuatedLayer("b", 0.01, 0.1, 0.1, CellGas.Nitrogen with { PressurePa = 1 }, 30).Potential(80, 300), spoiled.Potential(80, 300), 1e-12);
        Assert.Throws<ArgumentException>(() => (blanket with { ShieldEmissivity = 0 }).Potential(80, 300));
    }

    [Fact]
    public void An_evacuated_wall_is_solved_like_any_other()
    {
        var box = new InsulatedEnclosure(new CylinderWall(0.1, 0.4), [new EvacuatedLayer("gap", 0.02, 0.1, 0.1, CellGas.Nitrogen with { PressurePa = 0.01 })], [], 295, 0.5, new FreeConvectionFilm(0.4));
        var leak = EnclosureSolver.Solve(box, 90);
        Assert.InRange(leak.EnergyError, 0, 1e-10);
        Assert.InRange(leak.WallW, 3, 12);
        Assert.Throws<ArgumentException>(() => new EvacuatedLayer("gap", 0.02, 0.1, 0.1, CellGas.Air));
    }
}
