namespace Coldwright.Machine.Throttling;

/// <summary>Kinetic energy against pressure as a march found it, J/kg: that of the contraction in front of the entrance, held behind the exit.</summary>
internal sealed class KineticProfile
{
    private readonly double[] _pressure, _kinetic;
    private readonly NozzleFlow _entrance;

    private KineticProfile(double[] pressure, double[] kinetic, NozzleFlow entrance) => (_pressure, _kinetic, _entrance) = (pressure, kinetic, entrance);

    public static KineticProfile Of(CapillaryMarch march, double flux)
    {
        int n = march.Last - march.First + 2;
        var (p, k) = (new double[n], new double[n]);
        for (int i = 0; i < n; i++)
        {
            int j = march.First - 1 + i;
            double w = flux * march.VolumeAt(j);
            (p[i], k[i]) = (march.PressureAt(j), 0.5 * w * w);
        }
        return new KineticProfile(p, k, march.Entrance);
    }

    public double At(double pressurePa)
    {
        if (pressurePa <= _pressure[^1]) return _kinetic[^1];
        if (pressurePa >= _pressure[0]) return _entrance.KineticAt(pressurePa);
        int low = 0, high = _pressure.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_pressure[middle] >= pressurePa) low = middle; else high = middle;
        }
        double share = (_pressure[low] - pressurePa) / (_pressure[low] - _pressure[high]);
        return _kinetic[low] + share * (_kinetic[high] - _kinetic[low]);
    }
}
