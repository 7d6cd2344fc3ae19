namespace Coldwright.Machine.Precooling;

/// <summary>Conductance that a duty asks for, piece by piece with the logarithmic mean of each: exact for straight pieces.</summary>
internal static class ConductanceNeed
{
    // exp(-700) can still be told from 0; no approach that counts is that small, even where the local capacity rate is far above the mean
    private const double MostTransferUnits = 700;

    /// <summary>Share of the condenser's area that is needed; infinite when the refrigerant is nowhere warmer than the room.</summary>
    /// <param name="path">From liquid to discharge.</param>
    /// <param name="flow">mol/s.</param>
    /// <param name="condenser">Conductance and air.</param>
    /// <param name="roomK">K.</param>
    public static double Condenser(HeatPath path, double flow, AirCondenser condenser, double roomK)
    {
        double need = 0;
        for (int i = 1; i < path.Count; i++)
        {
            double mean = LogMean.Of(path.T(i - 1) - roomK, path.T(i) - roomK);
            if (mean <= 0) return double.PositiveInfinity;
            need += flow * (path.H(i) - path.H(i - 1)) / (condenser.Effective(path.Share(i), roomK) * mean);
        }
        return need;
    }

    /// <summary>Conductance that counterflow with the mixture needs, W/K; infinite when the streams would touch or the mixture has not that much heat.</summary>
    /// <param name="path">From the refrigerant's entry to its outlet.</param>
    /// <param name="flow">mol/s of refrigerant.</param>
    /// <param name="load">The mixture.</param>
    /// <param name="closestK">Least difference, K; below 0 where the streams would have to cross, negative infinity beyond the mixture's heat.</param>
    /// <param name="visit">Called at every node from the cold end: heat so far (W), refrigerant and mixture (K); null when not wanted.</param>
    /// <param name="shiftK">Added to the mixture's temperature, K: to see how sensitive the need is.</param>
    public static double Evaporator(HeatPath path, double flow, MixtureLoad load, out double closestK, Action<double, double, double>? visit = null, double shiftK = 0)
    {
        double duty = flow * (path.H(path.Count - 1) - path.H(0)), start = load.InletEnthalpy - duty / load.MolarFlow;
        var h = load.Enthalpies;
        closestK = double.NegativeInfinity;
        if (start < h[0]) return double.PositiveInfinity;
        double heat = 0, cold = path.T(0), warm = load.Temperature(start) + shiftK, need = 0;
        closestK = warm - cold;
        visit?.Invoke(0, cold, warm);
        int i = 1, j = 0;
        while (j < h.Length && h[j] <= start) j++;
        while (i < path.Count)
        {
            double own = flow * (path.H(i) - path.H(0)), other = j < h.Length ? load.MolarFlow * (h[j] - start) : double.PositiveInfinity;
            bool last = i == path.Count - 1;
            double end = Math.Min(own, other), share = path.Share(i);
            double nextCold = own <= other ? path.T(i) : path.T(i - 1) + (path.T(i) - path.T(i - 1)) * (end / flow + path.H(0) - path.H(i - 1)) / (path.H(i) - path.H(i - 1));
            // the very end is the mixture's inlet, whatever rounding says
            double nextWarm = shiftK + (other <= own ? load.Temperatures[j] : last ? load.InletTemperatureK : load.Temperature(start + end / load.MolarFlow));
            if (end > heat)
            {
                double mean = LogMean.Of(warm - cold, nextWarm - nextCold);
                need += mean > 0 ? (end - heat) / (share * mean) : double.PositiveInfinity;
                closestK = Math.Min(closestK, nextWarm - nextCold);
                visit?.Invoke(end, nextCold, nextWarm);
            }
            (heat, cold, warm) = (end, nextCold, nextWarm);
            if (other <= own) j++;
            if (own <= other) i++;
        }
        return need;
    }

    /// <summary>
    /// How much too great a duty is for a conductance UA, about -1 to 1 and more: exp(-UA/C) - exp(-need/C), C the mixture's mean capacity
    /// rate. For a stream of constant heat capacity against one boiling temperature this is straight in that temperature, and it goes
    /// on so where the streams would cross: a search meets no edge at a pinch.
    /// </summary>
    /// <param name="path">As above.</param>
    /// <param name="flow">mol/s of refrigerant.</param>
    /// <param name="load">The mixture.</param>
    /// <param name="conductance">UA, W/K.</param>
    public static double Overload(HeatPath path, double flow, MixtureLoad load, double conductance)
    {
        if (flow <= 0) return -1;
        double need = Evaporator(path, flow, load, out double closest), duty = flow * (path.H(path.Count - 1) - path.H(0));
        double outlet = load.Temperature(load.InletEnthalpy - duty / load.MolarFlow), span = load.InletTemperatureK - path.T(0);
        if (double.IsNegativeInfinity(closest)) return 2 + duty / (load.MolarFlow * (load.InletEnthalpy - load.Enthalpies[0]));
        double fall = load.InletTemperatureK - outlet;
        // a duty that hardly cools the mixture: its heat capacity at the inlet
        double capacity = fall > 1e-3 ? duty / fall : load.MolarFlow * (load.Enthalpies[^1] - load.Enthalpies[^2]) / (load.Temperatures[^1] - load.Temperatures[^2]);
        double given = Math.Exp(-Math.Min(conductance / capacity, MostTransferUnits));
        return closest > 0 ? given - Math.Exp(-need / capacity) : given + Math.Min(-closest / Math.Max(span, 1), 1);
    }
}
