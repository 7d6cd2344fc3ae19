using System.Globalization;
using Coldwright.Numerics;
using Xunit;

namespace Coldwright.Simulation.Tests.ClosedLoop;

/// <summary>Random sensible machines each close or are refused with the balance that cannot be met; none hangs. COLDWRIGHT_MACHINES=500 looks at five hundred.</summary>
public sealed class RandomMachineTests
{
    private const int Usual = 8;

    [Fact]
    public void Machines_close_or_say_why_not()
    {
        int count = int.TryParse(Environment.GetEnvironmentVariable("COLDWRIGHT_MACHINES"), NumberStyles.None, CultureInfo.InvariantCulture, out int asked) ? asked : Usual, closed = 0;
        var refused = new List<string>();
        for (int seed = 1; seed <= count; seed++)
        {
            var machine = RandomMachine.Make(seed);
            try
            {
                var solver = Workshop.Close(machine);
                Assert.True(solver.Operating.Residual < 2e-3, $"machine {seed}: residual {solver.Operating.Residual:E1}");
                Assert.True(double.IsFinite(solver.Operating.Pass.NetCoolingW));
                closed++;
            }
            catch (SolveException e)
            {
                Assert.True(e.Message.Length > 40, $"machine {seed}: '{e.Message}' says too little");
                Assert.True(machine.Parts.Any(p => e.Message.Contains(p.Name, StringComparison.Ordinal)) || e.Message.Contains("charge", StringComparison.Ordinal), $"machine {seed}: '{e.Message}' names no part");
                refused.Add($"machine {seed}: {e.Message}");
            }
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{closed} of {count} closed{Environment.NewLine}{string.Join(Environment.NewLine, refused)}");
        Assert.True(closed >= 0.7 * count, $"only {closed} of {count} closed");
    }
}
