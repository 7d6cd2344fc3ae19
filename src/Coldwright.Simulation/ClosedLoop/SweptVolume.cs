using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Compression;
using Coldwright.Numerics;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Volume flow at a compressor's suction port against the pressure ratio, of warm gas, from a few runs of its model up to the ratio at which it delivers nothing more.</summary>
internal sealed class SweptVolume
{
    private const double SuctionPa = 2e5, Fade = 0.05;
    private const int Halvings = 4;
    private static readonly double[] Ratios = [1.3, 2, 3.2, 5, 8, 13, 20];

    private readonly List<double> _lnRatio = [], _volume = [];

    /// <param name="h">The machine.</param>
    /// <param name="model">Fluid model.</param>
    /// <param name="z">Mole fractions.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">It delivers nothing at any ratio.</exception>
    public SweptVolume(Hardware h, HelmholtzModel model, double[] z, CancellationToken cancel)
    {
        var mapped = h.Compressor.Map is { } map ? new MappedCompressor(map, h.Compressor.Machine, model, z) : null;
        var compressor = new HermeticCompressor(h.Compressor.Machine, model, z);
        double At(double lnRatio)
        {
            var duty = new CompressorDuty { SuctionTemperatureK = h.RoomK, SuctionPressurePa = SuctionPa, DischargePressurePa = SuctionPa * Math.Exp(lnRatio), RoomTemperatureK = h.RoomK };
            try
            {
                var p = mapped?.Run(duty, cancel) ?? compressor.Run(duty, cancel);
                return h.Knobs.CompressorFlow * p.MolarFlow / p.Suction.MolarDensity;
            }
            catch (SolveException) when (_volume.Count > 0)
            {
                return 0;
            }
        }

        foreach (double ratio in Ratios)
        {
            double ln = Math.Log(ratio), flow = At(ln);
            if (flow > 0)
            {
                _lnRatio.Add(ln);
                _volume.Add(flow);
                continue;
            }
            IsLimited = true;
            for (int i = 0; i < Halvings; i++)
            {
                double middle = 0.5 * (_lnRatio[^1] + ln), there = At(middle);
                if (there > 0)
                {
                    _lnRatio.Add(middle);
                    _volume.Add(there);
                }
                else ln = middle;
            }
            break;
        }
    }

    /// <summary>ln of the highest ratio at which something was delivered.</summary>
    public double LnHighest => _lnRatio[^1];

    /// <summary>ln of a ratio from which nothing is delivered.</summary>
    public double LnEnd => LnHighest + Fade;

    /// <summary>True when nothing was delivered beyond <see cref="LnHighest"/>; false: it was not looked for.</summary>
    public bool IsLimited { get; }

    /// <summary>m3/s at ln of a ratio; fades out from <see cref="LnHighest"/> to <see cref="LnEnd"/>.</summary>
    public double At(double lnRatio)
    {
        if (lnRatio <= _lnRatio[0]) return _volume[0];
        for (int i = 1; i < _lnRatio.Count; i++)
            if (lnRatio <= _lnRatio[i]) return _volume[i - 1] + (lnRatio - _lnRatio[i - 1]) / (_lnRatio[i] - _lnRatio[i - 1]) * (_volume[i] - _volume[i - 1]);
        return _volume[^1] * Math.Max(0, 1 - (lnRatio - LnHighest) / Fade);
    }
}
