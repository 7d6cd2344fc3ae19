namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// What the last full certificate found: where it was made, and every stationary point above the tangent plane that is not one
/// of the phases. A warm solve near by follows these points instead of starting from everywhere again, as long as all of them
/// stay clear of the plane.
/// </summary>
internal sealed class StabilityMemory(int count)
{
    // How far a certificate reaches. A new stationary point is born above the plane and needs to sink to it: in WarmCertificateTests
    // none did within one and a half times this reach (250,000 steps in each model).
    private const double TemperatureReach = 0.06, PressureReach = 0.18, GasAlone = 0.25;

    // reduced densities between which a phase may be on its way from gas to liquid
    private const double GasBelow = 0.3, LiquidAbove = 1.6;

    // what counts as clear of the plane, units of RT
    public const double Clear = 0.02;

    private const int Capacity = 12;

    private readonly double[] _z = new double[count];
    private readonly double[][] _amounts = Enumerable.Range(0, Capacity).Select(_ => new double[count]).ToArray();
    private readonly double[] _densities = new double[Capacity];
    private readonly Branch[] _branches = new Branch[Capacity];
    private double _temperature, _pressure;
    private int _phases;
    private bool _usable, _open, _gasSeen;

    public int Points { get; private set; }

    /// <summary>True while a full certificate is being remembered.</summary>
    public bool IsOpen => _open;

    public ReadOnlySpan<double> Amounts(int point) => _amounts[point];
    public double Density(int point) => _densities[point];
    public Branch BranchOf(int point) => _branches[point];

    /// <summary>
    /// Does the memory hold at this state with these phases? A phase between gas and liquid may part anywhere near a critical
    /// point; a lone liquid that saw no other stationary point says nothing about its neighbourhood, a lone gas little. Several liquids
    /// that saw no gas do not know how far off their boiling is.
    /// </summary>
    public bool Reaches(double temperatureK, double pressurePa, ReadOnlySpan<double> z, ReadOnlySpan<PhaseBuffer> phases)
    {
        if (!_usable || phases.Length != _phases || !z.SequenceEqual(_z)) return false;
        bool gas = true, anyGas = _gasSeen;
        foreach (var phase in phases)
        {
            double density = phase.Density / phase.DividingDensity;
            if (density is > GasBelow and < LiquidAbove) return false;
            gas &= density <= GasBelow;
            anyGas |= density <= GasBelow;
        }
        if (phases.Length > 1 && !anyGas) return false;
        double share = 1;
        if (phases.Length == 1 && Points == 0)
        {
            if (!gas) return false;
            share = GasAlone;
        }
        return Math.Abs(temperatureK / _temperature - 1) < share * TemperatureReach && Math.Abs(pressurePa / _pressure - 1) < share * PressureReach;
    }

    /// <summary>A full certificate begins.</summary>
    public void Begin()
    {
        (_usable, _open, _gasSeen, Points) = (false, true, false, 0);
    }

    /// <summary>A stationary point above the plane.</summary>
    public void Add(ReadOnlySpan<double> amounts, PhaseBuffer trial, Branch branch)
    {
        if (!_open) return;
        double density = trial.Density;
        _gasSeen |= density <= GasBelow * trial.DividingDensity;
        for (int k = 0; k < Points; k++)
        {
            double distance = 0;
            for (int i = 0; i < count; i++)
            {
                double d = Math.Sqrt(amounts[i]) - Math.Sqrt(_amounts[k][i]);
                distance += d * d;
            }
            if (distance < 1e-8 && Math.Abs(density / _densities[k] - 1) < 1e-3) return;
        }
        if (Points == Capacity)
        {
            _open = false;
            return;
        }
        amounts.CopyTo(_amounts[Points]);
        (_densities[Points], _branches[Points]) = (density, branch);
        Points++;
    }

    /// <summary>Something was met that can't be followed: nothing is remembered.</summary>
    public void Spoil() => _open = false;

    /// <summary>The full certificate held.</summary>
    public void Keep(double temperatureK, double pressurePa, ReadOnlySpan<double> z, int phases)
    {
        if (!_open) return;
        (_temperature, _pressure, _phases, _usable, _open) = (temperatureK, pressurePa, phases, true, false);
        z.CopyTo(_z);
    }
}
