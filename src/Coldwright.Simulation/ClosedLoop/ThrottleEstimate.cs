using Coldwright.Machine.Throttling;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// The throttle's flow near a point where its own model was asked: ln n linear in ln of both pressures and in the inlet's enthalpy. The
/// loop is iterated on it and the model asked again where the loop then stands, until both agree; slopes are found anew where it has moved far.
/// </summary>
internal sealed class ThrottleEstimate(Func<ThrottleInlet, double, bool, (double MolarFlow, bool Choked, double Uncertainty)> model)
{
    private const double PressureStep = 4e-3, EnthalpyStep = 25, FarLnPressure = 0.2, FarEnthalpy = 1200;
    private double _lnP, _h, _lnBack, _lnFlow, _byP, _byH, _byBack, _slopeLnP, _slopeH;
    private bool _known, _lent;
    private (ThrottleInlet Inlet, double BackPa, bool Rough, double LnFlow)? _last;

    /// <summary>An estimate that has not been asked yet and takes another's slopes for the first, of the same throttle with another fluid model.</summary>
    public ThrottleEstimate Alike(Func<ThrottleInlet, double, bool, (double MolarFlow, bool Choked, double Uncertainty)> other) => new(other)
    {
        _byP = _byP, _byH = _byH, _byBack = _byBack, _slopeLnP = _slopeLnP, _slopeH = _slopeH, _lent = _known,
    };

    /// <summary>One that goes on from here and leaves this as it is.</summary>
    public ThrottleEstimate Copy() => (ThrottleEstimate)MemberwiseClone();

    /// <summary>Times that the model was asked.</summary>
    public int Asked { get; private set; }
    public bool Choked { get; private set; }
    public double Uncertainty { get; private set; }
    public bool Known => _known;

    /// <summary>mol/s.</summary>
    public double Flow(double pressurePa, double molarEnthalpy, double backPa) =>
        Math.Exp(_lnFlow + _byP * (Math.Log(pressurePa) - _lnP) + _byH * (molarEnthalpy - _h) + _byBack * (Math.Log(backPa) - _lnBack));

    /// <summary>Asks the model, the rough one on the way to an answer; returns ln of its flow over the estimate's, 0 at first.</summary>
    public double Ask(ThrottleInlet inlet, double backPa, bool rough = false)
    {
        double off = _known ? -Math.Log(Flow(inlet.PressurePa, inlet.MolarEnthalpy, backPa)) : 0;
        double lnFlow = Log(inlet, backPa, rough);
        if (_known) off += lnFlow;
        bool far = !_known && !_lent || Math.Abs(Math.Log(inlet.PressurePa) - _slopeLnP) > FarLnPressure || Math.Abs(inlet.MolarEnthalpy - _slopeH) > FarEnthalpy;
        (_lnP, _h, _lnBack, _lnFlow) = (Math.Log(inlet.PressurePa), inlet.MolarEnthalpy, Math.Log(backPa), lnFlow);
        if (far) Slopes(inlet, backPa, rough);
        _known = true;
        return off;
    }

    /// <summary>ln of the model's flow over the estimate's, the estimate kept.</summary>
    public double Check(ThrottleInlet inlet, double backPa) => Log(inlet, backPa, false) - Math.Log(Flow(inlet.PressurePa, inlet.MolarEnthalpy, backPa));

    private void Slopes(ThrottleInlet inlet, double backPa, bool rough)
    {
        bool choked = Choked;
        _byP = (Log(inlet with { PressurePa = inlet.PressurePa * (1 - PressureStep) }, backPa, rough) - _lnFlow) / Math.Log(1 - PressureStep);
        _byH = (Log(inlet with { MolarEnthalpy = inlet.MolarEnthalpy - EnthalpyStep }, backPa, rough) - _lnFlow) / -EnthalpyStep;
        _byBack = choked ? 0 : (Log(inlet, backPa * (1 - PressureStep), rough) - _lnFlow) / Math.Log(1 - PressureStep);
        (_slopeLnP, _slopeH, Choked) = (Math.Log(inlet.PressurePa), inlet.MolarEnthalpy, choked);
    }

    private double Log(ThrottleInlet inlet, double backPa, bool rough)
    {
        // an answer is checked, and then begun from again
        if (_last is { } a && a.Inlet.PressurePa == inlet.PressurePa && a.Inlet.MolarEnthalpy == inlet.MolarEnthalpy && ReferenceEquals(a.Inlet.Composition, inlet.Composition) && a.BackPa == backPa && a.Rough == rough)
            return a.LnFlow;
        Asked++;
        var (flow, choked, uncertainty) = model(inlet, backPa, rough);
        (Choked, Uncertainty) = (choked, uncertainty);
        double ln = Math.Log(flow);
        _last = (inlet, backPa, rough, ln);
        return ln;
    }
}
