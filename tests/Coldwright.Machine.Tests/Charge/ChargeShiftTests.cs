using Coldwright.Machine.Charge;

namespace Coldwright.Machine.Tests.Charge;

/// <summary>How a leaking mixture changes, against Graham's law and against exact limits.</summary>
public sealed class ChargeShiftTests
{
    /// <summary>Graham's law: hydrogen effuses 3.73 times as fast as nitrogen, sqrt(28.01/2.016) (any textbook of physical chemistry).</summary>
    [Fact]
    public void GasesEffuseByTheRootOfTheirMass()
    {
        double[] x = [0.5, 0.5], m = [2.016e-3, 28.013e-3];
        var dt = 1.0;
        var after = ChargeShift.MolecularAfter(x, m, 1, 1e-6, dt);
        // Ratio of the losses: each fraction moves as the charge's own loss less its own.
        double left = 1 - 1e-6 * dt, hydrogen = 0.5 - after[0] * left, nitrogen = 0.5 - after[1] * left;
        Assert.Equal(3.728, hydrogen / nitrogen, 0.005);
        Assert.Equal(1e-6, hydrogen + nitrogen, 1e-9);
    }

    /// <summary>Rayleigh's residue of two gases: n1/n10 = (n2/n20)^(r1/r2) at all times (exact for first-order losses).</summary>
    [Fact]
    public void TheResidueFollowsRayleigh()
    {
        double[] x = [0.3, 0.7], m = [16.04e-3, 44.1e-3];
        var after = ChargeShift.MolecularAfter(x, m, 10, 1e-5, 2e6);
        double ratio = after[0] / after[1] / (x[0] / x[1]), power = Math.Sqrt(44.1 / 16.04) - 1;
        // With s = n2/n20: ratio = s^power, and the total amount fixes s.
        var s = Math.Pow(ratio, 1 / power);
        Assert.InRange(s, 0.05, 0.3);
        var rate2 = 1e-6 / Math.Sqrt(44.1e-3) / (0.3 / Math.Sqrt(16.04e-3) + 0.7 / Math.Sqrt(44.1e-3));
        Assert.Equal(Math.Exp(-rate2 * 2e6), s, 1e-9);
    }

    [Fact]
    public void TheTimeOfAShiftIsWhereTheFractionHasMoved()
    {
        double[] x = [0.27, 0.38, 0.20, 0.09, 0.06], m = [28.01e-3, 16.04e-3, 30.07e-3, 44.1e-3, 58.12e-3];
        var time = ChargeShift.MolecularTime(x, m, 12, 1e-7, 0.01)!.Value;
        var moved = ChargeShift.MolecularAfter(x, m, 12, 1e-7, time).Zip(x, (a, b) => Math.Abs(a - b)).Max();
        Assert.Equal(0.01, moved, 1e-7);
        // Twice the leak, half the time.
        Assert.Equal(time / 2, ChargeShift.MolecularTime(x, m, 12, 2e-7, 0.01)!.Value, time * 1e-6);
    }

    [Fact]
    public void OneGasNeverShifts()
    {
        Assert.Null(ChargeShift.MolecularTime([1.0], [28e-3], 1, 1e-6, 0.01));
        Assert.Null(ChargeShift.MolecularTime([0.5, 0.5], [28e-3, 16e-3], 1, 0, 0.01));
        Assert.Null(ChargeShift.MolecularTime([0.5, 0.5], [28e-3, 28e-3], 1, 1e-6, 0.01));
    }
}
