using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Tests.Streams;

/// <summary>Tables along the composition against flashes of the same model there.</summary>
public class StreamFamilyTests
{
    private static readonly string[] Five = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    private static readonly double[] FiveZ = [0.30, 0.32, 0.20, 0.10, 0.08];
    private static readonly double[] Pressures = [4.4e5, 5.6e5];

    public static TheoryData<bool, double, double> Models => new() { { false, 0.02, 0.06 }, { true, 0.02, 0.06 }, { false, 0.06, 0.25 }, { true, 0.06, 0.25 } };

    /// <summary>The table in the middle is itself, whatever the slopes.</summary>
    [Fact]
    public void At_its_own_composition_nothing_moves()
    {
        var (family, _) = Make(cubic: true);
        var same = family.At(FiveZ);
        var (low, high) = family.Table.Range(5e5);
        for (double h = low; h < high; h += 137)
            Assert.Equal(family.Table.Temperature(h, 5e5, out _), same.Temperature(h, 5e5, out _), 9);
        Assert.Equal(0, family.Distance(FiveZ), 12);
    }

    /// <summary>A few hundredths away in ln of a fraction its temperatures are those of flashes there within hundredths of a kelvin.</summary>
    [Theory, MemberData(nameof(Models))]
    public void Neighbours_follow_without_a_flash(bool cubic, double distance, double mostK)
    {
        var (family, model) = Make(cubic);
        double[] weights = [0, 1, -0.6, 0.8, -1], z = [.. FiveZ.Select((f, i) => f * Math.Exp(distance * weights[i]))];
        double sum = z.Sum();
        for (int i = 0; i < z.Length; i++) z[i] /= sum;
        Assert.Equal(distance, family.Distance(z), 9);
        var table = family.At(z);
        var flash = new Flash(model);
        double worst = 0, quality = 0;
        for (double t = 95; t < 300; t += 2.3)
        {
            var state = flash.TemperaturePressure(t, Pressures[0], z);
            var point = table.At(state.MolarEnthalpy, Pressures[0]);
            worst = Math.Max(worst, Math.Abs(point.TemperatureK - t));
            quality = Math.Max(quality, Math.Abs(point.VapourFraction - state.Phases.Where(p => p.Kind == Fluids.States.PhaseKind.Vapour).Sum(p => p.Fraction)));
        }
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{(cubic ? "cubic" : "reference")}, {distance} away: {worst:0.000} K, vapour fraction {quality:0.0000}"));
        Assert.InRange(worst, 0, mostK);
        Assert.InRange(quality, 0, 0.01);
        Assert.Equal(model.Substances.Zip(z, (s, x) => s.MolarMass * x).Sum(), table.MolarMass, 12);
    }

    /// <summary>Small step in, small step out: halving the way to a neighbour halves the change, which tables made afresh do not.</summary>
    [Fact]
    public void Along_the_composition_all_is_smooth()
    {
        var (family, _) = Make(cubic: true);
        double h = family.Table.Enthalpy(160, 5e5);
        double At(double s)
        {
            double[] z = [.. FiveZ];
            z[3] *= Math.Exp(s);
            double sum = z.Sum();
            for (int i = 0; i < z.Length; i++) z[i] /= sum;
            return family.At(z).Temperature(h, 5e5, out _);
        }

        double whole = At(2e-6) - At(0), half = At(1e-6) - At(0);
        Assert.NotEqual(0, half);
        Assert.InRange(whole / half, 1.99, 2.01);
    }

    private static (StreamFamily Family, HelmholtzModel Model) Make(bool cubic)
    {
        HelmholtzModel model = cubic ? CubicModel.Create(Five) : ReferenceModel.Create(Five);
        var (flash, transport) = (new Flash(model), new TransportModel(model));
        var table = StreamTable.Create(flash, transport, FiveZ, Pressures, 92, 305, cancel: TestContext.Current.CancellationToken);
        return (StreamFamily.Create(table, flash, transport, TestContext.Current.CancellationToken) ?? throw new InvalidOperationException("no slopes"), model);
    }
}
