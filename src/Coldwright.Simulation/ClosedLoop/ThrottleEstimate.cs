using Coldwright.Machine.Throttling;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// The throttle's flow near a point where its own model was asked: ln n linear in ln of both pressures and in the inlet's enthalpy. The
/// loop is iterated on it and the model asked again where the loop then stands, until both agree; slopes are found anew where it has moved far.
/// </summary>
internal sealed class ThrottleEstimate(Func<ThrottleInlet, double, bool, (double MolarFlow, bool Choked, double Uncertainty)> model)
{
    private const double PressureStep = 4e-3, EnthalpyStep = 25, EnthalpyScale = 1e4, FarLnPressure = 0.4, FarEnthalpy = 3000, LeastMove = 1e-5;
    // pressure, enthalpy, back pressure, then the composition as ln of a fraction over the first
    private const int Pressure = 0, Enthalpy = 1, Back = 2, Fractions = 3;
    private double[] _at = [], _by = [];
    private double _lnFlow, _slopeLnP, _slopeH;
    private bool _known, _lent;
    private (ThrottleInlet Inlet, double BackPa, bool Rough, double LnFlow)? _last;

    /// <summary>An estimate that has not been asked yet and takes another's slopes for the first, of the same throttle with another fluid model.</summary>
    public ThrottleEstimate Alike(Func<ThrottleInlet, double, bool, (double MolarFlow, bool Choked, double Uncertainty)> other) => new(other)
    {
        _by = [.. _by], _slopeLnP = _slopeLnP, _slopeH = _slopeH, _lent = _known,
    };

    /// <summary>One that goes on from here and leaves this as it is.</summary>
    public ThrottleEstimate Copy()
    {
        var copy = (ThrottleEstimate)MemberwiseClone();
        (copy._at, copy._by) = ([.. _at], [.. _by]);
        return copy;
    }

    /// <summary>Times that the model was asked.</summary>
    public int Asked { get; private set; }
    public bool Choked { get; private set; }
    public double Uncertainty { get; private set; }
    public bool Known => _known;
    /// <summary>True while it stands where the rough model was asked.</summary>
    public bool IsRough { get; private set; }

    /// <summary>mol/s.</summary>
    public double Flow(ThrottleInlet inlet, double backPa) => Math.Exp(Line(Place(inlet, backPa)));

    /// <summary>Asks the model, the rough one on the way to an answer; returns ln of its flow over the estimate's, 0 at first.</summary>
    public double Ask(ThrottleInlet inlet, double backPa, bool rough = false)
    {
        double[] x = Place(inlet, backPa);
        double lnFlow = Log(inlet, backPa, rough), off = _known ? lnFlow - Line(x) : 0;
        bool far = !_known && !_lent || Math.Abs(x[Pressure] - _slopeLnP) > FarLnPressure || Math.Abs(inlet.MolarEnthalpy - _slopeH) > FarEnthalpy;
        if (_known) Learn(x, off);
        else if (!_lent) _by = new double[x.Length];
        (_at, _lnFlow, IsRough) = (x, lnFlow, rough);
        if (far) Slopes(inlet, backPa, rough);
        _known = true;
        return off;
    }

    /// <summary>ln of the model's flow over the estimate's, the estimate kept.</summary>
    public double Check(ThrottleInlet inlet, double backPa) => Log(inlet, backPa, false) - Line(Place(inlet, backPa));

    private double Line(double[] x)
    {
        double ln = _lnFlow;
        for (int i = 0; i < x.Length; i++) ln += _by[i] * (x[i] - _at[i]);
        return ln;
    }

    private static double[] Place(ThrottleInlet inlet, double backPa)
    {
        var z = inlet.Composition;
        var x = new double[Fractions + z.Count - 1];
        (x[Pressure], x[Enthalpy], x[Back]) = (Math.Log(inlet.PressurePa), inlet.MolarEnthalpy / EnthalpyScale, Math.Log(backPa));
        for (int i = 1; i < z.Count; i++) x[Fractions + i - 1] = Math.Log(z[i] / z[0]);
        return x;
    }

    // Broyden's correction: along the way just gone the slopes are those met
    private void Learn(double[] x, double off)
    {
        double square = 0;
        for (int i = 0; i < x.Length; i++) square += (x[i] - _at[i]) * (x[i] - _at[i]);
        if (square < LeastMove * LeastMove) return;
        for (int i = 0; i < x.Length; i++) _by[i] += off * (x[i] - _at[i]) / square;
    }

    private void Slopes(ThrottleInlet inlet, double backPa, bool rough)
    {
        bool choked = Choked;
        _by[Pressure] = (Log(inlet with { PressurePa = inlet.PressurePa * (1 - PressureStep) }, backPa, rough) - _lnFlow) / Math.Log(1 - PressureStep);
        _by[Enthalpy] = (Log(inlet with { MolarEnthalpy = inlet.MolarEnthalpy - EnthalpyStep }, backPa, rough) - _lnFlow) / -EnthalpyStep * EnthalpyScale;
        _by[Back] = choked ? 0 : (Log(inlet, backPa * (1 - PressureStep), rough) - _lnFlow) / Math.Log(1 - PressureStep);
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
