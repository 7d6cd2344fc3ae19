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

    /// <summary>For work on several threads: a cancelled trace then ends with the usual exception, not with a collection of them.</summary>
    public ParallelOptions Threads { get; } = new() { CancellationToken = cancel };

    /// <summary>A probe of the same mixture for another thread; its counts are added to this one's.</summary>
    public PhaseProbe Another() => new(model, z, plane, cancel) { _parent = _parent ?? this };

    private PhaseProbe? _parent;
    private int _calls, _failures;

    /// <summary>Places around which neighbouring answers contradict one another.</summary>
    public List<Place> Unsettled { get; } = [];

    /// <summary>Flashes done.</summary>
    public int Calls => _calls;

    /// <summary>Places without an answer.</summary>
    public int Failures => _failures;

    /// <summary>The phases at a place; null when the flash has no answer there nor next to it.</summary>
    public Sample? Ask(Place at)
    {
        cancel.ThrowIfCancellationRequested();
        foreach (var shift in Shifts)
        {
            var place = at + shift;
            Interlocked.Increment(ref (_parent ?? this)._calls);
            if (_flash.TrySolve(plane.TemperatureK(place), plane.PressurePa(place), z, warm: true)) return Read(place);
        }
        Interlocked.Increment(ref (_parent ?? this)._failures);
        return null;
    }

    private Sample Read(Place at)
    {
        double t = plane.TemperatureK(at), rt = _flash.Solver.Evaluation.GasConstant * t, p = plane.PressurePa(at);
        var found = _flash.Solver.Phases;
        var phases = new SamplePhase[found.Length];
        for (int j = 0; j < phases.Length; j++)
        {
            double[] x = [.. found[j].X];
            double volume = 0, critical = 0, density = found[j].Density;
            for (int i = 0; i < x.Length; i++)
            {
                volume += x[i] / model.Substances[i].CriticalDensity;
                critical += x[i] * model.Substances[i].CriticalTemperatureK;
            }
            phases[j] = new SamplePhase(x, Math.Log(density), Math.Log(p / (density * rt)), density * volume, density * volume < 1 || t > critical, found[j].Fraction);
        }
        Array.Sort(phases, (a, b) => a.ReducedDensity.CompareTo(b.ReducedDensity));
        return new Sample(at, phases, _flash.PhaseNames());
    }
}
