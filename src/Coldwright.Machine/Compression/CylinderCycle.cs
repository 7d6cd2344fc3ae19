using Coldwright.Fluids.Substances;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Machine.Compression;

/// <summary>What happens between the suction port and the discharge valve at a given shell temperature.</summary>
/// <param name="Heated">Suction gas after the shell, at suction pressure.</param>
/// <param name="Throttled">Behind the suction port, leak not yet mixed in.</param>
/// <param name="Drawn">In the cylinder at the start of compression, leak mixed in.</param>
/// <param name="Compressed">At the end of compression, pressure in the cylinder.</param>
/// <param name="Valve">Behind the discharge valve, at discharge pressure.</param>
/// <param name="LeakShare">Leaked over compressed flow.</param>
/// <param name="Clearance">Volumetric efficiency of clearance.</param>
/// <param name="SpeedRevPerS">Shaft speed, rev/s.</param>
/// <param name="NetFlow">Delivered, mol/s.</param>
/// <param name="IndicatedW">W.</param>
/// <param name="FrictionW">W.</param>
/// <param name="MotorLossW">W.</param>
internal sealed record CylinderState(GasPoint Heated, GasPoint Throttled, GasPoint Drawn, GasPoint Compressed, GasPoint Valve,
    double LeakShare, double Clearance, double SpeedRevPerS, double NetFlow, double IndicatedW, double FrictionW, double MotorLossW)
{
    public double ShaftW => IndicatedW + FrictionW;
    public double ElectricalW => ShaftW + MotorLossW;
}

/// <summary>
/// The cylinder: throttling at the ports, compression along the mixture's isentrope, re-expansion of the clearance gas, leak as a
/// nozzle whose gas mixes into the charge again, friction, motor slip. The five couplings (leak share, work, two port losses,
/// speed) settle by accelerated substitution, started from the last answer, at first from that of another cylinder if there is one.
/// </summary>
internal sealed class CylinderCycle(CompressorMachine machine, GasPath gas, double molarMass, CylinderCycle? like = null)
{
    private const int MostRounds = 120;
    private const double MostLeak = 0.75, MostWork = 30, HottestK = 1500;
    // leak share, work over R T, suction and discharge loss over the port's pressure, speed over the synchronous one
    private readonly double[] _x = like is null ? [0.05, 0, 0.02, 0.02, 1] : [.. like._x], _g = new double[5];
    private readonly AndersonMixing _mixing = new(5);
    // last temperatures, for the next search, K
    private double _drawnK = like?._drawnK ?? double.NaN, _compressedK = like?._compressedK ?? double.NaN;

    public CylinderState Solve(GasPoint suction, GasPoint heated, double dischargePa)
    {
        var traits = machine.Traits;
        double area = machine.LengthSquaredM2, unit = GasConstant.Mixture * suction.TemperatureK, synchronous = machine.SynchronousSpeedRevPerS;
        if (double.IsNaN(_compressedK))
        {
            (_drawnK, _compressedK) = (heated.TemperatureK, heated.TemperatureK * Math.Pow(dischargePa / suction.PressurePa, 0.17));
            _x[1] = Math.Log(dischargePa / suction.PressurePa);
        }
        _mixing.Reset();
        int starved = 0;
        for (int i = 0; i < MostRounds; i++)
        {
            double y = _x[0] = Math.Clamp(_x[0], 0, MostLeak), w = (_x[1] = Math.Clamp(_x[1], 0, MostWork)) * unit, speed = (_x[4] = Math.Clamp(_x[4], 0.5, 1)) * synchronous;
            double drawnPa = suction.PressurePa * (1 - (_x[2] = Math.Clamp(_x[2], 0, 0.5))), endPa = dischargePa * (1 + (_x[3] = Math.Clamp(_x[3], 0, 0.5)));
            // the leak returns with what was put into it: h_drawn = h_heated + y/(1-y) w
            var drawn = gas.AtEnthalpy(drawnPa, heated.MolarEnthalpy + y / (1 - y) * w, _drawnK, GasPlace.Drawn);
            var end = gas.AtEntropy(endPa, drawn.MolarEntropy, _compressedK, GasPlace.Compressed);
            (_drawnK, _compressedK) = (drawn.TemperatureK, end.TemperatureK);
            if (end.TemperatureK > HottestK && ++starved > 8) throw NothingDelivered(suction, dischargePa, "the leaked gas, compressed again and again, passes 1500 K");
            double work = end.MolarEnthalpy - drawn.MolarEnthalpy;
            double clearance = traits.ReExpansionExponent is { } n
                ? ClearanceReExpansion.Polytropic(traits.ClearanceFraction, endPa / drawnPa, n)
                : ClearanceReExpansion.FromDensityRatio(traits.ClearanceFraction, end.MolarDensity / drawn.MolarDensity);
            if (clearance <= 0.01) throw NothingDelivered(suction, dischargePa, "the gas left in the clearance fills the cylinder when it re-expands");
            double through = clearance * machine.DisplacementM3 * speed * drawn.MolarDensity, net = through * (1 - y);
            double exponent = Math.Log(endPa / drawnPa) / Math.Log(end.MolarDensity / drawn.MolarDensity);
            double leakFlow = traits.LeakageAreaFactor * area / molarMass
                * GasRestriction.Nozzle(endPa, end.MolarDensity * molarMass, drawnPa, exponent);
            if (leakFlow > MostLeak * through && ++starved > 8) throw NothingDelivered(suction, dischargePa, "the leak returns most of what is compressed");

            double indicated = through * work;
            double friction = traits.LossScale * (traits.FrictionPressurePa * machine.DisplacementM3 * speed + traits.FrictionShare * indicated);
            double rating = machine.MotorRatingW, load = (indicated + friction) / rating;
            _g[0] = Math.Min(leakFlow / through, MostLeak);
            _g[1] = work / unit;
            _g[2] = Math.Min(PortLoss(net * molarMass, heated.MolarDensity * molarMass, traits.SuctionPortFactor * area) / suction.PressurePa, 0.5);
            _g[3] = Math.Min(PortLoss(net * molarMass, end.MolarDensity * molarMass, traits.DischargePortFactor * area) / dischargePa, 0.5);
            _g[4] = machine.ShaftSpeedRevPerS is null ? 1 - Math.Min(traits.RatedSlip * load, 0.3) : 1;
            double change = 0;
            for (int j = 0; j < 5; j++) change += Math.Abs(_g[j] - _x[j]);
            if (change < 2e-11)
            {
                // friction warms oil and shell; the gas leaves with the indicated work only, over what is delivered
                var valve = gas.AtEnthalpy(dischargePa, heated.MolarEnthalpy + indicated / net, end.TemperatureK, GasPlace.Valve);
                var throttled = y > 0 ? gas.AtEnthalpy(drawnPa, heated.MolarEnthalpy, heated.TemperatureK, GasPlace.Throttled) : drawn;
                double motor = traits.LossScale * rating * (traits.MotorConstantLoss + traits.MotorQuadraticLoss * load * load);
                return new CylinderState(heated, throttled, drawn, end, valve, y, clearance, speed, net, indicated, friction, motor);
            }
            _mixing.Next(_x, _g);
        }
        throw new SolveException(SolveReport.Telling(SolveStatus.NotConverged, MostRounds, _g[0] - _x[0],
            $"compressor: leak and port losses did not settle between {SpokenAmount.Pressure(suction.PressurePa, "0.###")} and {SpokenAmount.Pressure(dischargePa, "0.###")} (leak share {_x[0]:0.###}); the point is close to where nothing is delivered"));
    }

    // rho u^2/2 at the mean velocity through the port, Pa
    private static double PortLoss(double massFlow, double massDensity, double portArea)
    {
        double velocity = massFlow / (massDensity * portArea);
        return 0.5 * massDensity * velocity * velocity;
    }

    private static SolveException NothingDelivered(GasPoint suction, double dischargePa, string why) => new(SolveReport.Telling(SolveStatus.NoSolution, 0, double.NaN,
        $"compressor: it delivers nothing from {SpokenAmount.Pressure(suction.PressurePa, "0.###")} to {SpokenAmount.Pressure(dischargePa, "0.###")} (ratio {dischargePa / suction.PressurePa:0.#}): {why}; lower the discharge pressure or raise the suction"));
}
