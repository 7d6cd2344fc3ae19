namespace Coldwright.Simulation.Cooldown;

/// <summary>Finds what uses up the cooling that an endless exchanger would leave, and says which of it stops the cooler.</summary>
internal static class StopFinder
{
    private const int Stations = 80;
    private const double SmallShare = 0.15, CrawlKPerH = 1.5, StoredShare = 0.35;

    /// <summary>Least isothermal enthalpy difference between cold end and recuperator inlet, where it is, and that at the inlet; J/mol, K.</summary>
    public static (double Least, double AtK, double Warm) Differences(PlantEquations f, in PlantPoint at)
    {
        var t = f.Streams;
        double cold = Math.Max(t.Low.Temperature(at.CoilOutEnthalpy, at.CoilOutPa, out _), Math.Max(t.High.ColdestK, t.Low.ColdestK)), warm = at.RecuperatorInletK, least = double.PositiveInfinity, where = warm, last = 0;
        for (int i = 0; i <= Stations; i++)
        {
            double k = cold + (warm - cold) * i / Stations;
            last = t.Low.Enthalpy(k, at.CoilOutPa) - t.High.Enthalpy(k, at.HighPa);
            if (last < least) (least, where) = (last, k);
        }
        return (least, where, last);
    }

    /// <summary>The terms at a moment, largest first.</summary>
    public static IReadOnlyList<StopTerm> Terms(PlantEquations f, in PlantPoint at)
    {
        var (least, _, warm) = Differences(f, at);
        double endless = at.Flow * least;
        var terms = new List<(string Id, string Name, double Watts)>
        {
            ("exchanger", "left in the recuperator", Math.Max(0, endless - at.CoolingW)),
            ("leak", "heat leak", Math.Max(0, at.LeakW)),
            ("stored-heat", "stored heat still to be carried off", Math.Max(0, at.StoredW)),
        };
        if (at.LoadW > 0) terms.Add(("load", "load", at.LoadW));
        if (least < SmallShare * warm) terms.Add(("mixture", "what the mixture lacks at its narrowest", at.Flow * Math.Max(0, warm - least)));
        double sum = terms.Sum(t => t.Watts);
        return [.. terms.Select(t => new StopTerm(t.Id, t.Name, t.Watts, sum > 0 ? t.Watts / sum : 0)).OrderByDescending(t => t.Watts)];
    }

    /// <summary>The id of the term that stops it.</summary>
    public static string Which(IReadOnlyList<StopTerm> terms, double rateKPerH)
    {
        double stored = terms.First(t => t.Id == "stored-heat") is var s ? s.Share : 0;
        if (-rateKPerH > CrawlKPerH && stored > StoredShare * (1 - (terms.FirstOrDefault(t => t.Id == "exchanger")?.Share ?? 0))) return "stored-heat";
        return terms.FirstOrDefault(t => t.Id == "mixture") is { } m && m == terms[0] ? "mixture" : terms.Where(t => t.Id is not ("stored-heat" or "mixture")).MaxBy(t => t.Watts)!.Id;
    }
}
