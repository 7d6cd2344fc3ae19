using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Fluids.Envelopes;

/// <summary>Asks certified flashes of one mixture; a flash without an answer is tried again a hair beside.</summary>
internal sealed class PhaseProbe(HelmholtzModel model, double[] z, Plane plane, CancellationToken cancel)
{
    // far below the accuracy of a boundary, far above rounding
    private const double Hair = 4e-7;

    private static readonly Place[] Shifts = [default, new(Hair, 0), new(0, -Hair), new(-Hair, Hair)];

    private readonly Flash _flash = new(model);

    public Plane Plane => plane;

    /// <summary>Flashes done.</summary>
    public int Calls { get; private set; }

    /// <summary>Places without an answer.</summary>
    public int Failures { get; private set; }

    /// <summary>The phases at a place; null when the flash has no answer there nor next to it.</summary>
    public Sample? Ask(Place at)
    {
        cancel.ThrowIfCancellationRequested();
        foreach (var shift in Shifts)
        {
            var place = at + shift;
            Calls++;
            if (_flash.TrySolve(plane.TemperatureK(place), plane.PressurePa(place), z, warm: true)) return Read(place);
        }
        Failures++;
        return null;
    }

    private Sample Read(Place at)
    {
        double rt = _flash.Solver.Evaluation.GasConstant * plane.TemperatureK(at), p = plane.PressurePa(at);
        var found = _flash.Solver.Phases;
        var phases = new SamplePhase[found.Length];
        for (int j = 0; j < phases.Length; j++)
            phases[j] = new SamplePhase(found[j].X.ToArray(), Math.Log(found[j].Density), Math.Log(p / (found[j].Density * rt)), Reduced(found[j].X, found[j].Density), found[j].Fraction);
        Array.Sort(phases, (a, b) => a.ReducedDensity.CompareTo(b.ReducedDensity));
        return new Sample(at, phases, _flash.PhaseNames());
    }

    private double Reduced(double[] x, double density)
    {
        double volume = 0;
        for (int i = 0; i < x.Length; i++) volume += x[i] / model.Substances[i].CriticalDensity;
        return density * volume;
    }
}
