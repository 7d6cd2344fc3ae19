namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Largest duty of a counterflow exchanger: the least over all temperatures T between the inlets of
/// n_h (h_h,in - h_h(T)) + n_c (h_c(T) - h_c,in), each stream at its inlet pressure; where it is least the streams would touch.
/// </summary>
internal static class CounterflowLimit
{
    /// <summary>W; negative when the first stream enters as the colder one.</summary>
    public static double LargestDuty(StreamInlet hot, StreamInlet cold)
    {
        double hotK = hot.TemperatureK, coldK = cold.TemperatureK;
        if (hotK == coldK) return 0;
        if (hotK < coldK) return -LargestDuty(cold, hot);
        double low = Math.Max(coldK, hot.Table.Temperature(hot.Table.Range(hot.PressurePa).Lowest, hot.PressurePa, out _));
        double high = Math.Min(hotK, cold.Table.Temperature(cold.Table.Range(cold.PressurePa).Highest, cold.PressurePa, out _));
        double least = double.PositiveInfinity;
        void At(double hotH, double coldH) => least = Math.Min(least, hot.MolarFlow * (hot.MolarEnthalpy - hotH) + cold.MolarFlow * (coldH - cold.MolarEnthalpy));
        const int Steps = 60;
        for (int i = 0; i <= Steps; i++)
        {
            double t = low + (high - low) * i / Steps;
            At(hot.Table.Enthalpy(t, hot.PressurePa), cold.Table.Enthalpy(t, cold.PressurePa));
        }
        // the dearest places are where phases change: those are nodes
        foreach (double h in hot.Table.NodeEnthalpies(hot.PressurePa))
            if (hot.Table.Temperature(h, hot.PressurePa, out _) is var t && t > low && t < high) At(h, cold.Table.Enthalpy(t, cold.PressurePa));
        foreach (double h in cold.Table.NodeEnthalpies(cold.PressurePa))
            if (cold.Table.Temperature(h, cold.PressurePa, out _) is var t && t > low && t < high) At(hot.Table.Enthalpy(t, hot.PressurePa), h);
        return least;
    }
}
