using Coldwright.Materials.Solids;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Temperature of a body against the heat in it. Heat is counted in kelvin at the heat capacity of <see cref="ReferenceK"/>, so that it is about as large as a
/// temperature and a sum of heats is kept exactly by an integrator. Cubic pieces with slope 1/c between temperatures one kelvin apart.
/// </summary>
internal sealed class HeatTable
{
    /// <summary>Where heat and temperature have the same slope, K.</summary>
    public const double ReferenceK = 290;

    private const double ColdestK = 20, WarmestK = 420, StepK = 1;
    private readonly double[] _heat, _capacity;

    /// <param name="capacity">Heat capacity at a temperature (K), any unit; above 0.</param>
    public HeatTable(Func<double, double> capacity)
    {
        ReferenceCapacity = capacity(ReferenceK);
        int n = (int)((WarmestK - ColdestK) / StepK) + 1;
        (_heat, _capacity) = (new double[n], new double[n]);
        double At(double k) => capacity(k) / ReferenceCapacity;
        _heat[0] = ColdestK;
        for (int i = 0; i < n; i++)
        {
            double k = ColdestK + i * StepK;
            _capacity[i] = At(k);
            if (!(_capacity[i] > 0)) throw new ArgumentException(FormattableString.Invariant($"the heat capacity at {k} K is {_capacity[i]} of that at {ReferenceK} K; it must be above 0"));
            // Simpson's rule over the cell
            if (i > 0) _heat[i] = _heat[i - 1] + StepK / 6 * (_capacity[i - 1] + 4 * At(k - 0.5 * StepK) + _capacity[i]);
        }
    }

    /// <summary>That of a solid, per kilogram.</summary>
    public static HeatTable Of(SolidMaterial solid) => new(k => solid.SpecificHeat(k).Value);

    /// <summary>Heat capacity at <see cref="ReferenceK"/>, in the unit given: heat times this is energy.</summary>
    public double ReferenceCapacity { get; }

    /// <summary>Temperature, K.</summary>
    public double Temperature(double heat)
    {
        if (heat <= _heat[0]) return ColdestK + (heat - _heat[0]) / _capacity[0];
        if (heat >= _heat[^1]) return WarmestK + (heat - _heat[^1]) / _capacity[^1];
        int low = 0, high = _heat.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_heat[middle] <= heat) low = middle; else high = middle;
        }
        double width = _heat[high] - _heat[low], u = (heat - _heat[low]) / width, v = 1 - u;
        return ColdestK + StepK * (low + u * u * (3 - 2 * u)) + u * v * width * (v / _capacity[low] - u / _capacity[high]);
    }

    /// <summary>Heat at a temperature (K): the inverse of <see cref="Temperature"/>, to rounding.</summary>
    public double Heat(double temperatureK)
    {
        double low = _heat[0] - 20, high = _heat[^1] + 100, x = Math.Clamp(temperatureK, low, high);
        for (int i = 0; i < 60; i++)
        {
            double f = Temperature(x) - temperatureK;
            if (Math.Abs(f) < 1e-13 * temperatureK) break;
            if (f > 0) high = x; else low = x;
            double next = x - f * Capacity(temperatureK);
            x = next > low && next < high ? next : 0.5 * (low + high);
        }
        return x;
    }

    /// <summary>Heat capacity at a temperature (K) over that at <see cref="ReferenceK"/>.</summary>
    public double Capacity(double temperatureK)
    {
        double place = Math.Clamp((temperatureK - ColdestK) / StepK, 0, _capacity.Length - 1.000001);
        int i = (int)place;
        return _capacity[i] + (place - i) * (_capacity[i + 1] - _capacity[i]);
    }
}
