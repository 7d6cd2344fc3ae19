using Coldwright.Blind;
using Coldwright.Runs.Explain;

namespace Coldwright.Runs.Tests.Explain;

/// <summary>
/// Six of the blind cases. The generator shares nothing with the solvers: own marching model, own correlations, a third set of pair parameters, real sensors' errors. The
/// published score is that of <c>./bench blind</c>.
/// </summary>
[Collection(BlindCollection.Name)]
public sealed class BlindCases(BlindRuns blind)
{
    // what the builder does not know: films, friction and parts off by what their correlations and makers leave open
    internal static Truth With(params (string, double)[] faults) => new()
    {
        Faults = faults, HighFilm = 1.12, LowFilm = 0.9, CoilFilm = 1.2, Friction = 0.95, Leak = 1.04, Compressor = 0.98, Precooler = 1.03, LoadMass = 0.97, FoamHeat = 1.05, Charge = [1.01, 0.99, 1.0, 1.02, 0.98],
    };

    public static TheoryData<string, double, SensorSet> Faults => new()
    {
        { "wet-insulation", 0.11, SensorSet.Usual }, { "exchanger", 0.35, SensorSet.Usual }, { "extra-metal", 3.5, SensorSet.Usual }, { "capillary-blocked", 0.45, SensorSet.Full }, { "cold-junction", 10, SensorSet.Full },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void TheHiddenFaultIsNamedFirst(string id, double size, SensorSet set)
    {
        var e = blind.Explain(With((id, size)), set);
        var named = e.Causes.Where(c => c.Named).Select(c => c.Id).ToArray();
        Assert.True(named.Contains(id) || e.Indistinguishable.Any(g => g.Contains(id)), string.Join(", ", e.Causes.Take(4).Select(c => FormattableString.Invariant($"{c.Id} {c.Value:0.00} p{c.Probability:0.00}"))) + FormattableString.Invariant($", misfit {e.Misfit:0.00}"));
        Assert.All(e.Causes, c => Assert.True(double.IsFinite(c.Value) && c.Low <= c.High));
        Assert.Contains("pull-down", e.Phases.Select(p => p.Kind));
        Assert.False(e.Paragraph.IsEmpty);
    }

    [Fact]
    public void ASoundMachineIsLeftAlone()
    {
        var e = blind.Explain(With(), SensorSet.Usual);
        Assert.Equal("none", e.Causes[0].Id);
        Assert.InRange(e.Causes.Sum(c => c.Id == "none" ? c.Probability : 0), 0, 1);
    }
}
