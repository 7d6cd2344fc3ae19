namespace Coldwright.Simulation.Rating;

/// <summary>
/// Relaxed fixed-point iteration of two unknowns (molar flow and a temperature) with the step factor of Aitken as used by
/// Irons and Tuck, Int. J. Numer. Methods Eng. 1 (1969) 275: the recuperator, the warm exchanger and the compressor's flow
/// answer each other, and plain substitution may swing for ever.
/// </summary>
internal sealed class Relaxation
{
    private double _factor = 1, _previousFlow, _previousT;
    private bool _started;

    public (double Flow, double TemperatureK) Next(double flow, double nextFlow, double t, double nextT)
    {
        // residuals in comparable units: relative flow, hundreds of kelvins
        double rf = (nextFlow - flow) / flow, rt = (nextT - t) / 100;
        if (_started)
        {
            double df = rf - _previousFlow, dt = rt - _previousT, norm = df * df + dt * dt;
            if (norm > 0) _factor = Math.Clamp(-_factor * (_previousFlow * df + _previousT * dt) / norm, 0.05, 1.5);
        }
        (_previousFlow, _previousT, _started) = (rf, rt, true);
        return (flow * (1 + _factor * rf), t + 100 * _factor * rt);
    }
}
