using Coldwright.Machine.Precooling;

namespace Coldwright.Machine.Tests.Precooling;

/// <summary>A loop starts each question from its last answer; what it was asked before must not show in what it answers.</summary>
public class HistoryTests
{
    public static TheoryData<double, double, double> Machines => new()
    {
        // condenser W/K, evaporator W/K, cut-out K (0: none); the last is held at its lowest pressure by small loads
        { 60, 25, 0 }, { 300, 120, 0 }, { 12, 4, 0 }, { 60, 25, 235 },
    };

    [Theory]
    [MemberData(nameof(Machines))]
    public void AnswersDoNotDependOnWhatWasAskedBefore(double condenser, double evaporator, double cutOutK)
    {
        var machine = PrecoolerCases.Small with
        {
            Condenser = PrecoolerCases.Small.Condenser with { ConductanceWPerK = condenser },
            Evaporator = PrecoolerCases.Small.Evaporator with { ConductanceWPerK = evaporator },
            CutOutK = cutOutK > 0 ? cutOutK : null,
        };
        var asked = PrecoolerLoop.Create(machine, "R290", PrecoolerCases.Stop);
        MixtureLoad[] loads = [PrecoolerCases.Mixture(0.02, 300), PrecoolerCases.Mixture(0.02, 280), PrecoolerCases.Mixture(0.02, 262)];
        var random = new Random(11);
        for (int i = 0; i < 40; i++)
        {
            // near steps and far ones, as a search round a loop makes them
            double flow = i % 4 == 0 ? 0.004 * Math.Pow(60, random.NextDouble()) : 0.03 * (1 + 0.02 * random.NextDouble()), room = i % 10 == 9 ? 306 : PrecoolerCases.Room;
            var load = loads[i % 7 == 0 ? random.Next(3) : 0].WithFlow(flow);
            var a = asked.Solve(load, room, false, PrecoolerCases.Stop);
            var b = PrecoolerLoop.Create(machine, "R290", PrecoolerCases.Stop).Solve(load, room, false, PrecoolerCases.Stop);
            Assert.Equal(b.CoolingW, a.CoolingW, 1e-7 * b.CoolingW);
            Assert.Equal(b.EvaporatingK, a.EvaporatingK, 1e-6);
            Assert.Equal(b.CondensingK, a.CondensingK, 1e-6);
            Assert.Equal(b.RunShare, a.RunShare, 1e-6);
            Assert.InRange(a.EvaporatorErrorK, 0, 1e-8);
        }
    }
}
